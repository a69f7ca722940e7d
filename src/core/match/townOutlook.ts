/** What a point with figures of its own means for trees and for parcels that go there: the same steps as for a place of the catalogue, on fewer years. */
import { chillOfYears } from '../climate/chillYears.ts';
import type { ClimateFigures } from '../climate/figures.ts';
import type { FreezeOdds } from '../climate/freezes.ts';
import { DEFAULT_SEASONS, type WeatherYears, weatherYears } from '../climate/weatherYears.ts';
import { type HeatStarts, heatStarts } from '../phenology/heatStart.ts';
import type { SendingRules } from '../records/sending.ts';
import type { Species } from '../records/species.ts';
import { destinationOf, type HomeDays, homeDays, tripEndOf } from './destination.ts';
import { type ModeledClimate, modeledClimate } from './modeledClimate.ts';
import type { PlaceClimate } from './placeOutlook.ts';
import type { Destination, TripEnd } from './sending.ts';

/** Seasons drawn for a town while a visitor waits: shares are then good to 4 points, dates to 2 days. Standing: ours. */
const TOWN_SEASONS = 160;
/** Winters whose chill is counted hour by hour. Standing: ours. */
const TOWN_CHILL_WINTERS = 8;

export interface TownClimate {
  readonly figures: ClimateFigures;
  readonly years: WeatherYears;
  readonly climate: ModeledClimate;
  readonly heatStarts: HeatStarts;
}

/** The climate of a point, drawn from its own figures. */
export function townClimate(
  figures: ClimateFigures,
  species: readonly Species[],
  seasons: number = TOWN_SEASONS,
): TownClimate {
  const years = weatherYears(figures, seasons);
  const chill = chillOfYears(years, TOWN_CHILL_WINTERS);
  const climate = modeledClimate({
    figures,
    years,
    coldestC: null,
    chill,
    standing: figures.sdTminC === null ? 'modeled from an estimate' : 'modeled',
    source: `${seasons} simulated years drawn from monthly figures worked out from the stations around`,
  });
  return { figures, years, climate, heatStarts: heatStarts(years, species, chill) };
}

/** Where parcels leave from, as a page that answers for a town is told. */
export interface SendingHome {
  readonly name: string;
  readonly country: string;
  readonly figures: ClimateFigures;
  /** Odds of the 32 F freezes there. */
  readonly freeze32F: FreezeOdds;
}

export interface Parcels {
  readonly home: TripEnd & { readonly country: string };
  readonly there: Destination;
}

/** What parcels meet before they leave home: the same for every town they go to. */
export interface LeavingHome {
  readonly end: Parcels['home'];
  readonly days: HomeDays;
}

/** `seasons` are as many as are counted where parcels go. */
export function leavingHome(home: SendingHome, rules: SendingRules, seasons: number): LeavingHome {
  const years = weatherYears(home.figures, Math.min(DEFAULT_SEASONS, seasons));
  return {
    end: { ...tripEndOf(home.name, years, home.freeze32F, rules), country: home.country },
    days: homeDays(years, rules),
  };
}

/** The chances on the way from home to a place, counted over as many years at both ends. */
export function parcelsTo(
  name: string,
  { years, climate }: { readonly years: WeatherYears; readonly climate: Pick<PlaceClimate, 'freeze'> },
  { end, days }: LeavingHome,
  rules: SendingRules,
): Parcels {
  return { home: end, there: destinationOf(name, years, climate.freeze['32F'].answer, rules, days) };
}
