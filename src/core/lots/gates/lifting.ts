/** Do soil and season let the roots be bared: cold soil, leaves down, buds still tight? Or is the lot lifted already? */

import { addDays, type Day, dayInWords } from '../../days.ts';
import { temperatureInWords } from '../../units.ts';
import type { Gate } from '../answers.ts';
import { budsBreak, type Expected, soilCold, soilColdAfterLeafFall, stillToCome } from '../milestones.ts';
import { leafFallFrom } from '../seasons.ts';
import type { SeasonSubject, YardDay } from '../subject.ts';
import { COLD_DAY_C, COLD_SOIL_DAYS } from '../weatherRules.ts';
import { restNotOver } from './dormant.ts';
import {
  blocked,
  byFigure,
  byWeather,
  daysInWords,
  modeled,
  opens,
  ours,
  passed,
  type SeasonGateRule,
  seen,
  shareInWords,
} from './gate.ts';

const rule = ours(
  `Roots are bared once the mean of ${COLD_SOIL_DAYS} days is below ${temperatureInWords(COLD_DAY_C)}, before buds break.`,
);

function alreadyLifted({ species }: SeasonSubject, asOf: Day, lifted: Day): Gate {
  const { bareRootKeepsDays } = species;
  const keepsTo = addDays(lifted, bareRootKeepsDays.high);
  const facts = [
    seen(`Lifted on ${dayInWords(lifted)}.`),
    byFigure(`Bare roots keep about ${daysInWords(bareRootKeepsDays)} in damp wrap.`, bareRootKeepsDays),
  ];
  if (asOf <= keepsTo) return passed('lifting', facts, addDays(keepsTo, 1));
  return blocked('lifting', [...facts, seen('That time is over: pot them up.')]);
}

function fromColdSoil(cold: Expected, closes: Day | null, { outlook, asOf }: YardDay): Gate {
  const { range } = cold;
  if (!range) {
    const rarely = modeled(`${outlook.place} has soil that cold only ${shareInWords(cold.share)}.`);
    return blocked('lifting', [rule, rarely]);
  }
  if (closes && range.from >= closes) {
    const buds = byWeather(outlook, cold, 'Buds may break first, from', closes);
    return blocked('lifting', [rule, buds]);
  }
  if (asOf >= range.to) {
    return passed(
      'lifting',
      [rule, byWeather(outlook, cold, 'The soil should have been cold since', range.to)],
      closes,
    );
  }
  const ahead = stillToCome(range, asOf);
  return opens('lifting', ahead, [rule, byWeather(outlook, cold, 'Soil expected cold', ahead)], closes);
}

export const lifting: SeasonGateRule = (subject, today, notBefore) => {
  const { lot, signs, species } = subject;
  const { asOf, outlook } = today;
  if (lot.lifted && lot.lifted <= asOf && !notBefore) return alreadyLifted(subject, asOf, lot.lifted);

  const down = notBefore ? null : signs.leavesDownSince;
  const start = notBefore
    ? restNotOver(subject, today, notBefore)
    : (down ??
      (signs.leaves ? leafFallFrom(signs.leaves.on, outlook.south) : restNotOver(subject, today, asOf)));
  const closes = budsBreak(outlook, species, start).range?.from ?? null;
  if (closes && asOf >= closes) return lifting(subject, today, asOf);
  const cold = down ? soilCold(outlook, start) : soilColdAfterLeafFall(outlook, species, start);
  return fromColdSoil(cold, closes, today);
};
