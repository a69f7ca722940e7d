/** What a tree asks for while it grows, in a pot or in the ground: feed, water, pruning. */

import { DAYS_PER_YEAR, monthOfDay, wrapDoy } from '../climate/calendar.ts';
import { roundTo, temperatureInWords } from '../units.ts';
import { careFigures } from './careFigures.ts';
import type { CareYear } from './careYear.ts';
import { measureText } from './guideMeasures.ts';
import { earlyFreeze, growthEnds, growthStarts, HALF_REST_DAYS, lastFeed } from './turningPoints.ts';
import { potWateringDays, waterLiters } from './watering.ts';
import { existing, modeled, resting, type Window } from './window.ts';

/** Feeding starts this long after growth, days. Standing: ours. */
const FEED_AFTER_GROWTH_DAYS = 14;
/** Pruning ends this long before buds may break, days. Standing: ours. */
const PRUNE_BEFORE_BUDS_DAYS = 7;
/** The pruning window is this long at most, days. Standing: ours. */
const PRUNE_DAYS = 35;

const monthNames = [
  'Jan',
  'Feb',
  'Mar',
  'Apr',
  'May',
  'Jun',
  'Jul',
  'Aug',
  'Sep',
  'Oct',
  'Nov',
  'Dec',
] as const;

/** Months between two days of the season, January 0, each once and in order. */
function monthsBetween(from: number, to: number, firstDoy: number): number[] {
  const months = new Set<number>();
  for (let at = from; at <= to; at += 7) {
    months.add(monthOfDay[wrapDoy(firstDoy + Math.round(at)) - 1]!);
  }
  return [...months];
}

/** Mean of a month of the evapotranspiration, mm a day. */
export function etoOfMonth({ etoMm, firstDoy }: Pick<CareYear, 'etoMm' | 'firstDoy'>, month: number): number {
  const days = etoMm.filter((_, at) => monthOfDay[wrapDoy(firstDoy + at) - 1] === month);
  return days.reduce((sum, mm) => sum + mm, 0) / days.length;
}

/** `every 5 days in Apr, 3 in May to Jul, 2 in Aug`: days by month, as `daysOf` has them. */
export function daysInWords(
  year: Pick<CareYear, 'etoMm' | 'firstDoy'>,
  from: number,
  to: number,
  daysOf: (etoMm: number) => number,
): string {
  const runs: { days: number; first: number; last: number }[] = [];
  for (const month of monthsBetween(from, to, year.firstDoy)) {
    const days = roundTo(daysOf(etoOfMonth(year, month)), 1);
    const run = runs.at(-1);
    if (run && run.days === days) run.last = month;
    else runs.push({ days, first: month, last: month });
  }
  const words = runs.map(({ days, first, last }, index) => {
    const span = first === last ? monthNames[first] : `${monthNames[first]} to ${monthNames[last]}`;
    return index === 0 ? `every ${days === 1 ? 'day' : `${days} days`} in ${span}` : `${days} in ${span}`;
  });
  return words.join(', ');
}

function stopFeeding(year: CareYear): Window {
  const at = lastFeed(year);
  const hasFreeze = year.firstFreeze['32F'].p50 !== null;
  return {
    name: 'stop-feeding',
    from: at - 7,
    to: at,
    trigger: hasFreeze
      ? 'Ten weeks before the median first freeze.'
      : 'Ten weeks before the coolest part of the year, so that growth slows for it.',
    because: [resting('Growth pushed late does not ripen before the cold.', careFigures.stopFeeding)],
  };
}

/** Waterings of a pot, or of a tree in the ground in dry weather. */
function watering(year: CareYear, from: number, inPot: boolean): Window {
  const to = growthEnds(year);
  const water = measureText({ ...waterLiters(year.potLiters), unit: 'L' }, 'us');
  return {
    name: 'water-growing',
    from,
    to,
    trigger: inPot
      ? `When the pot feels light, about ${daysInWords(year, from, to, mm => potWateringDays(mm, year.potLiters))}. This pot takes ${water} at a time. Rain on the leaves does not count.`
      : 'In dry weather, when the top 2 in (5 cm) of soil is dry: a deep watering once a week.',
    because: [
      {
        text: inPot
          ? 'The days come from the evapotranspiration of each month (FAO-56, Hargreaves) and the size of the pot, fitted to one trial (Beeson 2010).'
          : 'Roots follow water down when it is given seldom and deep.',
        standing: 'ours',
      },
    ],
  };
}

