/** A year of round figures, made by hand, so that every window of a calendar can be worked out beside it. Days of the season. */

import type { CareYear, SeasonDays } from '../../src/core/care/careYear.ts';
import { ripenesses } from '../../src/core/phenology/puttingAway.ts';
import type { Species } from '../../src/core/records/species.ts';
import { realSpecies } from './realPlaces.ts';

export const never: SeasonDays = { p10: null, p50: null, p90: null };
export const about = (middle: number, spread: number): SeasonDays => ({
  p10: middle - spread,
  p50: middle,
  p90: middle + spread,
});

/** Mean temperature that falls and rises in straight lines: warmest on day 0, coldest on day 180, C. */
export function sawtooth(coldC: number, warmC: number): number[] {
  return Array.from({ length: 365 }, (_, day) => {
    const share = day <= 180 ? day / 180 : (365 - day) / 185;
    return warmC + (coldC - warmC) * share;
  });
}

const freezes = (first: SeasonDays, step: number) => ({
  '36F': first,
  '32F': first,
  '28F': shifted(first, step),
  '24F': shifted(first, 2 * step),
  '20F': shifted(first, 3 * step),
});
function shifted({ p10, p50, p90 }: SeasonDays, days: number): SeasonDays {
  return { p10: (p10 as number) + days, p50: (p50 as number) + days, p90: (p90 as number) + days };
}

/** A cold place: first freeze about day 80, leaves down about day 90, last freeze about day 280, growth about day 290. */
export function coldYear(over: Partial<CareYear> = {}, species: Species = realSpecies('fig')): CareYear {
  return {
    placeId: 'round',
    placeName: 'Roundhaven',
    placeClass: { winter: 'cold', season: 'middle', summer: 'moderate', air: 'dry' },
    species,
    firstDoy: 205,
    potLiters: 11.4,
    firstFreeze: freezes(about(80, 10), 10),
    lastFreeze: freezes(about(280, 10), -10),
    leafFall: about(90, 10),
    dormant: about(120, 10),
    budbreak: about(290, 10),
    potRiskFirst: about(130, 10),
    potRiskLast: about(240, 10),
    coldRiskFirst: { young: about(110, 10), established: about(140, 10) },
    coldRiskLast: { young: about(260, 10), established: about(230, 10) },
    evergreen: false,
    meanC: sawtooth(-6, 30),
    coldestDay: 180,
    hottestDay: 0,
    hottestHighC: 34,
    etoMm: Array.from({ length: 365 }, () => 5),
    nights: Object.fromEntries(
      ripenesses.map((name, at) => [
        name,
        { meets: about(82 + 5 * at, 10), before: about(100 + 10 * at, 10) },
      ]),
    ) as CareYear['nights'],
    winterLowC: -9,
    ...over,
  };
}

/** A mild place: no pot is at risk, few freezes. */
export function mildYear(over: Partial<CareYear> = {}, species: Species = realSpecies('fig')): CareYear {
  return coldYear(
    {
      placeName: 'Mildhaven',
      placeClass: { winter: 'mild', season: 'long', summer: 'very-hot', air: 'dry' },
      firstFreeze: freezes(about(130, 10), 10),
      lastFreeze: freezes(about(220, 10), -5),
      leafFall: about(140, 10),
      dormant: never,
      budbreak: about(235, 10),
      potRiskFirst: never,
      potRiskLast: never,
      coldRiskFirst: { young: never, established: never },
      coldRiskLast: { young: never, established: never },
      meanC: sawtooth(9, 33),
      hottestHighC: 38,
      winterLowC: -1,
      ...over,
    },
    species,
  );
}
