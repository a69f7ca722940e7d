/** A year of a tree in a pot. */

import { temperatureInWords } from '../units.ts';
import { careFigures } from './careFigures.ts';
import type { CareYear } from './careYear.ts';
import { growingWindows, pruning, ripeningWindows } from './growingWindows.ts';
import { measureText } from './guideMeasures.ts';
import { growthStarts, moveInDays, potWinter, safeDay, wakeDay } from './turningPoints.ts';
import { waterLitres } from './watering.ts';
import { existing, modelled, resting, type Window } from './window.ts';

function storedWindows(year: CareYear, safe: number): Window[] {
  const { species, potLitres } = year;
  const moveIn = moveInDays(year);
  const wake = wakeDay(year, safe);
  const rootLimit = temperatureInWords(species.rootInjuryC.value);
  const { low, high } = species.storageC;
  const store =
    low === high ? temperatureInWords(low) : `${temperatureInWords(low)} to ${temperatureInWords(high)}`;
  const water = measureText({ ...waterLitres(potLitres, careFigures.storedWaterShare), unit: 'L' }, 'metric');
  return [
    {
      name: 'move-in',
      ...moveIn,
      trigger: `Leaves down, a few nights of about 25 to 20 F (-4 to -6.5 C) behind it, and before a cold spell takes the mix in the pot to ${rootLimit}.`,
      because: [
        resting('It sleeps better for having met real cold first.', careFigures.moveInNights),
        modelled(
          'By the last of these days the mix in an open pot of this size has reached the limit of the roots in one year of ten, or the nights have been cold enough.',
        ),
        resting(`Roots are hurt from ${rootLimit} in the mix.`, species.rootInjuryC),
      ],
    },
    {
      name: 'water-stored',
      from: moveIn.to + 1,
      to: wake - 1,
      trigger: `Every three to five weeks, when the top 2 in (5 cm) is dry: about ${water}, never onto frozen mix.`,
      because: [resting('A sleeping tree hardly drinks; soaked roots rot.', careFigures.storedWaterShare)],
    },
    {
      name: 'inspect-stored',
      from: moveIn.to + 1,
      to: wake - 1,
      trigger: `Every two to three weeks: the store at ${store}, wood firm, no mould, no mice. Above 50 F (10 C) for a week the buds wake.`,
      because: [
        resting('Sleeping trees keep best at this temperature.', species.storageC),
        resting('Warmth wakes the buds.', careFigures.storeTooWarm),
        resting('How often to look.', careFigures.storedCheckDays),
      ],
    },
    {
      name: 'prune',
      from: wake - 28,
      to: wake - 1,
      trigger: 'In the store, before the buds swell.',
      because: [
        {
          text: 'A cut made while it sleeps bleeds least.',
          standing: 'practice',
          source: 'Common practice, no source.',
        },
      ],
    },
    {
      name: 'wake',
      from: wake,
      to: wake + 7,
      trigger:
        'A bright place at 46 to 54 F (8 to 12 C), out of the wind; back inside for the night when it freezes. Growth starts one to two weeks after it is warm.',
      because: [
        modelled(
          'From here the days outdoors are warm enough for a bright shed, and the wait until the safe day is six weeks at the most.',
        ),
        resting('Once warm, it grows in one to two weeks.', careFigures.regrowth),
      ],
    },
    {
      name: 'pot-on',
      from: wake,
      to: safe - 15,
      trigger: 'As the buds move, when roots circle the pot: one or two sizes up.',
      because: [
        {
          text: 'Roots grow into fresh mix fastest as growth starts.',
          standing: 'practice',
          source: 'Common practice, no source.',
        },
      ],
    },
    {
      name: 'harden',
      from: safe - careFigures.hardening.high,
      to: safe - 1,
      trigger: 'Out for longer each day, shade first, in for every freezing night.',
      because: [resting('Leaves grown indoors burn in open sun and wind.', careFigures.hardening)],
    },
    {
      name: 'move-out',
      from: safe,
      to: safe + 14,
      trigger: 'When the chance of a later freeze has dropped to 1 in 10.',
      because: [
        modelled('A night of 32 F (0 C) comes later than the first of these days in one year of ten.'),
      ],
    },
    ...growingWindows(year, safe, true),
  ];
}

function outdoorWindows(year: CareYear): Window[] {
  const { species, coldRiskFirst, coldRiskLast, potRiskFirst, potRiskLast, placeName } = year;
  const { early, middle } = growthStarts(year);
  const safe = safeDay(year);
  const young = { first: coldRiskFirst.young.p10, last: coldRiskLast.young.p90 };
  const starts = [potRiskFirst.p10, young.first].filter(day => day !== null);
  const ends = [potRiskLast.p90, young.last].filter(day => day !== null);
  const shelters = potWinter(year) === 'shelter' && starts.length > 0 && ends.length > 0;
  return [
    shelters
      ? {
          name: 'shelter-nights' as const,
          from: Math.min(...starts),
          to: Math.max(...ends),
          trigger: `Nights forecast at ${temperatureInWords(species.dormantFirstWinterC.value)} or below, and spells of days that stay below freezing: into a shed, or down on the ground with straw round the pot.`,
          because: [
            modelled(
              `Such nights come to ${placeName} in at least one winter in ten, too seldom to store the pot for months.`,
            ),
            resting('What young wood stands.', species.dormantFirstWinterC),
            resting('What roots in a pot stand.', species.rootInjuryC),
          ],
        }
      : null,
    pruning(year, null),
    {
      name: 'pot-on' as const,
      from: early - 14,
      to: Math.max(middle, early - 1),
      trigger: 'As the buds move, when roots circle the pot: one or two sizes up.',
      because: [
        {
          text: 'Roots grow into fresh mix fastest as growth starts.',
          standing: 'practice' as const,
          source: 'Common practice, no source.',
        },
      ],
    },
    coverNewLeaves(year, early, safe),
    ...growingWindows(year, 0, true),
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
      modelled('Buds can break before the last freeze here.'),
      resting('From this temperature new leaves are hurt.', species.leafDamageC),
      resting('Worth of a cloth.', careFigures.clothGain),
    ],
  };
}

/** Every season of every calendar of a place asks for the same. */
const kept = new WeakMap<CareYear, Window[]>();

/** All windows of one season of a tree in a pot. */
export function potWindows(year: CareYear): readonly Window[] {
  const windows = kept.get(year) ?? newPotWindows(year);
  kept.set(year, windows);
  return windows;
}

function newPotWindows(year: CareYear): Window[] {
  const safe = safeDay(year);
  const winter = potWinter(year);
  const season = winter === 'store' && safe !== null ? storedWindows(year, safe) : outdoorWindows(year);
  return existing([...ripeningWindows(year), ...season]);
}