/** Feeding of a tree that is outdoors for its growth from a day on, and watering from its first leaves on. */
export function growingWindows(
  year: CareYear,
  outFrom: number,
  inPot: boolean,
  leafedFrom: number = growthStarts(year).middle,
): Window[] {
  const growing = Math.max(leafedFrom, outFrom);
  return existing([
    stopFeeding(year),
    {
      name: 'feed',
      from: growing + FEED_AFTER_GROWTH_DAYS,
      to: lastFeed(year) + DAYS_PER_YEAR,
      trigger: inPot
        ? 'While it grows: every two weeks at half the strength on the label.'
        : 'Once as growth gets going and once six weeks later, at the strength on the label.',
      because: [resting('It ends with the last feed, ten weeks before the cold.', careFigures.stopFeeding)],
    },
    watering(year, leafedFrom, inPot),
  ]);
}

/** Less water while wood ripens, and the fall of the leaves; or the rest where nothing makes them fall. */
export function ripeningWindows(year: CareYear): Window[] {
  const { leafFall, species, coldestDay } = year;
  if (leafFall.p50 === null || leafFall.p10 === null) {
    return [
      {
        name: 'rest',
        from: coldestDay - HALF_REST_DAYS,
        to: coldestDay + HALF_REST_DAYS,
        trigger:
          'In the coolest weeks: water only when the leaves ask for it, and do not feed. Leaves may or may not fall.',
        because: [modeled('Most winters here have no night cold enough to make the leaves fall at once.')],
      },
    ];
  }
  return existing([
    {
      name: 'ease-water',
      from: Math.min(earlyFreeze(year) ?? leafFall.p10, leafFall.p10),
      to: leafFall.p50,
      trigger:
        'From the first freezes until the leaves are down: let the top third of the mix dry between waterings.',
      because: [
        {
          text: 'Drier roots help the wood ripen.',
          standing: 'practice',
          source: 'Common practice, no source.',
        },
      ],
    },
    {
      name: 'leaf-fall',
      from: leafFall.p10,
      to: leafFall.p90 ?? leafFall.p50,
      trigger: `After the first night of about ${temperatureInWords(species.leafFallNightC.value)} or two cool weeks. Leaves stripped by one frost are no proof that it sleeps.`,
      because: [
        modeled('In four years of five the leaves come down between these days.'),
        resting('The night that takes the leaves.', species.leafFallNightC),
      ],
    },
  ]);
}

/** Pruning of a tree that winters outdoors; `notBefore` is the day its cover comes off. */
export function pruning(year: CareYear, notBefore: number | null): Window {
  const { coldestDay, dormant, leafFall } = year;
  const { early } = growthStarts(year);
  if (leafFall.p50 === null) {
    return {
      name: 'prune',
      from: coldestDay - HALF_REST_DAYS / 2,
      to: Math.max(
        coldestDay - HALF_REST_DAYS / 2 + 14,
        Math.min(coldestDay + HALF_REST_DAYS, early) - PRUNE_BEFORE_BUDS_DAYS,
      ),
      trigger: 'In the coolest weeks, before new growth.',
      because: [modeled('No winter sleep is to be relied on here, so the coolest weeks stand in for it.')],
    };
  }
  const to = Math.max(early - PRUNE_BEFORE_BUDS_DAYS, notBefore ?? 0);
  const asleep = dormant.p50 ?? leafFall.p50;
  return {
    name: 'prune',
    from: Math.max(Math.min(asleep, to - 14), to - PRUNE_DAYS, notBefore ?? Number.NEGATIVE_INFINITY),
    to: notBefore !== null && to === notBefore ? notBefore + 14 : to,
    trigger: 'While it sleeps, after the worst cold and before the buds swell.',
    because: [modeled('Buds break later than this in nine years in ten.')],
  };
}
