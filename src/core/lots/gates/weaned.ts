/** Has the plant learned to live on its own roots, without shelter? */

import { dayInWords, daysBetween } from '../../days.ts';
import type { Method } from '../../records/common.ts';
import { temperatureInWords } from '../../units.ts';
import { longestWeaning, stillToCome, weaned as weanedBy } from '../milestones.ts';
import { expectedSevering } from '../severing.ts';
import { onMother, ownRootsSince, propagationOf } from '../subject.ts';
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

export const weaned: GateRule = (subject, today) => {
  const { lot } = subject;
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

  const start = ownRootsSince(lot);
  const begun = seen(`${beginning} on ${dayInWords(start)}.`);
  if (daysBetween(start, asOf) >= longestWeaning(weanDays)) return passed('weaned', [begun, practice]);
  const { range } = weanedBy(outlook, weanDays, { from: start, to: start });
  if (!range) return blocked('weaned', [begun, practice]);
  if (asOf >= range.to) return passed('weaned', [begun, practice]);
  const ahead = stillToCome(range, asOf);
  return opens('weaned', ahead, [begun, practice, byWeather(outlook, { since: start }, 'Weaned', ahead)]);
};
