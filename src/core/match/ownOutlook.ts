/** The outlook of a visitor's own place, small enough to be computed while the visitor waits. */
import { type ClimateFigures, freezeThresholdsF } from '../climate/figures.ts';
import { findWinters, freezeOdds, seasonDays } from '../climate/freezes.ts';
import {
  airClass,
  ripeningAir,
  seasonClass,
  summerClass,
  winklerDegreeDaysC,
  winterClass,
} from '../climate/placeClass.ts';
import type { ClimateStanding, FreezeKey } from '../climate/summary.ts';
import { type WeatherYears, weatherYears } from '../climate/weatherYears.ts';
import { halfZoneIndex, winterLow } from '../climate/winterZone.ts';
import type { Species } from '../records/species.ts';
import { figuresFromOwnDates, type NearestPlace, type OwnDates, type OwnProblem } from './ownFigures.ts';
import { type PlaceClimate, type PlaceOutlook, placeOutlook } from './placeOutlook.ts';

/** Seasons drawn for a visitor: shares are then good to 5 points, dates to 2 days. Standing: ours. */
export const OWN_SEASONS = 120;

/**
 * The answers a match needs, read off the weather years. The coldest night is the visitor's own; chill, and with it the day from which heat
 * counts, is taken from the reference place, since counting it hour by hour would cost more than all the rest.
 */
function ownClimate(
  figures: ClimateFigures,
  years: WeatherYears,
  coldestC: number,
  chill: PlaceClimate['chill'],
): PlaceClimate {
  const standing: ClimateStanding = 'modeled from an estimate';
  const source = `${years.count} simulated years, fitted to the dates you gave`;
  const winters = findWinters(years);
  const { meanC, p10C } = winterLow(winters);
  const answer = <T>(value: T) => ({ answer: value, standing, source });
  const freeze = Object.fromEntries(
    freezeThresholdsF.map(thresholdF => [`${thresholdF}F`, answer(freezeOdds(winters, thresholdF))]),
  ) as Record<FreezeKey, PlaceClimate['freeze'][FreezeKey]>;
  return {
    freeze,
    annualMinC: answer({ mean: coldestC, p10: coldestC + p10C - meanC }),
    chill,
    class: answer({
      winter: winterClass(halfZoneIndex(coldestC)),
      season: seasonClass(seasonDays(winters).p50),
      summer: summerClass(winklerDegreeDaysC(figures)),
      air: airClass(ripeningAir(figures)),
    }),
  };
}

export type OwnOutlook =
  | { readonly ok: true; readonly outlook: PlaceOutlook; readonly notes: string[] }
  | { readonly ok: false; readonly problems: OwnProblem[] };

/** The outlook for a visitor's own dates, or what is wrong with them. */
export function ownOutlook(
  own: OwnDates,
  nearest: NearestPlace,
  speciesList: readonly Species[],
  seasons: number = OWN_SEASONS,
): OwnOutlook {
  const fitted = figuresFromOwnDates(own, nearest);
  if (!fitted.ok) return fitted;
  const { figures, notes } = fitted;
  const years = weatherYears(figures, seasons);
  const climate = ownClimate(figures, years, own.coldestC, nearest.climate.chill);
  const { heatStarts } = nearest;
  const outlook = placeOutlook(
    { id: 'own', name: 'your place', figures, years, climate, heatStarts },
    speciesList,
  );
  return { ok: true, outlook, notes };
}
