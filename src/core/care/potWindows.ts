/** A year of a tree in a pot. */

import { puttingAway, puttingAwayReasons, type Ripeness } from '../phenology/puttingAway.ts';
import { temperatureInWords } from '../units.ts';
import { careFigures } from './careFigures.ts';
import type { CareYear } from './careYear.ts';
import { growingWindows, pruning, ripeningWindows } from './growingWindows.ts';
import { measureText } from './guideMeasures.ts';
import { growthStarts, moveInDays, potWinter, safeDay, wakingOf } from './turningPoints.ts';
import { waterLiters } from './watering.ts';
import { existing, modeled, resting, type Window } from './window.ts';

const temperatureSpan = (lowC: number, highC: number) =>
  lowC === highC ? temperatureInWords(lowC) : `${temperatureInWords(lowC)} to ${temperatureInWords(highC)}`;

const bestForRoots = {
  text: 'Roots grow into fresh mix fastest once the tree grows.',
  standing: 'practice' as const,
  source: 'Common practice, no source.',
};

/** A larger pot comes this long after the first feed, days. Standing: ours; the order is common practice, no source. */
const POT_AFTER_FEED_DAYS = 7;
const POT_UP_DAYS = 28;

/** A larger pot once growth is fed; `fedFrom` is the day of the first feed. */
function pottingUp(fedFrom: number): Window {
  return {
    name: 'pot-on',
    from: fedFrom + POT_AFTER_FEED_DAYS,
    to: fedFrom + POT_AFTER_FEED_DAYS + POT_UP_DAYS,
    trigger: 'After the first feed, when roots circle the pot: one or two sizes up, or into the ground.',
    because: [bestForRoots],
  };
}

/** What is done to a pot in the days before it is put away. */
const READYING_DAYS = 4;

/** How it is put away and kept. */
function storing(year: CareYear, moveIn: { from: number; to: number }, light: number, ripeness: Ripeness) {
  const { species, potLiters } = year;
  const rootLimit = temperatureInWords(species.rootInjuryC.value);
  const store = temperatureSpan(species.storageC.low, species.storageC.high);
  const water = measureText({ ...waterLiters(potLiters, careFigures.storedWaterShare), unit: 'L' }, 'us');
  const windows: Window[] = [
    {
      name: 'ready-for-store',
      from: moveIn.from - READYING_DAYS,
      to: moveIn.from,
      trigger:
        'A day or two before it goes in: water the pot through, let it drain, and lay 2 in (5 cm) of leaves or straw on the mix. Look along the bark for scale.',
      because: [
        {
          text: 'Moisture is what protects roots most, and wet mix freezes slowly.',
          standing: 'published',
          source: 'Rutgers Cooperative Extension, fact sheet FS528.',
        },
        {
          text: 'Growers water through and top mulch before storage.',
          standing: 'practice',
          source: 'Common practice, no source.',
        },
      ],
    },
    {
      name: 'move-in',
      ...moveIn,
      trigger: `${puttingAway[ripeness].when}; in any case before the mix in the pot gets down to ${rootLimit}. Go by the forecast.`,
      because: [
        ...puttingAwayReasons(ripeness),
        resting(`Roots are damaged when the mix gets down to ${rootLimit}.`, species.rootInjuryC),
      ],
    },
    {
      name: 'water-stored',
      from: moveIn.to + 1,
      to: light - 1,
      trigger: `Every three to five weeks, when the top 2 in (5 cm) is dry: about ${water}, never onto frozen mix.`,
      because: [resting('A sleeping tree hardly drinks; soaked roots rot.', careFigures.storedWaterShare)],
    },
    {
      name: 'inspect-stored',
      from: moveIn.to + 1,
      to: light - 1,
      trigger: `Every two to three weeks: storage at ${store}, wood firm, no mold, no mice. If leaves come early, give light at once, keep it at 45 to 55 F (7 to 13 C) and out of every freeze, and never back in the dark.`,
      because: [
        resting('Sleeping trees keep best at this temperature.', species.storageC),
        resting(
          'At 50 F (10 C) a tree that has had its winter opens its leaves in one to two months.',
          careFigures.forcing,
        ),
        resting('How often to look.', careFigures.storedCheckDays),
      ],
    },
    {
      name: 'prune',
      from: light - 28,
      to: light - 1,
      trigger: 'In storage, before the buds swell.',
      because: [
        {
          text: 'A cut made while it sleeps bleeds least.',
          standing: 'practice',
          source: 'Common practice, no source.',
        },
      ],
    },
  ];
  return windows;
}

