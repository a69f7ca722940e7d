/**
 * Is the tree truly dormant? Bare branches are not enough: a single frost can strip leaves. Leaves must be down, wood ripened,
 * and enough chill met since leaf fall; more of it before roots are bared. Before that it is leafless, not yet dormant. The rule
 * itself is in `phenology/dormancy.ts`.
 */

import { addDays, type Day, dayInWords, daysBetween } from '../../days.ts';
import {
  chillHoursNeeded,
  chillHoursOfDay,
  DORMANT_WEEK_MEAN_C,
  type RestUse,
} from '../../phenology/dormancy.ts';
import type { Reason } from '../../records/common.ts';
import { temperatureInWords } from '../../units.ts';
import type { Gate, Seen } from '../answers.ts';
import { asleep, budsBreak, type Expected, restMetSince, stillToCome } from '../milestones.ts';
import { loggedSince } from '../outlook.ts';
import { leafFallFrom, midsummerAfter, midsummerBefore } from '../seasons.ts';
import { isFresh, type SeasonSubject, type YardDay } from '../subject.ts';
import {
  blocked,
  byWeather,
  look,
  modeled,
  opens,
  ours,
  passed,
  type SeasonGateRule,
  seen,
  shareInWords,
} from './gate.ts';

/** While buds may break, bare branches seen longer ago than this are no proof any more. Standing: ours. */
const BUD_WATCH_DAYS = 7;

function neverCold({ outlook }: YardDay, { share }: Expected): Gate {
  return blocked('dormant', [
    modeled(`${outlook.place} is cold enough for a tree to sleep only ${shareInWords(share)}.`),
  ]);
}

/** Midsummer before the first rest season that is not over on a day. */
export function restNotOver({ species }: SeasonSubject, { outlook }: YardDay, on: Day): Day {
  const midsummer = midsummerBefore(on, outlook.south);
  const buds = budsBreak(outlook, species, midsummer).range;
  return buds && on >= buds.from ? midsummerAfter(on, outlook.south) : midsummer;
}

/** Days whose mean says whether the newest weather may have woken a tree. */
const LAST_DAYS = 7;

function rule(use: RestUse): Reason {
  const what = use === 'bare-root' ? 'Roots are bared' : 'A leafless tree is taken to be dormant';
  return ours(
    `${what} after about ${chillHoursNeeded[use]} hours of 32 to 45 F (0 to 7 C) since leaf fall, while the week's mean is below ${temperatureInWords(DORMANT_WEEK_MEAN_C)}; a single frost can strip leaves.`,
  );
}

/** Not bare yet, or asked for a season to come: told from when the leaves are expected down and the rest met. */
function sleepAhead(
  { species, signs }: SeasonSubject,
  today: YardDay,
  sleep: Expected,
  facts: readonly Reason[],
): Gate {
  const { outlook, asOf } = today;
  if (!sleep.range) return neverCold(today, sleep);
  const evidence = [...facts];
  if (signs.where && !signs.outsideSince) {
    evidence.push(seen(`Stands in the ${signs.where.value}; the days given here are for trees outdoors.`));
  }
  const closes = budsBreak(outlook, species, sleep.since).range?.from ?? null;
  if (asOf >= sleep.range.to) {
    const due = byWeather(outlook, sleep, 'It should have been asleep since', sleep.range.to);
    const nobody = seen('Nobody has noted bare branches: look at leaves and wood.');
    return look('dormant', [...evidence, due, nobody], closes);
  }
  const ahead = stillToCome(sleep.range, asOf);
  const due = byWeather(outlook, sleep, 'Leaves down and chill met', ahead);
  return opens('dormant', ahead, [...evidence, due], closes);
}

/** A tree in full leaf under cover keeps its leaves there: no weather outdoors puts it to sleep. */
function keptAwake(leaves: Seen<string>, where: Seen<string>): Gate {
  return look(
    'dormant',
    [
      seen(`In full leaf on the walk of ${dayInWords(leaves.on)}.`),
      seen(
        `Stands in the ${where.value}, as seen on the walk of ${dayInWords(where.on)}: it does not go to sleep there. Move it out, and look again once the leaves come down.`,
      ),
    ],
    null,
    `move it out of the ${where.value}, so that it can go to sleep`,
  );
}

/** Hours of chill in the yard's log since a day, in words; null where nothing was logged. */
function chillLogged({ outlook }: YardDay, since: Day): string | null {
  const logged = loggedSince(outlook.log, since);
  if (logged.length === 0) return null;
  const hours = logged.reduce((sum, { tminC, tmaxC }) => sum + chillHoursOfDay(tminC, tmaxC), 0);
  return `The yard's thermometer has about ${Math.round(hours / 10) * 10} such hours in ${logged.length} days logged since then.`;
}

