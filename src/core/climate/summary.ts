/**
 * Everything the site says about the climate of a place, each answer with its standing. Published figures win over
 * modeled ones. Dates are `MM-DD` of a 365-day year, temperatures C; nothing here is rounded.
 */
import { degreesCToF, fahrenheitToCelsius } from '../units.ts';
import { DAYS_PER_YEAR } from './calendar.ts';
import type { ChillRange } from './chillYears.ts';
import { CHILL_WINTERS, chillOfYears } from './chillYears.ts';
import type { ClimateFigures, FreezeThresholdF } from './figures.ts';
import { freezeThresholdsF } from './figures.ts';
import type { FreezeOdds, Winters } from './freezes.ts';
import { findWinters, freezeOdds, seasonDays } from './freezes.ts';
import { heatOfYear, heatZone, hotDays } from './heat.ts';
import type { PlaceClass, RipeningAir } from './placeClass.ts';
import {
  airClass,
  huglinIndexC,
  monthlyDeficitKpa,
  ripeningAir,
  seasonClass,
  summerClass,
  winklerDegreeDaysC,
  winterClass,
} from './placeClass.ts';
import { completeDates, daysMoved, onlyMiddle } from './publishedDates.ts';
import type { MeanAndSd, Spread } from './quantiles.ts';
import type { YearRibbon } from './ribbon.ts';
import { yearRibbon } from './ribbon.ts';
import type { WeatherYears } from './weatherYears.ts';
import { weatherYears } from './weatherYears.ts';
import { halfZoneIndex, parseZone, winterLow, winterZone, zoneLowerBoundC } from './winterZone.ts';

/**
 * `from records`: counted by us in somebody's record, not published as such. `modeled from an estimate`: the model had to estimate the
 * daily spread or the dew point of the place.
 */
export type ClimateStanding = 'published' | 'from records' | 'modeled' | 'modeled from an estimate';

/** Sources that are our own counting of somebody's record, not a publication of the figure itself. */
const countedByUs = /^(?:computed|taken)\b/i;

/** Standing of a figure that came with a source. */
function standingOf(source: string): ClimateStanding {
  return countedByUs.test(source) ? 'from records' : 'published';
}

export interface ClimateAnswer<T> {
  readonly answer: T;
  readonly standing: ClimateStanding;
  /** Publication, or how it was modeled, in words for people. */
  readonly source: string;
}

export type FreezeKey = `${FreezeThresholdF}F`;

export interface ClimateSummary {
  /** By threshold, `36F` to `20F`. */
  readonly freeze: Readonly<Record<FreezeKey, ClimateAnswer<FreezeOdds>>>;
  /** Days between last and first freeze at 32 F; p10 is the short season. */
  readonly seasonDays: ClimateAnswer<Spread>;
  readonly winterZone: ClimateAnswer<{ readonly zone: string; readonly basis: string }>;
  /** Mean lowest temperature of a winter and the low of one winter in ten. */
  readonly annualMinC: ClimateAnswer<{ readonly mean: number; readonly p10: number }>;
  readonly heat: {
    /** C-degree-days a year above 8 C, counted up to 36 C. */
    readonly base8cap36: ClimateAnswer<MeanAndSd>;
    /** F-degree-days a year above 50 F, no cap. */
    readonly base50F: ClimateAnswer<MeanAndSd>;
    /** Winkler degree days and Huglin index of the growing months, C: they make the class of the summer. */
    readonly summer: ClimateAnswer<{ readonly winklerC: number; readonly huglinC: number }>;
  };
  /** Mean days a year above 30 C and the heat zone they make, 1 to 12. */
  readonly hotDays: ClimateAnswer<{ readonly days: number; readonly zone: number }>;
  /** Chill from October to March (April to September in the south). */
  readonly chill: ClimateAnswer<ChillRange>;
  /** Vapor pressure deficit of each month, kPa. */
  readonly deficitKpa: ClimateAnswer<readonly number[]>;
  readonly ripeningAir: ClimateAnswer<RipeningAir>;
  readonly class: ClimateAnswer<PlaceClass>;
  readonly ribbon: YearRibbon;
}

