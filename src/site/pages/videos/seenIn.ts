/** The way back: which chapters of which videos speak of a lot, a cultivar or a guide. */

import type { Catalogue } from '../../../core/catalogue.ts';
import { dayInWords } from '../../../core/days.ts';
import type { LinkKind } from '../../../core/records/video.ts';
import { chapterTime } from '../../../core/videos/chapters.ts';
import { chapterPath } from '../../addresses/videoPaths.ts';
import { memoize } from '../../memo.ts';

export interface Mention {
  path: string;
  /** Title of the chapter. */
  chapter: string;
  video: string;
  time: string;
  date: string;
}

const mentions = memoize(({ videos, lots }: Catalogue): ReadonlyMap<string, Mention[]> => {
  const cultivarOf = new Map(lots.map(({ lot }) => [lot.id, lot.cultivar]));
  const found = new Map<string, Mention[]>();
  for (const video of videos) {
    for (const chapter of video.chapters) {
      const spokenOf = new Set<string>();
      for (const { kind, id } of chapter.links) {
        spokenOf.add(`${kind}:${id}`);
        const cultivar = kind === 'lot' ? cultivarOf.get(id) : undefined;
        if (cultivar !== undefined) spokenOf.add(`cultivar:${cultivar}`);
      }
      const mention = {
        path: chapterPath(video.id, chapter),
        chapter: chapter.title,
        video: video.title,
        time: chapterTime(chapter),
        date: dayInWords(video.date),
      };
      for (const thing of spokenOf) found.set(thing, [...(found.get(thing) ?? []), mention]);
    }
  }
  return found;
});

/** Chapters that speak of a thing, newest video first; a chapter about a lot also speaks of its cultivar. */
export function seenIn(all: Catalogue, kind: LinkKind, id: string): readonly Mention[] {
  return mentions(all).get(`${kind}:${id}`) ?? [];
}
