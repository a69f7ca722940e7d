/** A stretch of days in which a task is due, before it is set in a calendar. */

import type { Reason, Standing } from '../records/common.ts';
import type { TaskName } from './guideVocabulary.ts';

export interface Window {
  name: TaskName;
  /** Days of the season, both included. */
  from: number;
  to: number;
  /** When to do it, in words. */
  trigger: string;
  because: Reason[];
}

/** A reason that rests on the weather of the place. */
export function modeled(text: string): Reason {
  return { text, standing: 'modeled' };
}

/** A reason that rests on one of our figures. */
export function resting(text: string, { standing, source }: { standing: Standing; source: string }): Reason {
  return { text, standing, source };
}

/** Windows whose days run the right way; one that would end before it starts does not exist. */
export function existing(windows: readonly (Window | null)[]): Window[] {
  return windows.filter((window): window is Window => window !== null && window.to >= window.from);
}