/** Basis of a zone that no map gives. */
export const COMPUTED_ZONE =
  "computed by the map's definition from the mean annual minimum; not an official zone";

/** Degree-day bases offered for every place. */
export const FIG_BASE_C = 8;
export const FIG_CAP_C = 36;
export const BASE_50F_IN_C = fahrenheitToCelsius(50);

interface Modeled {
  readonly standing: ClimateStanding;
  readonly source: string;
}

function modeled(years: WeatherYears): Modeled {
  const drawn = `${years.count.toLocaleString('en')} simulated years drawn from the monthly means of the place`;
  return years.spreadEstimated
    ? { standing: 'modeled from an estimate', source: `${drawn}; its day-to-day spread is estimated` }
    : { standing: 'modeled', source: `${drawn} and their day-to-day spread` };
}

function freezeAnswer(
  figures: ClimateFigures,
  winters: Winters,
  thresholdF: FreezeThresholdF,
  model: Modeled,
): ClimateAnswer<FreezeOdds> {
  const odds = freezeOdds(winters, thresholdF);
  const published = figures.published.freeze.get(thresholdF);
  if (published === undefined) return { answer: odds, ...model };
  const { first, last, none, source } = published;
  const filledUp = onlyMiddle(first) || onlyMiddle(last);
  return {
    answer: {
      first: completeDates(first, odds.first, winters.firstDoy),
      last: completeDates(last, odds.last, winters.firstDoy),
      none: none ?? odds.none,
    },
    standing: standingOf(source),
    source: filledUp ? `${source}; the early and late dates modeled about the middle one` : source,
  };
}

/** A published season wins; else the modeled one is as much longer or shorter as the published middle freeze dates at 32 F say. */
function seasonAnswer(figures: ClimateFigures, winters: Winters, model: Modeled): ClimateAnswer<Spread> {
  const { season, freeze } = figures.published;
  if (season !== null) {
    const { p10, p50, p90, source } = season;
    return { answer: { p10, p50, p90 }, standing: standingOf(source), source };
  }
  const modeled = seasonDays(winters);
  const published = freeze.get(32);
  if (published === undefined) return { answer: modeled, ...model };
  const odds = freezeOdds(winters, 32);
  const longer =
    daysMoved(published.first, odds.first, winters.firstDoy) -
    daysMoved(published.last, odds.last, winters.firstDoy);
  if (longer === 0) return { answer: modeled, ...model };
  const moved = (days: number) => Math.min(DAYS_PER_YEAR, Math.max(0, days + longer));
  return {
    answer: { p10: moved(modeled.p10), p50: moved(modeled.p50), p90: moved(modeled.p90) },
    standing: model.standing,
    source: `${model.source}, moved to the published middle freeze dates`,
  };
}

/** Bounds of a published winter zone, C; null when none is published. */
function publishedZoneBounds({ published }: ClimateFigures): { fromC: number; toC: number } | null {
  const index = published.winterZone === null ? null : parseZone(published.winterZone.zone);
  return index === null ? null : { fromC: zoneLowerBoundC(index), toC: zoneLowerBoundC(index + 1) };
}

/**
 * A published mean wins. Else a published zone does: it is a range of that very mean, so the modeled mean is held within it. Either way the low
 * of one winter in ten keeps its modeled distance, unless it is published too.
 */
function annualMinAnswer(
  figures: ClimateFigures,
  winters: Winters,
  model: Modeled,
): ClimateSummary['annualMinC'] {
  const { meanC, p10C } = winterLow(winters);
  const published = figures.published.annualMin;
  if (published !== null) {
    const p10 = published.p10C ?? published.meanC + (p10C - meanC);
    return {
      answer: { mean: published.meanC, p10 },
      standing: standingOf(published.source),
      source: published.source,
    };
  }
  const bounds = publishedZoneBounds(figures);
  const mean = bounds === null ? meanC : Math.min(bounds.toC, Math.max(bounds.fromC, meanC));
  const source = mean === meanC ? model.source : `${model.source}, held within the published winter zone`;
  return { answer: { mean, p10: p10C + (mean - meanC) }, standing: model.standing, source };
}

