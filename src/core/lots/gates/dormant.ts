/**
 * Is the tree truly dormant? Bare branches are not enough: a single frost can strip leaves. Leaves must be down, wood ripened,
 * and a spell of cold days met after leaf fall. Before that it is leafless, not yet dormant.
 */

import { type Day, dayInWords, daysBetween } from '../../days.ts';
import { COLD_DAY_C } from '../../phenology/coldSpell.ts';
import { temperatureInWords } from '../../units.ts';
import type { Gate } from '../answers.ts';
import { asleep, budsBreak, coldMet, type Expected, stillToCome } from '../milestones.ts';
import { loggedSince } from '../outlook.ts';
import { leafFallFrom, midsummerAfter, midsummerBefore } from '../seasons.ts';
import { isFresh, type SeasonSubject, type YardDay } from '../subject.ts';
import {
  blocked,
  byFigure,
  byWeather,
  look,
  modelled,
  opens,
  passed,
  type SeasonGateRule,
  seen,
  shareInWords,
} from './gate.ts';

/** While buds may break, bare branches seen longer ago than this are no proof any more. Standing: ours. */
export const BUD_WATCH_DAYS = 7;

function neverCold({ outlook }: YardDay, { share }: Expected): Gate {
  return blocked('dormant', [
    modelled(`${outlook.place} is cold enough for a tree to sleep only ${shareInWords(share)}.`),
  ]);
}

/** Midsummer before the first rest season that is not over on a day. */
export function restNotOver({ species }: SeasonSubject, { outlook }: YardDay, on: Day): Day {
  const midsummer = midsummerBefore(on, outlook.south);
  const buds = budsBreak(outlook, species, midsummer).range;
  return buds && on >= buds.from ? midsummerAfter(on, outlook.south) : midsummer;
}

/** Not bare yet, or asked for a season to come: told from when the leaves are expected down and the cold spell met. */
function sleepAhead(
  { species, signs }: SeasonSubject,
  today: YardDay,
  sleep: Expected,
  facts: string[],
): Gate {
  const { outlook, asOf } = today;
  if (!sleep.range) return neverCold(today, sleep);
  const evidence = facts.map(seen);
  if (signs.where && !signs.outsideSince) {
    evidence.push(seen(`Stands in the ${signs.where.value}; the days told here are for trees outdoors.`));
  }
  const closes = budsBreak(outlook, species, sleep.since).range?.from ?? null;
  if (asOf >= sleep.range.to) {
    const due = byWeather(outlook, sleep, 'It should be asleep since', sleep.range.to);
    const nobody = seen('Nobody has noted bare branches: look at leaves and wood.');
    return look('dormant', [...evidence, due, nobody], closes);
  }
  const ahead = stillToCome(sleep.range, asOf);
  const due = byWeather(outlook, sleep, 'Leaves down and cold spell met', ahead);
  return opens('dormant', ahead, [...evidence, due], closes);
}

/** Cold days of the yard's log since a day, in words; null where nothing was logged. */
function coldDaysLogged({ outlook }: YardDay, since: Day): string | null {
  const logged = loggedSince(outlook.log, since);
  if (logged.length === 0) return null;
  const cold = logged.filter(({ tminC, tmaxC }) => (tminC + tmaxC) / 2 < COLD_DAY_C).length;
  return `The yard's thermometer has ${cold} cold days in ${logged.length} logged since then.`;
}

/** Whether bare branches seen on a day still prove sleep once buds may break outdoors. In the store trees sleep on. */
function provesSleep(bareOn: Day, budsFrom: Day, stored: boolean, today: YardDay): boolean {
  if (stored) return isFresh(bareOn, today);
  return bareOn >= budsFrom && daysBetween(bareOn, today.asOf) <= BUD_WATCH_DAYS;
}

/** Leaves seen bare; `down` is the day they were first seen falling or bare. */
function leafless(subject: SeasonSubject, today: YardDay, down: Day): Gate {
  const { species, signs } = subject;
  const { outlook, asOf } = today;
  const bareOn = signs.leaves!.on;
  const since = down === bareOn ? '' : `, leaves coming down since ${dayInWords(down)}`;
  const facts = [seen(`Branches bare on the walk of ${dayInWords(bareOn)}${since}.`)];
  const spring = budsBreak(outlook, species, down);
  const buds = spring.range;
  const stored = signs.where?.value === 'store';
  if (buds && asOf >= buds.from && !provesSleep(bareOn, buds.from, stored, today)) {
    const late = bareOn > buds.to ? [seen('It slept longer than the weather let expect.')] : [];
    return look('dormant', [
      ...facts,
      ...late,
      byWeather(outlook, spring, 'Buds break outdoors', buds),
      seen(
        stored
          ? 'It stands in the store; look whether it still sleeps.'
          : 'It may be awake: look at the buds.',
      ),
    ]);
  }

  const { wood } = signs;
  if (!wood) return look('dormant', [...facts, seen('Nobody has noted whether the wood is brown.')]);
  const ripe = seen(
    `Wood ${wood.value === 'part' ? 'partly brown' : wood.value} on the walk of ${dayInWords(wood.on)}.`,
  );
  if (wood.value === 'green') {
    const unripe = [...facts, ripe, seen('Green wood is not ripe, even when leaves are off.')];
    return isFresh(wood.on, today) ? blocked('dormant', unripe) : look('dormant', unripe);
  }

  const { coldSpellDays } = species;
  const practice = byFigure(
    `A leafless tree is dormant after about ${Math.round(coldSpellDays.value)} days with a mean below ${temperatureInWords(COLD_DAY_C)}; a single frost can strip leaves.`,
    coldSpellDays,
  );
  const cold = coldMet(outlook, species, down);
  if (!cold.range) return neverCold(today, cold);
  const logged = coldDaysLogged(today, down);
  const evidence = [...facts, ripe, practice, ...(logged ? [seen(logged)] : [])];
  if (asOf >= cold.range.to) {
    const met = byWeather(outlook, cold, 'Cold spell met since', cold.range.to);
    return passed('dormant', [...evidence, met], stored ? null : (buds?.from ?? null));
  }
  if (buds && cold.range.from >= buds.from) {
    return blocked('dormant', [...evidence, byWeather(outlook, spring, 'Buds break before that,', buds)]);
  }
  const ahead = stillToCome(cold.range, asOf);
  return opens(
    'dormant',
    ahead,
    [seen('Leafless, not yet dormant.'), ...evidence, byWeather(outlook, cold, 'Cold spell met', ahead)],
    buds?.from ?? null,
  );
}

export const dormant: SeasonGateRule = (subject, today, notBefore) => {
  const { signs, species } = subject;
  const { outlook } = today;
  if (notBefore) {
    return sleepAhead(subject, today, asleep(outlook, species, restNotOver(subject, today, notBefore)), []);
  }
  const { leaves, leavesDownSince } = signs;
  if (!leaves) return look('dormant', [seen('Nobody has noted yet whether leaves are down.')]);
  if (leaves.value === 'bare') return leafless(subject, today, leavesDownSince!);
  const words = { full: 'In full leaf', turning: 'Leaves turning', falling: 'Leaves falling' }[leaves.value];
  const fact = `${words} on the walk of ${dayInWords(leaves.on)}.`;
  const sleep = leavesDownSince
    ? coldMet(outlook, species, leavesDownSince)
    : asleep(outlook, species, leafFallFrom(leaves.on, outlook.south));
  return sleepAhead(subject, today, sleep, [fact]);
};
