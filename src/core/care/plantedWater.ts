/** Watering of a tree newly planted in the ground, from the day it is planted through its second summer. Days of the season of planting. */

import { DAYS_PER_YEAR, monthOfDay, wrapDoy } from '../climate/calendar.ts';
import { roundTo } from '../units.ts';
import { careFigures } from './careFigures.ts';
import type { CareYear } from './careYear.ts';
import { daysInWords, etoOfMonth } from './growingWindows.ts';
import { measureText } from './guideMeasures.ts';
import type { PlantInCare } from './plantInCare.ts';
import { growthEnds, growthStarts } from './turningPoints.ts';
import { type PlantedStage, plantedWateringDays, plantedWaterLiters, usualCaliperMm } from './watering.ts';
import { existing, resting, type Window } from './window.ts';

const FIRST_WEEKS_DAYS = 14;
const ROOTING_DAYS = careFigures.rootingWeeks.low * 7;

/** The first day at or after another that a day of every season falls on. */
function nextAfter(at: number, after: number): number {
  return at + Math.ceil((after - at) / DAYS_PER_YEAR) * DAYS_PER_YEAR;
}

const everyDays = (days: number) => (days <= 1 ? 'every day' : `every ${days} days`);

/** How much at a time, by the pot it came in and the stem that is usual for it. */
function amount(potLiters: number): string {
  const liters = roundTo(plantedWaterLiters(usualCaliperMm(potLiters), potLiters), 0.5);
  return `${measureText({ low: liters, high: liters, unit: 'L' }, 'us')} on the root ball`;
}

/**
 * Windows of the watering of a tree planted between two days, `asleep` when it has no leaves then: dry spells until it grows; every day or two
 * for two weeks and every few days to the twelfth; about weekly for the rest of its first growth; soakings in the dry spells of its second.
 */
export function plantedWater(
  year: CareYear,
  { potLiters }: Pick<PlantInCare, 'potLiters'>,
  planted: Pick<Window, 'from' | 'to'>,
  asleep: boolean,
): Window[] {
  const { middle } = growthStarts(year);
  const starts = asleep ? nextAfter(middle, planted.from) : planted.from;
  const ends = nextAfter(growthEnds(year), starts + 1);
  const begun = asleep ? starts : planted.to;
  const rooted = Math.min(begun + ROOTING_DAYS, ends);
  const secondStarts = nextAfter(middle, ends);
  const secondEnds = nextAfter(growthEnds(year), secondStarts + 1);
  const monthAt = (at: number) => monthOfDay[wrapDoy(year.firstDoy + Math.round(at)) - 1]!;
  const days = (stage: PlantedStage) => (mm: number) => plantedWateringDays(stage, mm);
  const water = amount(potLiters);
  const reaches = resting(
    'Its roots reach no farther than the pot or bundle they came in.',
    careFigures.plantedWater,
  );
  const byWeather = {
    text: 'The days follow the evapotranspiration of each month (FAO-56, Hargreaves); rain of 1 in (2.5 cm) counts as a turn.',
    standing: 'ours' as const,
  };
  const first = roundTo(days('first-weeks')(etoOfMonth(year, monthAt(starts))), 1);
  return existing([
    asleep
      ? {
          name: 'water-asleep',
          from: planted.from + 1,
          to: starts - 1,
          trigger: `Water it in once, ${water}. After that only after two to four weeks without rain: a leafless tree hardly drinks.`,
          because: [resting('Without leaves it loses little water.', careFigures.sleepingWaterDays)],
        }
      : null,
    {
      name: 'water-new',
      from: starts + 1,
      to: rooted,
      trigger: `${water} at a time, ${everyDays(first)} for the first two weeks. Then until the twelfth week ${daysInWords(year, starts + FIRST_WEEKS_DAYS, rooted, days('rooting'))}. Skip a turn after 1 in (2.5 cm) of rain.`,
      because: [reaches, byWeather],
    },
    {
      name: 'water-first-summer',
      from: rooted + 1,
      to: ends,
      trigger: `${water} at a time, ${daysInWords(year, rooted + 1, ends, days('first-year'))}. Skip a turn after 1 in (2.5 cm) of rain.`,
      because: [resting('Roots are still on their way into the soil.', careFigures.plantedWater), byWeather],
    },
    {
      name: 'water-second-summer',
      from: secondStarts,
      to: secondEnds,
      trigger: 'In dry spells a deep soaking every ten to fourteen days, over the whole reach of the roots.',
      because: [
        resting(
          'It takes more than one summer until a tree stands on its own roots.',
          careFigures.secondSummerWaterDays,
        ),
      ],
    },
  ]);
}
