/** The first weeks of a newly bought tree. Days of the season in which it arrives. */

import { growsOnLate } from '../climate/placeClass.ts';
import { ripenessOf } from '../phenology/puttingAway.ts';
import { temperatureInWords } from '../units.ts';
import { careFigures } from './careFigures.ts';
import type { CareYear } from './careYear.ts';
import type { PlantInCare } from './plantInCare.ts';
import { earlyFreeze, moveInDays, potWinter, safeDay, wakeDay } from './turningPoints.ts';
import { existing, modeled, resting, type Window } from './window.ts';

/** Mean of the days from which a leafless tree is taken to wake, C: as for days that count toward dormancy. */
const WAKING_MEAN_C = 10;
/** A leafless tree that arrives in warmth is still kept asleep where fewer days than this are left before freezes. Standing: ours. */
const TOO_SHORT_TO_WAKE_DAYS = 90;

/** What becomes of the tree when it arrives. */
export type Arrival =
  /** In leaf, with a season before it. */
  | 'settles'
  /** In leaf, close to the freezes or among them, where pots are stored. */
  | 'late-in-leaf'
  /** Leafless, and kept so until spring under cover. */
  | 'stored'
  /** Leafless, and left outdoors through a mild winter. */
  | 'stands-out'
  /** Leafless where it is warm: it grows. */
  | 'wakes';

/** The situation of a tree that arrives `at` a day of the season. */
export function arrivalOf(year: CareYear, plant: PlantInCare, at: number): Arrival {
  const safe = safeDay(year);
  const freeze = earlyFreeze(year);
  const stores = potWinter(year) === 'store' && safe !== null && freeze !== null;
  const wake = safe === null ? null : wakeDay(year, safe);
  if (plant.form === 'leafed-pot') {
    if (!stores || wake === null || freeze === null) return 'settles';
    const late = at > freeze - careFigures.lateArrival.low && at < wake;
    return late ? 'late-in-leaf' : 'settles';
  }
  const warm = (year.meanC[at] as number) >= WAKING_MEAN_C;
  if (!stores || wake === null || freeze === null) return warm ? 'wakes' : 'stands-out';
  if (at >= wake) return 'wakes';
  const seasonLeft = freeze - at;
  const long = growsOnLate(year.placeClass) || seasonLeft >= TOO_SHORT_TO_WAKE_DAYS;
  return warm && long && seasonLeft > 0 ? 'wakes' : 'stored';
}

/** Whether the tree is past the falling of leaves of its first season: it came asleep, or loses its leaves under cover. */
export function skipsAutumn(arrival: Arrival, year: CareYear, at: number): boolean {
  if (arrival === 'stored' || arrival === 'stands-out') return true;
  return arrival === 'late-in-leaf' && at >= (year.leafFall.p50 ?? 0);
}

function firstDay(plant: PlantInCare, at: number): Window[] {
  const unwrap =
    plant.form === 'bare-root'
      ? 'Open the parcel, loosen the packing, and wet the roots at once: minutes of sun and wind kill fine roots. Check the label, wood and roots, and photograph anything wrong.'
      : 'Open the parcel, take the wraps off, stand the pot upright in shade and water it if it is light. Check the label, wood and mix, and photograph anything wrong.';
  return [
    {
      name: 'unpack',
      from: at,
      to: at,
      trigger: unwrap,
      because: [
        {
          text: 'A tree has been in the dark for days and dries out in the box.',
          standing: 'practice',
          source: 'Common practice, no source.',
        },
      ],
    },
    {
      name: 'stand-apart',
      from: at,
      to: at + careFigures.standApart.high,
      trigger:
        'Away from your other plants; look under leaves and along the wood once a week. Follow what your plant health authority asks.',
      because: [resting('Pests show in the first weeks.', careFigures.standApart)],
    },
  ];
}

/** Bare roots: soaked, then planted at once, kept wrapped until the window opens, or potted. `plantFrom` is null without a window. */
function bareRoots(plant: PlantInCare, at: number, plantFrom: number | null): Window[] {
  const { species } = plant;
  const keeps = species.bareRootKeepsDays;
  const wait = plantFrom === null ? Number.POSITIVE_INFINITY : plantFrom - at;
  const keepsUntilThen = wait > 1 && wait <= keeps.high;
  const soakOn = keepsUntilThen ? (plantFrom as number) : at;
  const store = '33 to 40 F (0.5 to 4.5 C)';
  return existing([
    keepsUntilThen
      ? {
          name: 'keep-wrapped',
          from: at,
          to: soakOn - 1,
          trigger: `At ${store}, roots in damp packing inside a bag, away from ripening fruit: a week anywhere as cold, up to ${keeps.high} days in cold storage or heeled into damp sand.`,
          because: [resting('How long bare roots keep.', keeps)],
        }
      : null,
    {
      name: 'soak-roots',
      from: soakOn,
      to: soakOn,
      trigger: '1 to 6 hours in clean water, never longer than a day.',
      because: [resting('Roots drink back what they lost on the way.', careFigures.soak)],
    },
    wait > 1 && !keepsUntilThen
      ? {
          name: 'pot-up',
          from: at,
          to: at + 1,
          trigger:
            'Straight from the soak into a pot that takes the roots without bending; water once and hold it cool for two to four weeks.',
          because: [resting('Roots start before the top when it is cool.', careFigures.coolAfterPotting)],
        }
      : null,
  ]);
}