function zoneAnswer(
  figures: ClimateFigures,
  annualMin: ClimateSummary['annualMinC'],
): ClimateSummary['winterZone'] {
  const published = figures.published.winterZone;
  if (published !== null) {
    const { zone, basis, source } = published;
    return { answer: { zone, basis }, standing: standingOf(source), source };
  }
  return { ...annualMin, answer: { zone: winterZone(annualMin.answer.mean), basis: COMPUTED_ZONE } };
}

/** The weakest standing among those a combined answer rests on. */
function weakest(...standings: readonly ClimateStanding[]): ClimateStanding {
  const order: readonly ClimateStanding[] = [
    'published',
    'from records',
    'modeled',
    'modeled from an estimate',
  ];
  return order[Math.max(...standings.map(standing => order.indexOf(standing)))] as ClimateStanding;
}

function airAnswer(figures: ClimateFigures): ClimateSummary['ripeningAir'] {
  const answer = ripeningAir(figures);
  return answer.dewPointKnown
    ? { answer, standing: 'modeled', source: 'FAO-56 vapor pressure from monthly means and dew points' }
    : {
        answer,
        standing: 'modeled from an estimate',
        source: 'FAO-56 vapor pressure from monthly means, the minimum standing in for the dew point',
      };
}

/**
 * Everything said about a place. Pass weather years drawn before to save drawing them again; they must be of the same
 * figures. Throws a RangeError for figures that cannot be modeled (`figuresFault`).
 */
export function climateSummary(
  figures: ClimateFigures,
  years: WeatherYears = weatherYears(figures),
): ClimateSummary {
  const model = modeled(years);
  const winters = findWinters(years);
  const freeze = Object.fromEntries(
    freezeThresholdsF.map(thresholdF => [
      `${thresholdF}F`,
      freezeAnswer(figures, winters, thresholdF, model),
    ]),
  ) as Record<FreezeKey, ClimateAnswer<FreezeOdds>>;
  const season = seasonAnswer(figures, winters, model);
  const annualMinC = annualMinAnswer(figures, winters, model);
  const zone = zoneAnswer(figures, annualMinC);
  const air = airAnswer(figures);
  const heat50 = heatOfYear(years, BASE_50F_IN_C, null);
  const days = hotDays(years);
  return {
    freeze,
    seasonDays: season,
    winterZone: zone,
    annualMinC,
    heat: {
      base8cap36: { answer: heatOfYear(years, FIG_BASE_C, FIG_CAP_C), ...model },
      base50F: { answer: { mean: degreesCToF(heat50.mean), sd: degreesCToF(heat50.sd) }, ...model },
      summer: {
        answer: { winklerC: winklerDegreeDaysC(figures), huglinC: huglinIndexC(figures) },
        standing: 'modeled',
        source: 'added up from the monthly means of the place',
      },
    },
    hotDays: { answer: { days, zone: heatZone(days) }, ...model },
    chill: {
      answer: chillOfYears(years),
      standing: model.standing,
      source: `${CHILL_WINTERS} of the ${model.source}`,
    },
    deficitKpa: { ...air, answer: monthlyDeficitKpa(figures) },
    ripeningAir: air,
    class: {
      answer: {
        winter: winterClass(parseZone(zone.answer.zone) ?? halfZoneIndex(annualMinC.answer.mean)),
        season: seasonClass(season.answer.p50),
        summer: summerClass(winklerDegreeDaysC(figures)),
        air: airClass(air.answer),
      },
      standing: weakest(zone.standing, season.standing, air.standing),
      source:
        'the winter zone, the season between freezes, the degree days of the growing months and the air of the ripening months; the bounds of the summers are published, the others our working figures',
    },
    ribbon: yearRibbon(figures, years),
  };
}
