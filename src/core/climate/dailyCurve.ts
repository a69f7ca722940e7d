/**
 * From twelve monthly means to a curve for every day of the year.
 * Source: Epstein 1991, "On obtaining daily climatological values from monthly means", J. Climate 4:365-368.
 */
import { monthLengths, monthOfDay, monthPosition } from './calendar.ts';
import { cosTurn, sinTurn } from './circle.ts';

const HARMONICS = 6;

/** Twelve values, January first; throws a RangeError for another number of them or one that is no number. */
function assertMonthly(values: readonly number[], what: string): void {
  if (values.length !== 12 || !values.every(Number.isFinite)) {
    throw new RangeError(`${what}: twelve monthly numbers are needed, got [${values.join(', ')}]`);
  }
}

const cosines = Array.from({ length: HARMONICS + 1 }, (_, j) =>
  Float64Array.from(monthPosition, position => cosTurn((j * position) / 12)),
);
const sines = Array.from({ length: HARMONICS + 1 }, (_, j) =>
  Float64Array.from(monthPosition, position => sinTurn((j * position) / 12)),
);

/** What averaging over a month takes from harmonic j, to be given back: (pi j / 12) / sin(pi j / 12). */
const regain = Array.from({ length: HARMONICS + 1 }, (_, j) =>
  j === 0 ? 1 : (j * 0.2617993877991494) / sinTurn(j / 24),
);

/**
 * A smooth yearly curve, by `doy - 1`, whose monthly means are the twelve values (to about 0.001 of their unit;
 * the formula takes all months as equally long). May pass beyond the largest and smallest of them.
 */
export function dailyCurve(monthlyMeans: readonly number[]): Float64Array {
  assertMonthly(monthlyMeans, 'monthly means');
  const curve = new Float64Array(monthPosition.length);
  for (let j = 0; j <= HARMONICS; j += 1) {
    let [a, b] = [0, 0];
    monthlyMeans.forEach((value, month) => {
      a += value * cosTurn((j * (month + 1)) / 12);
      b += value * sinTurn((j * (month + 1)) / 12);
    });
    const halved = j === 0 || j === HARMONICS;
    const scale = ((regain[j] as number) / (halved ? 12 : 6)) * 1;
    a *= scale;
    b = halved ? 0 : b * scale;
    const [cosine, sine] = [cosines[j] as Float64Array, sines[j] as Float64Array];
    for (let i = 0; i < curve.length; i += 1) {
      curve[i] = (curve[i] as number) + a * (cosine[i] as number) + b * (sine[i] as number);
    }
  }
  return curve;
}

/** Straight lines between the middles of the months, the end of the year joined to its start, by `doy - 1`. */
export function linearCurve(monthly: readonly number[]): Float64Array {
  assertMonthly(monthly, 'monthly values');
  return Float64Array.from(monthPosition, position => {
    const before = Math.floor(position);
    const share = position - before;
    return (monthly[(before + 11) % 12] as number) * (1 - share) + (monthly[before % 12] as number) * share;
  });
}

/** Means of a daily table over the twelve months. */
export function monthlyMeans(daily: ArrayLike<number>): number[] {
  const sums = new Array<number>(12).fill(0);
  monthOfDay.forEach((month, i) => {
    sums[month] = (sums[month] as number) + (daily[i] as number);
  });
  return sums.map((sum, month) => sum / (monthLengths[month] as number));
}