function stored(year: CareYear, at: number, wake: number): Window[] {
  const { low, high } = year.species.storageC;
  return existing([
    {
      name: 'store-on-arrival',
      from: at,
      to: at + 2,
      trigger: `Into the dark at ${temperatureInWords(low)} to ${temperatureInWords(high)} and leave it asleep. It needs no leaves before spring.`,
      because: [
        resting('Sleeping trees keep best at this temperature.', year.species.storageC),
        resting(
          'Once it has had its winter, a warm room wakes it in one to two weeks, months too early.',
          careFigures.regrowth,
        ),
      ],
    },
    ...untilSpring(year, at + 3, wake),
  ]);
}

/** Watering and looking at a tree that is under cover before the season's own move into the store. */
function untilSpring(year: CareYear, from: number, wake: number): Window[] {
  return existing([
    {
      name: 'water-stored',
      from,
      to: wake - 1,
      trigger: 'Every three to five weeks, when the top 2 in (5 cm) is dry, and little.',
      because: [resting('A sleeping tree hardly drinks; soaked roots rot.', careFigures.storedWaterShare)],
    },
    {
      name: 'inspect-stored',
      from,
      to: wake - 1,
      trigger: 'Every two to three weeks: cold enough, firm wood, no mold, no mice.',
      because: [resting('Sleeping trees keep best at this temperature.', year.species.storageC)],
    },
  ]);
}

function lateLeaves(year: CareYear, plant: PlantInCare, at: number, safe: number): Window[] {
  const fall = year.leafFall.p50 ?? at;
  const because = [
    modeled('It is too late here for this tree to ripen its wood before the cold.'),
    {
      text: 'A short season gives late leaves nothing to do.',
      standing: 'practice' as const,
      source: 'Common practice, no source.',
    },
  ];
  const { species, potLiters } = plant;
  const ripeness = ripenessOf({ species, potLiters, firstWinter: true, wood: null });
  if (at < fall) {
    return [
      {
        name: 'hold-late-leaves',
        from: at,
        to: Math.max(at, Math.min(fall, moveInDays(year, ripeness).from - 1)),
        trigger:
          'Outdoors in the light by day, under cover on freezing nights, no feed, little water. Let the leaves fall; then it goes into storage with the rest.',
        because,
      },
    ];
  }
  return [
    {
      name: 'hold-late-leaves',
      from: at,
      to: Math.max(at + 1, safe - careFigures.hardening.high - 1),
      trigger:
        'Not outdoors, and not into the dark. A bright room at 50 to 60 F (10 to 15 C) until spring: water when the top 2 in (5 cm) is dry, do not feed, and let no freeze reach it.',
      because,
    },
    {
      name: 'harden',
      from: Math.max(at + 2, safe - careFigures.hardening.high),
      to: safe - 1,
      trigger:
        'Once nights stay above 40 F (4 C): three to four days in full shade, then an hour more of sun each day, in for every freezing night.',
      because: [resting('Leaves grown indoors burn in open sun and wind.', careFigures.hardening)],
    },
  ];
}

/** Tasks of the first weeks. `plantFrom`: the day of the season from which it can be planted, null when it is not or not yet asleep. */
export function arrivalWindows(
  year: CareYear,
  plant: PlantInCare,
  at: number,
  arrival: Arrival,
  plantFrom: number | null,
): Window[] {
  const safe = safeDay(year);
  const wake = safe === null ? at : wakeDay(year, safe);
  const windows = firstDay(plant, at);
  if (plant.form === 'bare-root') windows.push(...bareRoots(plant, at, plantFrom));
  const wrapped = windows.some(({ name }) => name === 'keep-wrapped');
  const plantedNow = plantFrom !== null && plantFrom - at <= 1;
  if (arrival === 'settles') windows.push(settleIn(at));
  if (arrival === 'late-in-leaf') windows.push(...lateLeaves(year, plant, at, safe ?? at));
  if (wrapped || plantedNow) return existing(windows);
  if (arrival === 'stored') windows.push(...stored(year, at, wake));
  if (arrival === 'stands-out') {
    windows.push({
      name: 'stand-out',
      from: at,
      to: at + 3,
      trigger: 'Out of wind and hard sun, pot on the ground, damp but not wet. It wakes by itself.',
      because: [modeled('No usual cold spell here is long enough to hurt the roots in a pot.')],
    });
  }
  if (arrival === 'wakes') {
    windows.push({
      name: 'wake-on-arrival',
      from: at,
      to: at + 14,
      trigger:
        'Out of the wind in bright shade, damp but not wet; sun in steps once it has leaves. Growth starts one to two weeks after it is warm. On freezing nights it comes in.',
      because: [
        modeled('It is already too warm here to keep it asleep.'),
        resting('Once warm, it grows in one to two weeks.', careFigures.regrowth),
      ],
    });
  }
  return existing(windows);
}

function settleIn(at: number): Window {
  return {
    name: 'settle-in',
    from: at,
    to: at + careFigures.hardening.high,
    trigger:
      'Bright shade out of the wind for three days, then an hour more of sun each day; in on freezing nights.',
    because: [resting('Leaves from a parcel burn in open sun.', careFigures.hardening)],
  };
}
