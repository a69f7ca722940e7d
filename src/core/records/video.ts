/** A video and what its chapters link to. File: content/videos/ID.yaml. */

import { z } from 'zod';
import type { Day } from '../days.ts';
import { date, link, text } from './common.ts';

const linkKinds = ['cultivar', 'lot', 'guide', 'place'] as const;
export type LinkKind = (typeof linkKinds)[number];

export const chapterTimePattern = /^(?:\d{1,2}:)?[0-5]?\d:[0-5]\d$/;
/** A guide may be followed by one of its parts: the name its heading has on the page, as in `guide:first-winter#lifting`. */
export const chapterLinkPattern =
  /^(?:(?:cultivar|lot|place):[a-z0-9]+(?:-[a-z0-9]+)*|guide:[a-z0-9]+(?:-[a-z0-9]+)*(?:#[a-z0-9]+(?:--?[a-z0-9]+)*)?)$/;

export const writtenVideo = z.strictObject({
  title: text('Title of the video.', 100),
  date: date('When it was published.'),
  summary: text('One or two sentences for lists, search and the text below the video.', 300).optional(),
  watch: link('Where it can be watched.').optional(),
  chapters: z
    .array(
      z.strictObject({
        time: z
          .string()
          .regex(chapterTimePattern)
          .describe('Start of the chapter in quotes, such as "4:05" or "1:02:30".'),
        title: text('What the chapter shows.', 100),
        links: z
          .array(
            z
              .string()
              .regex(chapterLinkPattern)
              .describe(
                'What it links to, such as cultivar:bellwether, guide:first-winter or a part of a guide, guide:first-winter#lifting.',
              ),
          )
          .optional(),
      }),
    )
    .min(1),
});

export type WrittenVideo = z.infer<typeof writtenVideo>;

export interface ChapterLink {
  kind: LinkKind;
  id: string;
  /** The named part of a guide; null for the whole of it, and for everything else. */
  part: string | null;
}

export interface Chapter {
  /** From the start of the video. */
  seconds: number;
  title: string;
  links: ChapterLink[];
}

export interface Video {
  id: string;
  title: string;
  date: Day;
  summary: string | null;
  watch: string | null;
  chapters: Chapter[];
}

/** Seconds of a time such as `4:05` or `1:02:30`. */
export function secondsOf(time: string): number {
  return time.split(':').reduce((total, part) => total * 60 + Number(part), 0);
}

function linkOf(written: string): ChapterLink {
  const [kind, target] = written.split(':') as [LinkKind, string];
  const [id, part = null] = target.split('#') as [string, string?];
  return { kind, id, part };
}

/** A video with chapter times in seconds and links taken apart. */
export function normaliseVideo(id: string, written: WrittenVideo): Video {
  return {
    id,
    title: written.title,
    date: written.date as Day,
    summary: written.summary ?? null,
    watch: written.watch ?? null,
    chapters: written.chapters.map(chapter => ({
      seconds: secondsOf(chapter.time),
      title: chapter.title,
      links: (chapter.links ?? []).map(linkOf),
    })),
  };
}
