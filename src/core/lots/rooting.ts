/** When the roots of a plant hold, by what was seen and by the warmth since they last got new room. */

import { type Day, type DayRange, earlier, later } from '../days.ts';
import type { Figure } from '../records/common.ts';
import type { RootSign } from '../records/walk.ts';
import type { LotSigns, Seen } from './answers.ts';
import { type Expected, rootsHold } from './milestones.ts';
import type { Outlook } from './outlook.ts';
import { ownRootsSince, pottingOn, propagationOf, type Subject, type YardDay } from './subject.ts';

/** The day the roots last got new room: the newest potting, else the day the plant came on its own roots. */
export function clockStart({ lot }: Subject, asOf: Day): Day {
  const start = ownRootsSince(lot);
  const potting = pottingOn(lot, asOf);
  return potting ? later(potting.date, start) : start;
}

/** The newest look at the roots since then; null where nobody has looked. */
export function rootsSeen({ roots }: Pick<LotSigns, 'roots'>, since: Day): Seen<RootSign> | null {
  return roots && roots.on >= since ? roots : null;
}

/** Roots by the weather. Where none were seen later than the weather let expect (`slow`), warm days are counted anew from there. */
export function rootsByWeather(
  outlook: Outlook,
  warmDays: Figure,
  start: Day,
  roots: Seen<string> | null,
): { hold: Expected; slow: boolean } {
  const first = rootsHold(outlook, warmDays, { from: start, to: start });
  if (roots?.value !== 'none' || first.range === null || roots.on < first.range.from) {
    return { hold: first, slow: false };
  }
  return { hold: rootsHold(outlook, warmDays, { from: roots.on, to: roots.on }), slow: true };
}

/** Between which days a cutting rooted: by the weather since it last got new room, and no later than roots were seen to hold. */
export function rootedBetween(subject: Subject, { outlook, asOf }: YardDay): DayRange | null {
  const figures = propagationOf(subject);
  if (!figures) return null;
  const start = clockStart(subject, asOf);
  const roots = rootsSeen(subject.signs, start);
  const { range } = rootsByWeather(outlook, figures.rootingWarmDays, start, roots).hold;
  const held = roots && (roots.value === 'holding' || roots.value === 'full') ? roots.on : null;
  if (held === null) return range;
  return range === null
    ? { from: held, to: held }
    : { from: earlier(range.from, held), to: earlier(range.to, held) };
}
