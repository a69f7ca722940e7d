/** The climate of a town in a few lines. */

import { coldestNightErrorC, dateErrorDays, TWO_IN_THREE } from '../../core/climate/anywhere/modelErrors.ts';
import { monthLengths } from '../../core/climate/calendar.ts';
import { ripeningAir, winklerDegreeDaysC } from '../../core/climate/placeClass.ts';
import { winterZone } from '../../core/climate/winterZone.ts';
import { roundTo, temperatureInWords } from '../../core/units.ts';
import { rainInWords } from '../../site/words/measures.ts';
import { shortMonthDay } from '../../site/words/yearDays.ts';
import type { TownAnswer } from './answer.ts';

export interface TownFact {
  readonly label: string;
  readonly value: string;
}

type Dates = { p10: string | null; p50: string | null; p90: string | null };

function datesInWords({ p10, p50, p90 }: Dates, lastOnes: boolean): string {
  if (p50 === null) return p90 === null && p10 === null ? 'none in nine years of ten' : 'in few years';
  const far = lastOnes ? p90 : p10;
  const beyond =
    far === null ? '' : `; ${lastOnes ? 'later' : 'earlier'} than ${shortMonthDay(far)} in one year of ten`;
  return `usually ${shortMonthDay(p50)}${beyond}`;
}

function seasonInWords({ p10, p50 }: { p10: number; p50: number }): string {
  if (p50 >= monthLengths.reduce((sum: number, days) => sum + days, 0)) return 'the whole year';
  return p50 < 1 ? 'none: it can freeze in any month' : `${p50} days; ${p10} in a short year`;
}

/** Facts in the order of the year, and how sure the dates are. */
export function townFacts({ basis, season, errors }: Pick<TownAnswer, 'basis' | 'season' | 'errors'>): {
  facts: TownFact[];
  sure: string;
} {
  const { figures, climate } = basis;
  const { first, last, none } = climate.freeze['32F'].answer;
  const { mean, p10 } = climate.annualMinC.answer;
  const air = ripeningAir(figures);
  const { rainMm } = figures;
  const facts: TownFact[] = [
    { label: 'Last freeze of spring', value: datesInWords(last, true) },
    { label: 'First freeze of fall', value: datesInWords(first, false) },
    { label: 'Season between freezes', value: seasonInWords(season) },
    {
      label: 'Coldest night',
      value: `${temperatureInWords(mean)} in a usual winter, ${temperatureInWords(p10)} or colder in one of ten; winter zone ${winterZone(mean)}, computed`,
    },
    {
      label: 'Heat of the growing months',
      value: `${roundTo(winklerDegreeDaysC(figures), 10).toLocaleString('en-US')} degree-days C above 10 C`,
    },
    ...(rainMm === null
      ? []
      : [{ label: 'Rain', value: `${rainInWords(rainMm.reduce((sum, mm) => sum + mm, 0))} a year` }]),
    {
      label: 'Air when fruit ripens',
      value: `lacks ${roundTo(air.deficitKpa, 0.1)} kPa or ${roundTo(air.deficitShare * 100, 1)} % of the moisture it could hold`,
    },
  ];
  return { facts, sure: sureInWords(errors, figures.tminC, last.p50, first.p50, none) };
}

function sureInWords(
  errors: { readonly tminC: number },
  tminC: readonly number[],
  lastDate: string | null,
  firstDate: string | null,
  none: number,
): string {
  const coldC = coldestNightErrorC(errors.tminC) * TWO_IN_THREE;
  const cold = `coldest night within ${roundTo(coldC * 1.8, 1)} F (${roundTo(coldC, 0.5)} C)`;
  const days = [lastDate, firstDate]
    .map(date => dateErrorDays(date, tminC, errors.tminC))
    .filter(error => error !== null);
  if (days.length === 0 || none > 0.5) return `How sure: ${cold}, for two towns in three.`;
  return `How sure: middle freeze dates within ${Math.round(Math.max(...days) * TWO_IN_THREE)} days and ${cold}, for two towns in three.`;
}