/** From the light to the open air, in the order in which one thing brings about the next. */
function waking(year: CareYear, safe: number): Window[] {
  const { light, swell, leaves, lastLeaves } = wakingOf(year, safe);
  // Leaves that open outdoors are hard from the start.
  const leafedIndoors = leaves < safe - SHORTEST_HARDENING_DAYS;
  const forced = resting(
    'The heat of a place at 50 F (10 C), added up from the day it comes into the light.',
    careFigures.forcing,
  );
  return [
    {
      name: 'wake',
      from: light,
      to: Math.min(light + 7, swell - 1),
      trigger:
        'A bright place at 45 to 55 F (7 to 13 C), out of the wind, inside when it freezes; water it through once. It wakes by warmth added up: one to two weeks where it is warm, one to two months at 50 F (10 C).',
      because: [
        modeled(
          'From here the days outdoors are warm enough for a bright shed, and the wait until the safe day is six weeks at the most.',
        ),
        resting('Once warm, it grows in one to two weeks.', careFigures.regrowth),
      ],
    },
    {
      name: 'water-waking',
      from: light + 7,
      to: Math.max(light + 7, Math.min(leaves, safe) - 1),
      trigger:
        'Look once a week and water when the top 2 in (5 cm) is dry, less than a pot in leaf: without leaves it still drinks little.',
      because: [resting('Soaked roots rot before there are leaves to drink.', careFigures.storedWaterShare)],
    },
    {
      name: 'watch-buds',
      from: swell,
      to: Math.max(swell, lastLeaves),
      trigger:
        'Buds swell and show green at the tip, then leaves open, the slow kinds weeks after the quick. From the first leaf no freeze may reach it.',
      because: [forced],
    },
    ...(leafedIndoors
      ? [
          {
            name: 'harden' as const,
            from: Math.max(leaves, safe - careFigures.hardening.high),
            to: safe - 1,
            trigger:
              'Once leaves are open and nights stay above 40 F (4 C): three to four days in full shade, then an hour more of sun each day, in for every freezing night.',
            because: [resting('Leaves grown indoors burn in open sun and wind.', careFigures.hardening)],
          },
        ]
      : []),
    {
      name: 'move-out',
      from: safe,
      to: safe + 14,
      trigger: leafedIndoors
        ? 'When the chance of a later freeze has dropped to 1 in 10 and its leaves are hardened.'
        : 'When the chance of a later freeze has dropped to 1 in 10. Where its buds are still closed it goes straight out: leaves that open outdoors need no hardening.',
      because: [
        modeled('A night of 32 F (0 C) comes later than the first of these days in one year in ten.'),
      ],
    },
  ];
}

/** Hardening is worth a task from so many days on. Standing: ours. */
const SHORTEST_HARDENING_DAYS = 3;

function storedWindows(year: CareYear, safe: number, ripeness: Ripeness): Window[] {
  const { light, leaves } = wakingOf(year, safe);
  const outdoors = growingWindows(year, safe, true, leaves);
  const feed = outdoors.find(({ name }) => name === 'feed');
  return [
    ...storing(year, moveInDays(year, ripeness), light, ripeness),
    ...waking(year, safe),
    ...(feed ? [pottingUp(feed.from)] : []),
    ...outdoors,
  ];
}

/** Days before and after the nights of one winter in ten in which the forecast is watched. Standing: ours. */
const SHELTER_MARGIN_DAYS = 7;

function outdoorWindows(year: CareYear): Window[] {
  const { species, coldRiskFirst, coldRiskLast, potRiskFirst, potRiskLast, placeName } = year;
  const { early } = growthStarts(year);
  const safe = safeDay(year);
  const growing = growingWindows(year, 0, true);
  const feed = growing.find(({ name }) => name === 'feed');
  // In one winter in ten the first such night may come after the usual last one: so the days span all that is known.
  const edges = [potRiskFirst.p10, coldRiskFirst.young.p10, potRiskLast.p90, coldRiskLast.young.p90].filter(
    at => at !== null,
  );
  const shelters = potWinter(year) === 'shelter' && edges.length > 0;
  return [
    shelters
      ? {
          name: 'shelter-nights' as const,
          from: Math.min(...edges) - SHELTER_MARGIN_DAYS,
          to: Math.max(...edges) + SHELTER_MARGIN_DAYS,
          trigger: `Nights forecast at ${temperatureInWords(species.dormantFirstWinterC.value)} or below, and spells of days that stay below freezing: into a shed, or down on the ground with straw round the pot.`,
          because: [
            modeled(
              `Such nights come to ${placeName} in at least one winter in ten, too seldom to store the pot for months.`,
            ),
            resting('What young wood stands.', species.dormantFirstWinterC),
            resting('What roots in a pot stand.', species.rootInjuryC),
          ],
        }
      : null,
    pruning(year, null),
    coverNewLeaves(year, early, safe),
    feed ? pottingUp(feed.from) : null,
    ...growing,
  ].filter((window): window is Window => window !== null);
}

/** Freezing nights between budbreak and the safe day. */
export function coverNewLeaves({ species }: CareYear, early: number, safe: number | null): Window | null {
  if (safe === null || safe <= early) return null;
  return {
    name: 'cover-new-leaves',
    from: early,
    to: safe,
    trigger: `From budbreak, on nights forecast at ${temperatureInWords(species.leafDamageC.value)} or below; a cloth is worth 2 to 4 degrees F (1 to 2 degrees C).`,
    because: [
      modeled('Buds can break before the last freeze here.'),
      resting('New leaves are damaged at this temperature and below.', species.leafDamageC),
      resting('Worth of a cloth.', careFigures.clothGain),
    ],
  };
}

/** Every season of every calendar of a place asks for the same. */
const kept = new WeakMap<CareYear, Map<Ripeness, Window[]>>();

/** All windows of one season of a tree in a pot whose wood is so ripe when the winter comes. */
export function potWindows(year: CareYear, ripeness: Ripeness): readonly Window[] {
  const ofYear = kept.get(year) ?? new Map<Ripeness, Window[]>();
  const windows = ofYear.get(ripeness) ?? newPotWindows(year, ripeness);
  kept.set(year, ofYear.set(ripeness, windows));
  return windows;
}

function newPotWindows(year: CareYear, ripeness: Ripeness): Window[] {
  const safe = safeDay(year);
  const winter = potWinter(year);
  const season =
    winter === 'store' && safe !== null ? storedWindows(year, safe, ripeness) : outdoorWindows(year);
  return existing([...ripeningWindows(year), ...season]);
}
