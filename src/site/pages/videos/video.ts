/** The list of videos and the page of one. */

import type { Catalogue } from '../../../core/catalogue.ts';
import { dayInWords } from '../../../core/days.ts';
import type { Video } from '../../../core/records/video.ts';
import { chapterFragment, chapterTime } from '../../../core/videos/chapters.ts';
import { videoPath } from '../../addresses/videoPaths.ts';
import { countInWords, sentence } from '../../words/words.ts';
import { type LinkedThing, linkedThings } from './linkedThing.ts';

export interface VideoLine {
  path: string;
  title: string;
  date: string;
  summary: string;
}

/** What a video is about: the grower's words, else what its chapters are called. */
function videoSummary({ summary, chapters }: Pick<Video, 'summary' | 'chapters'>): string {
  if (summary !== null) return summary;
  return sentence(
    `${countInWords(chapters.length, 'chapter')}: ${chapters.map(({ title }) => title).join('; ')}.`,
  );
}

/** All videos, newest first. */
export function videoLines({ videos }: Pick<Catalogue, 'videos'>): VideoLine[] {
  return videos.map(video => ({
    path: videoPath(video.id),
    title: video.title,
    date: dayInWords(video.date),
    summary: videoSummary(video),
  }));
}

export interface ChapterView {
  id: string;
  time: string;
  title: string;
  things: LinkedThing[];
}

export interface VideoView {
  date: string;
  summary: string;
  /** Where it can be watched, with the name of the host; null where nobody said. */
  watch: { address: string; at: string } | null;
  chapters: ChapterView[];
}

function watchLink(watch: string): VideoView['watch'] {
  const host = URL.canParse(watch) ? new URL(watch).hostname : '';
  return { address: watch, at: host === '' ? watch : host.replace(/^www\./, '') };
}

export function videoView(all: Catalogue, video: Video): VideoView {
  return {
    date: dayInWords(video.date),
    summary: videoSummary(video),
    watch: video.watch === null ? null : watchLink(video.watch),
    chapters: video.chapters.map(chapter => ({
      id: chapterFragment(chapter),
      time: chapterTime(chapter),
      title: chapter.title,
      things: linkedThings(all, chapter.links),
    })),
  };
}
