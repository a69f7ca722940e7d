/** The year of a place day by day, for drawing: usual highs and lows, their spread and the chance of a freeze. */
import { fahrenheitToCelsius } from '../units.ts';
import { dailyNormals } from './dailySpread.ts';
import type { ClimateFigures } from './figures.ts';
import { chanceOfNightAtOrBelow } from './forecast.ts';
import type { WeatherYears } from './weatherYears.ts';

/** Standard deviations from the mean to the 10 and 90 % points of a normal distribution. */
const TO_TENTH = 1.2816;

/** Daily tables by `doy - 1`, C and shares of years. */
export interface YearRibbon {
  readonly lowC: Float64Array;
  readonly highC: Float64Array;
  /** Nine lows in ten are above this. */
  readonly coldLowC: Float64Array;
  /** Nine highs in ten are below this. */
  readonly hotHighC: Float64Array;
  /** Share of years with a minimum at or below 32 F on the day. */
  readonly freezeChance: Float64Array;
}

/** Usual lows and highs of the days of a year. */
export function usualDays(figures: ClimateFigures): Pick<YearRibbon, 'lowC' | 'highC'> {
  return { lowC: dailyNormals(figures, 'tmin').meanC, highC: dailyNormals(figures, 'tmax').meanC };
}

/** Tables of the year for one place. */
export function yearRibbon(figures: ClimateFigures, years: WeatherYears): YearRibbon {
  const [low, high] = [dailyNormals(figures, 'tmin'), dailyNormals(figures, 'tmax')];
  return {
    lowC: low.meanC,
    highC: high.meanC,
    coldLowC: low.meanC.map((mean, day) => mean - TO_TENTH * (low.sdC[day] as number)),
    hotHighC: high.meanC.map((mean, day) => mean + TO_TENTH * (high.sdC[day] as number)),
    freezeChance: chanceOfNightAtOrBelow(years, fahrenheitToCelsius(32)),
  };
}
