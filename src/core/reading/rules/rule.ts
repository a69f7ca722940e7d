/** A rule of the check: its level never depends on the case, and its id never changes. */

import type { Level } from '../diagnostic.ts';

export interface Rule {
  level: Level;
  /** What the rule demands, as a short sentence. */
  title: string;
  /** One paragraph: why, and what to do when it speaks. */
  help: string;
}
