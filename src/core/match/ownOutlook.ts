/** The outlook of a visitor's own place, small enough to be computed while the visitor waits. */
import type { ClimateFigures } from '../climate/figures.ts';
import { type WeatherYears, weatherYears } from '../climate/weatherYears.ts';
import type { Species } from '../records/species.ts';
import { type ModeledClimate, modeledClimate } from './modeledClimate.ts';
import { figuresFromOwnDates, type NearestPlace, type OwnDates, type OwnProblem } from './ownFigures.ts';
import { type PlaceOutlook, placeOutlook } from './placeOutlook.ts';

/** Seasons drawn for a visitor: shares are then good to 5 points, dates to 2 days. Standing: ours. */
export const OWN_SEASONS = 120;

export type OwnOutlook =
  | { readonly ok: true; readonly outlook: PlaceOutlook; readonly notes: string[] }
  | { readonly ok: false; readonly problems: OwnProblem[] };

type OwnWeather =
  | {
      readonly ok: true;
      readonly figures: ClimateFigures;
      readonly years: WeatherYears;
      readonly climate: ModeledClimate;
      readonly notes: string[];
    }
  | { readonly ok: false; readonly problems: OwnProblem[] };

/** The climate that a visitor's own dates make of that of a place. */
export function ownWeather(
  own: OwnDates,
  nearest: Omit<NearestPlace, 'heatStarts'>,
  seasons: number = OWN_SEASONS,
): OwnWeather {
  const fitted = figuresFromOwnDates(own, nearest);
  if (!fitted.ok) return fitted;
  const { figures, notes } = fitted;
  const years = weatherYears(figures, seasons);
  // Chill, and with it the day from which heat counts, is that of the place: counting it hour by hour would cost more than all the rest.
  const climate = modeledClimate({
    figures,
    years,
    coldestC: own.coldestC,
    chill: nearest.climate.chill,
    standing: 'modeled from an estimate',
    source: `${years.count} simulated years, fitted to the dates you gave`,
  });
  return { ok: true, figures, years, climate, notes };
}

/** The outlook for a visitor's own dates, or what is wrong with them. */
export function ownOutlook(
  own: OwnDates,
  nearest: NearestPlace,
  speciesList: readonly Species[],
  seasons: number = OWN_SEASONS,
): OwnOutlook {
  const weather = ownWeather(own, nearest, seasons);
  if (!weather.ok) return weather;
  const { figures, years, climate, notes } = weather;
  const { heatStarts } = nearest;
  const outlook = placeOutlook(
    { id: 'own', name: 'your place', figures, years, climate, heatStarts },
    speciesList,
  );
  return { ok: true, outlook, notes };
}
