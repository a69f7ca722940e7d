/** Where videos are on the site. */

import { recordAddress } from '../../core/addresses/paths.ts';
import type { Chapter } from '../../core/records/video.ts';
import { chapterFragment } from '../../core/videos/chapters.ts';

export const videosPath = '/videos/';

export function videoPath(id: string): string {
  return recordAddress('video', id);
}

export function chapterPath(id: string, chapter: Pick<Chapter, 'seconds'>): string {
  return `${videoPath(id)}#${chapterFragment(chapter)}`;
}
