/** Has the plant learned to live on its own roots, without shelter? */

import { type DayRange, dayInWords, daysBetween } from '../../days.ts';
import type { Figure, Method, Reason } from '../../records/common.ts';
import { temperatureInWords } from '../../units.ts';
import type { Gate } from '../answers.ts';
import { longestWeaning, stillToCome, weaned as weanedBy } from '../milestones.ts';
import { rootedBetween } from '../rooting.ts';
import { expectedSevering } from '../severing.ts';
import { onMother, ownRootsSince, propagationOf, type YardDay } from '../subject.ts';
import { WEANING_COLD_C } from '../weatherRules.ts';
import {
  blocked,
  byFigure,
  byWeather,
  daysInWords,
  type GateRule,
  look,
  opens,
  passed,
  seen,
} from './gate.ts';

const beginnings: Record<Method, string> = {
  'air-layer': 'Cut from the mother plant',
  cutting: 'Struck',
  division: 'Divided',
  graft: 'Grafted',
};

/** Weaning that starts between two days, of which `begun` says what they are. */
function weanedFrom(
  start: DayRange,
  weanDays: Figure,
  { outlook, asOf }: YardDay,
  because: readonly Reason[],
): Gate {
  if (daysBetween(start.to, asOf) >= longestWeaning(weanDays)) return passed('weaned', [...because]);
  const { range } = weanedBy(outlook, weanDays, start);
  if (!range) return blocked('weaned', [...because]);
  if (asOf >= range.to) return passed('weaned', [...because]);
  const ahead = stillToCome(range, asOf);
  return opens('weaned', ahead, [...because, byWeather(outlook, { since: start.from }, 'Weaned', ahead)]);
}

export const weaned: GateRule = (subject, today) => {
  const { lot } = subject;
  if (lot.method === 'graft') {
    return passed('weaned', [seen('Grafted on a rooted stock, which needs no weaning.')]);
  }
  const { outlook, asOf } = today;
  const beginning = beginnings[lot.method];
  const figures = propagationOf(subject);
  if (!figures) {
    return look('weaned', [
      seen(`${beginning} on ${dayInWords(ownRootsSince(lot))}; how long weaning takes is not on record.`),
    ]);
  }
  const { weanDays } = figures;
  const practice = byFigure(
    `Weaning takes about ${daysInWords(weanDays)}; days with a mean below ${temperatureInWords(WEANING_COLD_C)} count half.`,
    weanDays,
  );

  if (onMother(lot, asOf)) {
    const severing = expectedSevering(subject, today);
    const waiting = seen(`The layers put on on ${dayInWords(lot.started)} still hang on the mother plant.`);
    const range = severing && weanedBy(outlook, weanDays, severing).range;
    if (!severing || !range) return blocked('weaned', [waiting]);
    const cut = byWeather(outlook, { since: lot.started }, 'Ready to be cut', severing);
    return opens('weaned', range, [waiting, cut, practice]);
  }

  if (lot.method === 'cutting') {
    const rooting = rootedBetween(subject, today);
    const struck = seen(`Struck on ${dayInWords(lot.started)}; weaning counts from when its roots hold.`);
    return rooting === null
      ? blocked('weaned', [struck, practice])
      : weanedFrom(rooting, weanDays, today, [struck, practice]);
  }
  const start = ownRootsSince(lot);
  const begun = seen(`${beginning} on ${dayInWords(start)}.`);
  return weanedFrom({ from: start, to: start }, weanDays, today, [begun, practice]);
};
