/**
 * What the browser works out for a town, from the figures its file carries: verdicts on all cultivars, sending weeks, and what is said of its
 * climate. The same core as the build's, on fewer simulated years, in the words of the built pages. Nothing leaves the device.
 */

import { type ClimateFigures, nothingPublished } from '../../core/climate/figures.ts';
import { usualDays } from '../../core/climate/ribbon.ts';
import { type ComparedClimate, comparedClimate } from '../../core/match/comparedClimate.ts';
import { matchAll } from '../../core/match/match.ts';
import { type PlaceInput, placeOutlook } from '../../core/match/placeOutlook.ts';
import {
  type LeavingHome,
  leavingHome,
  parcelsTo,
  type TownClimate,
  townClimate,
} from '../../core/match/townOutlook.ts';
import { figuresOfTown, type TownFigures, unpackedFigures } from '../../core/towns/townFigures.ts';
import { type BestTree, bestTrees } from '../../site/data/best.ts';
import type { PlaceFile } from '../../site/data/file.ts';
import type { HomeFile } from '../../site/data/town.ts';
import type { TreesFile } from '../../site/data/trees.ts';
import { runsOn, type SendingView, sendingTable, travelOn } from '../../site/pages/places/sending.ts';
import { type Verdict, verdictOf } from '../../site/words/verdict.ts';
import type { SheetWeather } from '../guides/townSheet.ts';

/** A point, and where it belongs to as far as rules of sending ask. */
export interface AskedPlace {
  /** Id of a reference place, where trials may have been reported from; a town has none. */
  readonly id?: string;
  readonly name: string;
  /** What the rules that keep parcels out ask: a state or another division, empty where none is known, and an ISO 3166 code. */
  readonly region: string;
  readonly country: string;
}

export interface PlaceAnswer {
  readonly verdicts: Map<string, Verdict>;
  readonly best: BestTree[];
  readonly sending: SendingView;
}

export type Weather = Pick<PlaceInput, 'figures' | 'years' | 'climate' | 'heatStarts'>;

const kept = new WeakMap<HomeFile, Map<number, LeavingHome>>();

/** Counted once: a visitor may ask for several towns. */
function leavingOf(file: HomeFile, seasons: number): LeavingHome {
  const bySeasons = kept.get(file) ?? new Map<number, LeavingHome>();
  kept.set(file, bySeasons);
  const { home, sending } = file;
  const figures: ClimateFigures = { ...home.figures, published: nothingPublished };
  const leaving = bySeasons.get(seasons) ?? leavingHome({ ...home, figures }, sending, seasons);
  bySeasons.set(seasons, leaving);
  return leaving;
}

/** Verdicts and sending weeks of a place with this weather. */
export function answerWeather(
  place: AskedPlace,
  weather: Weather,
  trees: TreesFile,
  file: HomeFile,
): PlaceAnswer {
  const { asOf, sending: rules } = file;
  const { id = 'town', name, region, country } = place;
  const species = trees.species;
  const outlook = placeOutlook({ id, name, ...weather }, species);
  const matches = matchAll(outlook, trees.cultivars, species, trees.context);
  const parcels = parcelsTo(name, weather, leavingOf(file, weather.years.count), rules);
  const route = { home: parcels.home, there: { ...parcels.there, region, country } };
  return {
    verdicts: new Map(matches.map(match => [match.cultivar, verdictOf(match)])),
    best: bestTrees(matches, trees),
    sending: { now: travelOn(route, rules, asOf), table: sendingTable(runsOn(route, rules, asOf)) },
  };
}

/** A town as it was chosen: its figures packed. */
export interface AskedTown extends AskedPlace {
  readonly lat: number;
  readonly heightM: number;
  readonly figures: string;
}

export interface TownAnswer extends PlaceAnswer {
  /** What the visitor's own dates are laid over. */
  readonly basis: PlaceFile['basis'];
  /** Days between last and first freeze at 32 F. */
  readonly season: TownClimate['climate']['season'];
  /** Mean absolute errors of a monthly mean, C. */
  readonly errors: TownFigures['errors'];
  /** For finding the reference place most like it. */
  readonly compared: ComparedClimate;
}

/** The weather of a town as the guides ask for it, and what own dates are laid over. */
export function townWeather(
  town: AskedTown,
): SheetWeather & { readonly basis: Omit<PlaceFile['basis'], 'heatStarts'> } {
  const { errors: _errors, ...packed } = unpackedFigures(town.figures);
  const { figures, years, climate } = townClimate(figuresOfTown(town.lat, packed), []);
  return {
    years,
    summary: { ...climate, ribbon: usualDays(figures) },
    basis: { name: town.name, figures, climate },
  };
}

/** Everything said of a town. */
export function answerTown(town: AskedTown, trees: TreesFile, home: HomeFile): TownAnswer {
  const { errors, ...packed } = unpackedFigures(town.figures);
  const weather = townClimate(figuresOfTown(town.lat, packed), trees.species);
  const { figures, climate, heatStarts } = weather;
  return {
    ...answerWeather(town, weather, trees, home),
    basis: { name: town.name, figures, climate, heatStarts },
    season: climate.season,
    errors,
    compared: comparedClimate(figures, climate),
  };
}