/** Mean of the last seven days where all of them were logged and it is too warm for a sleeping tree, C; null otherwise. */
function warmWeekC({ outlook, asOf }: YardDay): number | null {
  const logged = loggedSince(outlook.log, addDays(asOf, 1 - LAST_DAYS));
  if (logged.length < LAST_DAYS) return null;
  const meanC = logged.reduce((sum, { tminC, tmaxC }) => sum + (tminC + tmaxC) / 2, 0) / logged.length;
  return meanC >= DORMANT_WEEK_MEAN_C ? meanC : null;
}

/** Whether bare branches seen on a day still prove sleep once buds may break outdoors. In the store trees sleep on. */
function provesSleep(bareOn: Day, budsFrom: Day, stored: boolean, today: YardDay): boolean {
  if (stored) return isFresh(bareOn, today);
  return bareOn >= budsFrom && daysBetween(bareOn, today.asOf) <= BUD_WATCH_DAYS;
}

/** What is known of the wood: `ripe`, `green`, or `unknown` where nobody looked or green was seen too long ago. */
function woodOf(
  { signs: { wood } }: SeasonSubject,
  today: YardDay,
): { state: 'ripe' | 'green' | 'unknown'; fact: Reason } {
  if (!wood) {
    return {
      state: 'unknown',
      fact: seen('Nobody has noted whether the wood is brown: look before it is called dormant.'),
    };
  }
  const words = `Wood ${wood.value === 'part' ? 'partly brown' : wood.value} on the walk of ${dayInWords(wood.on)}`;
  if (wood.value !== 'green') return { state: 'ripe', fact: seen(`${words}.`) };
  const fact = seen(`${words}. Green wood is not ripe, even when leaves are off.`);
  return { state: isFresh(wood.on, today) ? 'green' : 'unknown', fact };
}

/** Leaves seen bare; `down` is the day they were first seen falling or bare. */
function leafless(subject: SeasonSubject, today: YardDay, down: Day, use: RestUse): Gate {
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
          ? 'It stands in storage; look whether it is still dormant.'
          : 'It may be awake: look at the buds.',
      ),
    ]);
  }

  const wood = woodOf(subject, today);
  if (wood.state === 'green') return blocked('dormant', [...facts, wood.fact]);
  const rest = restMetSince(outlook, down, use);
  if (!rest.range) return neverCold(today, rest);
  const logged = chillLogged(today, down);
  const evidence = [...facts, wood.fact, rule(use), ...(logged ? [seen(logged)] : [])];
  if (asOf >= rest.range.to) {
    const met = byWeather(outlook, rest, 'Chill met since', rest.range.to);
    const warmC = stored ? null : warmWeekC(today);
    if (wood.state === 'unknown') return look('dormant', [...evidence, met]);
    if (warmC !== null) {
      const warm = `The last week had a mean of ${temperatureInWords(warmC)}: it may be waking, so look at the buds.`;
      return look('dormant', [...evidence, met, seen(warm)]);
    }
    return passed('dormant', [...evidence, met], stored ? null : (buds?.from ?? null));
  }
  if (buds && rest.range.from >= buds.from) {
    return blocked('dormant', [...evidence, byWeather(outlook, spring, 'Buds break before that,', buds)]);
  }
  const ahead = stillToCome(rest.range, asOf);
  return opens(
    'dormant',
    ahead,
    [
      seen('Leafless, not yet dormant.'),
      ...evidence,
      byWeather(outlook, rest, 'Chill expected to be met', ahead),
    ],
    buds?.from ?? null,
  );
}

function dormantFor(use: RestUse): SeasonGateRule {
  return (subject, today, notBefore) => {
    const { signs, species } = subject;
    const { outlook, asOf } = today;
    if (notBefore) {
      const start = restNotOver(subject, today, notBefore);
      return sleepAhead(subject, today, asleep(outlook, species, start, use), []);
    }
    const { leaves, leavesDownSince, where, outsideSince } = signs;
    if (!leaves) {
      const start = restNotOver(subject, today, asOf);
      const blank = seen('Nobody has noted yet whether leaves are down.');
      return sleepAhead(subject, today, asleep(outlook, species, start, use), [blank]);
    }
    if (leaves.value === 'bare') return leafless(subject, today, leavesDownSince!, use);
    if (leaves.value === 'full' && where && !outsideSince) return keptAwake(leaves, where);
    const words = { full: 'In full leaf', turning: 'Leaves turning', falling: 'Leaves falling' }[
      leaves.value
    ];
    const fact = seen(`${words} on the walk of ${dayInWords(leaves.on)}.`);
    const sleep = leavesDownSince
      ? restMetSince(outlook, leavesDownSince, use)
      : asleep(outlook, species, leafFallFrom(leaves.on, outlook.south), use);
    return sleepAhead(subject, today, sleep, [fact]);
  };
}

/** Dormant enough to be sold, sent and stored in its pot. */
export const dormantInPot = dormantFor('in-pot');
/** Dormant enough for its roots to be bared. */
export const dormantForLifting = dormantFor('bare-root');
