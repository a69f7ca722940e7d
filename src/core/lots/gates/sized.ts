/** Is the plant as large as the smallest the yard sells in its pot? */

import { dayInWords } from '../../days.ts';
import type { Reason } from '../../records/common.ts';
import { containerClasses, potWithArticle } from '../../records/container.ts';
import type { Smallest, Yard } from '../../records/yard.ts';
import { caliperInWords, lengthInWords } from '../../units.ts';
import type { Seen } from '../answers.ts';
import { isFresh, pottingOn, type YardDay } from '../subject.ts';
import { COLD_DAY_C } from '../weatherRules.ts';
import { blocked, type GateRule, look, passed, seen } from './gate.ts';

interface Limit {
  /** Class the limit is written for. */
  name: string;
  smallest: Smallest;
}

/** The limit for a class, else for the nearest smaller class that has one; null below the smallest class the yard sells. */
function limitFor(yard: Yard, classIndex: number): Limit | null {
  for (let index = classIndex; index >= 0; index -= 1) {
    const name = containerClasses[index]!.name;
    const smallest = yard.smallest[name];
    if (smallest) return { name, smallest };
  }
  return null;
}

/** The limit of the smallest class sold: for trees that never stood in a pot. */
function lowestLimit(yard: Yard): Limit | null {
  const found = containerClasses.find(({ name }) => yard.smallest[name]);
  return found ? { name: found.name, smallest: yard.smallest[found.name]! } : null;
}

interface Check {
  what: string;
  least: number | null;
  measured: Seen<number> | null;
  words: (value: number) => string;
}

/** `3 in (7 cm) less than`; `just under` for less than a whole unit (cm or mm). */
function shortBy(missing: number, words: Check['words']): string {
  return missing < 1 ? 'just under' : `${words(missing)} less than`;
}

function growsNow({ outlook, asOf }: YardDay): boolean {
  return outlook.monthMeanC(asOf) > COLD_DAY_C;
}

/**
 * A tree does not shrink, so a measure that was large enough stays good. One that was too small wants a new look once it is
 * stale in a growing month.
 */
export const sized: GateRule = ({ lot, signs }, today) => {
  const { yard, asOf } = today;
  const potting = pottingOn(lot, asOf);
  const limit = potting ? limitFor(yard, potting.container.classIndex) : lowestLimit(yard);
  if (!limit) {
    return blocked('sized', [
      seen(`Stands in ${potting?.container.written ?? 'no pot'}, smaller than any pot the yard sells in.`),
    ]);
  }
  const checks: Check[] = [
    { what: 'Height', least: limit.smallest.heightCm, measured: signs.heightCm, words: lengthInWords },
    { what: 'Stem', least: limit.smallest.caliperMm, measured: signs.caliperMm, words: caliperInWords },
  ];
  const asked = checks.filter(({ least }) => least !== null);
  if (asked.length === 0)
    return passed('sized', [seen(`The yard sets no smallest size for ${potWithArticle(limit.name)}.`)]);

  const missing: string[] = [];
  const small: { check: Check; reason: Reason }[] = [];
  const large: Reason[] = [];
  for (const check of asked) {
    const { what, least, measured, words } = check;
    if (!measured) {
      missing.push(what.toLowerCase());
      continue;
    }
    const fact = `${what} ${words(measured.value)} on ${dayInWords(measured.on)}`;
    if (measured.value >= least!)
      large.push(seen(`${fact}; minimum sold in ${potWithArticle(limit.name)}: ${words(least!)}.`));
    else
      small.push({
        check,
        reason: seen(
          `${fact}: ${shortBy(least! - measured.value, words)} the ${words(least!)} that is the minimum in ${potWithArticle(limit.name)}.`,
        ),
      });
  }
  const reasons = small.map(({ reason }) => reason);
  if (small.some(({ check }) => isFresh(check.measured!.on, today) || !growsNow(today))) {
    return blocked('sized', reasons);
  }
  if (small.length > 0) return look('sized', [...reasons, seen('It may have grown since: measure again.')]);
  if (missing.length > 0)
    return look('sized', [...large, seen(`Not measured yet: ${missing.join(' and ')}.`)]);
  return passed('sized', large);
};
