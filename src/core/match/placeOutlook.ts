/**
 * What the climate of a place means for each species, computed once per place, so that a cultivar only looks things up.
 */
import { daysForward } from '../climate/calendar.ts';
import type { ClimateFigures } from '../climate/figures.ts';
import type { FreezeOdds } from '../climate/freezes.ts';
import { monthlyDeficitKpa, ripeningAir } from '../climate/placeClass.ts';
import type { ClimateAnswer, ClimateSummary, FreezeKey } from '../climate/summary.ts';
import type { WeatherYears } from '../climate/weatherYears.ts';
import { doyFromMonthDay } from '../days.ts';
import { type ChillOfPlace, type ChillState, chillNeed, chillState } from '../phenology/chill.ts';
import { type EndOfSeasonFigures, endOfSeasonFigures } from '../phenology/endOfSeason.ts';
import { type RipeningNeed, ripeningNeed } from '../phenology/fruit.ts';
import { growingCalendar } from '../phenology/growingYear.ts';
import type { HeatStarts } from '../phenology/heatStart.ts';
import type { Crop, Reason, RipeningClass } from '../records/common.ts';
import type { PlaceClass } from '../records/cultivar.ts';
import type { Species } from '../records/species.ts';
import { temperatureInWords } from '../units.ts';
import type { DoySpread } from './answers.ts';
import { type ClimateTraits, climateTraits } from './likeness.ts';
import { type HeadStart, type HeatCase, type NeedOdds, ripeningOdds } from './ripeningOdds.ts';
import { type RipeningWindow, ripeningWindow } from './ripeningWindow.ts';
import { type PotLow, winterLows } from './winterLows.ts';
import { ripeningOrder } from './words.ts';

/** A stored pot is woken this long before it can go out, in a space with this mean. Standing: ours. */
const HEAD_START_DAYS = 28;
const HEAD_START_MEAN_C = 18;

/** The answers about a place that a match needs; a `ClimateSummary` has them. */
export interface PlaceClimate {
  readonly freeze: Readonly<Record<FreezeKey, ClimateAnswer<FreezeOdds>>>;
  readonly annualMinC: ClimateSummary['annualMinC'];
  readonly chill: ClimateAnswer<ChillOfPlace>;
  readonly class: ClimateAnswer<PlaceClass>;
}

export interface PlaceInput {
  readonly id: string;
  readonly name: string;
  readonly figures: ClimateFigures;
  readonly years: WeatherYears;
  readonly climate: PlaceClimate;
  /** Of every species asked about. Counting chill hour by hour has no place in a page, so it is given. */
  readonly heatStarts: HeatStarts;
}

/** Odds of one crop of one ripening class. */
export interface ClassOutlook {
  readonly outdoors: NeedOdds;
  readonly headStart: NeedOdds;
  readonly window: RipeningWindow;
}

export interface SpeciesOutlook {
  readonly chill: ChillState;
  /** Index in the growing year from which heat counts. */
  readonly heatFrom: number;
  readonly budbreak: DoySpread | null;
  /** From when heat counts toward ripening: budbreak, or the last freeze that hurts leaves. */
  readonly start: DoySpread | null;
  /** Full bloom of a species that is timed by it; null for the others. */
  readonly bloom: DoySpread | null;
  /** The day that ends the season; null where it comes in under one year in ten. */
  readonly end: DoySpread | null;
  readonly endsBy: EndOfSeasonFigures;
  readonly crops: Readonly<Record<Crop, ReadonlyMap<RipeningClass, ClassOutlook>>>;
}

export interface PlaceOutlook {
  readonly id: string;
  readonly name: string;
  readonly lat: number;
  readonly class: PlaceClass;
  /** Low of one winter in ten, C, with where it comes from. */
  readonly designLowC: number;
  readonly designLowReason: Reason;
  /** What makes other climates like this one or unlike it. */
  readonly traits: ClimateTraits;
  /** Lowest night of each winter, C, coldest first, shifted to a published mean where there is one. */
  readonly lowsC: Float64Array;
  readonly pots: readonly PotLow[];
  readonly freeze: Readonly<Record<FreezeKey, ClimateAnswer<FreezeOdds>>>;
  readonly chill: PlaceClimate['chill'];
  readonly species: ReadonlyMap<string, SpeciesOutlook>;
  /** Late summer, for a crop without a date of its own. */
  readonly usualWindow: RipeningWindow;
}

const cropNames: readonly Crop[] = ['main', 'breba'];
// Not the list of the schema: the schema library has no place in a page.
const classNames = Object.keys(ripeningOrder) as RipeningClass[];

