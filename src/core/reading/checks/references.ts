/** Words for a reference to something that does not exist. */

import { nearest } from '../nearest.ts';
import { meant, type Problem, quote, remedyOf, type Spot } from '../problem.ts';
import type { RuleId } from '../rules.ts';

export interface Reference {
  rule: RuleId;
  file: string;
  spot: Spot;
  /** What is referred to: `cultivar`. */
  kind: string;
  id: string;
  known: ReadonlySet<string>;
  /** What it is called now, where that is known; else the nearest known id is asked about. */
  now?: string | null;
  /** Where such things are: `Cultivars are in content/cultivars/.` */
  where: string;
}

/** Guesses already made: one wrong id often stands in hundreds of rows. */
const guesses = new WeakMap<ReadonlySet<string>, Map<string, string | null>>();

function nearestKnown(id: string, known: ReadonlySet<string>): string | null {
  const made = guesses.get(known) ?? new Map<string, string | null>();
  guesses.set(known, made);
  let guess = made.get(id);
  if (guess === undefined) {
    guess = nearest(id, known);
    made.set(id, guess);
  }
  return guess;
}

/** Kinds a yard must have: that there are none at all is said once, by itself. */
const requiredKinds: ReadonlySet<string> = new Set(['species', 'cultivar', 'lot', 'place']);

/** One problem when the id is unknown, none when it is known or when there is nothing of its kind that could be known. */
export function checkReference({
  rule,
  file,
  spot,
  kind,
  id,
  known,
  now = null,
  where,
}: Reference): Problem[] {
  if (known.has(id) || (known.size === 0 && requiredKinds.has(kind))) return [];
  return [
    {
      rule,
      file,
      spot,
      got: quote(id),
      expected: `a known ${kind}`,
      message: `no ${kind} ${quote(id)}`,
      remedy: remedyOf(meant(now ?? nearestKnown(id, known)), where),
    },
  ];
}