/** Moving out waits for the date with a 10 % chance of a later 32 F freeze; null where freezes are rarer than that. */
function headStartOf(input: PlaceInput, species: Species): HeadStart | null {
  const late = input.climate.freeze['32F'].answer.last.p90;
  const doy = late === null ? null : doyFromMonthDay(late);
  if (doy === null) return null;
  const calendar = growingCalendar(input.years.lat);
  const moveOut = daysForward(calendar.firstDoy, doy);
  // A last freeze before midwinter lies at the far end of the growing year.
  if (moveOut > calendar.midsummer) return null;
  const warmth = Math.min(HEAD_START_MEAN_C, species.heatCapC.value) - species.heatBaseC.value;
  return { moveOut, credit: HEAD_START_DAYS * Math.max(0, warmth) };
}

interface Prepared {
  readonly species: Species;
  readonly needs: readonly { crop: Crop; class: RipeningClass; need: RipeningNeed }[];
  readonly heatCase: HeatCase;
  readonly endsBy: EndOfSeasonFigures;
}

function prepare(input: PlaceInput, species: Species): Prepared {
  const heatFrom = input.heatStarts[species.id];
  if (heatFrom === undefined) throw new RangeError(`no heat start for the species ${species.id}`);
  const needs = cropNames.flatMap(crop =>
    classNames.flatMap(name => {
      const need = ripeningNeed(species, crop, name);
      return need === null ? [] : [{ crop, class: name, need }];
    }),
  );
  const leafDamageC = species.leafDamageC.value;
  const end = endOfSeasonFigures(species);
  return {
    species,
    needs,
    endsBy: end,
    heatCase: {
      rules: { heatFrom, budbreakHeat: species.budbreakHeat.value, leafDamageC, end },
      needs: needs.map(({ need }) => need),
      headStart: headStartOf(input, species),
    },
  };
}

function groupedByHeat(prepared: readonly Prepared[]): Map<string, Prepared[]> {
  const groups = new Map<string, Prepared[]>();
  for (const each of prepared) {
    const key = `${each.species.heatBaseC.value} ${each.species.heatCapC.value}`;
    groups.set(key, [...(groups.get(key) ?? []), each]);
  }
  return groups;
}

function speciesOutlooks(input: PlaceInput, speciesList: readonly Species[]): Map<string, SpeciesOutlook> {
  const { years, figures } = input;
  const chill = input.climate.chill.answer;
  const prepared = speciesList.map(species => prepare(input, species));
  const deficits = monthlyDeficitKpa(figures);
  const usual = ripeningAir(figures);
  const outlooks = new Map<string, SpeciesOutlook>();
  for (const group of groupedByHeat(prepared).values()) {
    const { heatBaseC, heatCapC } = (group[0] as Prepared).species;
    const odds = ripeningOdds(
      years,
      heatBaseC.value,
      heatCapC.value,
      group.map(({ heatCase }) => heatCase),
    );
    group.forEach(({ species, needs: own, endsBy, heatCase }, i) => {
      const found = odds[i] as (typeof odds)[number];
      const crops = {
        breba: new Map<RipeningClass, ClassOutlook>(),
        main: new Map<RipeningClass, ClassOutlook>(),
      };
      own.forEach((need, n) => {
        const outdoors = found.outdoors[n] as NeedOdds;
        const headStart = found.headStart[n] as NeedOdds;
        const dates = outdoors.dates ?? headStart.dates;
        const window = ripeningWindow(dates, figures.rainMm, deficits, usual);
        crops[need.crop].set(need.class, { outdoors, headStart, window });
      });
      const state = chillState(chillNeed(species), chill);
      const { budbreak, start, bloom, end } = found;
      const { heatFrom } = heatCase.rules;
      outlooks.set(species.id, { chill: state, heatFrom, budbreak, start, bloom, end, endsBy, crops });
    });
  }
  return outlooks;
}

function designLowReason({ standing, source }: ClimateSummary['annualMinC'], text: string): Reason {
  return standing === 'published' ? { text, standing, source } : { text, standing: 'modeled', source };
}

/**
 * Precomputes a place for a list of species. Costs about 10 ms for six species of three heat bases. Throws a RangeError for a species without a
 * heat start.
 */
export function placeOutlook(input: PlaceInput, speciesList: readonly Species[]): PlaceOutlook {
  const { id, name, climate, figures, years } = input;
  const { mean, p10 } = climate.annualMinC.answer;
  const { sortedC, pots } = winterLows(years);
  const modeledMean = sortedC.reduce((sum, low) => sum + low, 0) / sortedC.length;
  const shift = mean - modeledMean;
  return {
    id,
    name,
    lat: years.lat,
    class: climate.class.answer,
    designLowC: p10,
    designLowReason: designLowReason(
      climate.annualMinC,
      `One winter in ten gets down to ${temperatureInWords(p10)} here.`,
    ),
    traits: climateTraits(figures, p10),
    lowsC: sortedC.map(low => low + shift),
    pots,
    freeze: climate.freeze,
    chill: climate.chill,
    species: speciesOutlooks(input, speciesList),
    usualWindow: ripeningWindow(null, figures.rainMm, monthlyDeficitKpa(figures), ripeningAir(figures)),
  };
}
