/**
 * Values of a point from those of stations around it: weighted ridge regression on position and height, then the neighbors' own
 * departures from it. Weights fall with distance (tricube, Cleveland 1979, J. Am. Stat. Assoc. 74:829) and with difference in height.
 */

/** One station as seen from the point. */
export interface Sample {
  readonly km: number;
  /** Degrees north of the point, and east of it times the cosine of its latitude. */
  readonly north: number;
  readonly east: number;
  /** Height above the point, km. */
  readonly aboveKm: number;
  /** Values already brought to the height of the point as far as is known beforehand. */
  readonly values: readonly number[];
}

export interface RegressionSettings {
  /** Difference in height at which a station counts half, km. */
  readonly halfWeightKm: number;
  /** Ridge on the slopes north and east, and on that of height, times the sum of weights. */
  readonly ridgePosition: number;
  readonly ridgeHeight: number;
  /** Departures count by weight over (distance + this)^1.5, km. */
  readonly departureKm: number;
}

/** The farthest station keeps a little weight. */
const REACH = 1.05;
const TERMS = 4;

/** Solves a symmetric positive system for several right-hand sides in place (Cholesky). */
function solve(matrix: Float64Array, sides: Float64Array, columns: number): void {
  const at = (row: number, column: number) => row * TERMS + column;
  for (let j = 0; j < TERMS; j += 1) {
    for (let i = j; i < TERMS; i += 1) {
      let sum = matrix[at(i, j)] as number;
      for (let k = 0; k < j; k += 1) sum -= (matrix[at(i, k)] as number) * (matrix[at(j, k)] as number);
      matrix[at(i, j)] = i === j ? Math.sqrt(Math.max(sum, 1e-12)) : sum / (matrix[at(j, j)] as number);
    }
  }
  for (let column = 0; column < columns; column += 1) {
    for (let i = 0; i < TERMS; i += 1) {
      let sum = sides[i * columns + column] as number;
      for (let k = 0; k < i; k += 1) {
        sum -= (matrix[at(i, k)] as number) * (sides[k * columns + column] as number);
      }
      sides[i * columns + column] = sum / (matrix[at(i, i)] as number);
    }
    for (let i = TERMS - 1; i >= 0; i -= 1) {
      let sum = sides[i * columns + column] as number;
      for (let k = i + 1; k < TERMS; k += 1) {
        sum -= (matrix[at(k, i)] as number) * (sides[k * columns + column] as number);
      }
      sides[i * columns + column] = sum / (matrix[at(i, i)] as number);
    }
  }
}

/** Values at the point itself, as many as each sample has. Throws a RangeError without samples. */
export function localValues(samples: readonly Sample[], settings: RegressionSettings): number[] {
  const first = samples[0];
  if (!first) throw new RangeError('no stations to take values from');
  const columns = first.values.length;
  const reach = REACH * Math.max(1, ...samples.map(({ km }) => km));
  const matrix = new Float64Array(TERMS * TERMS);
  const slopes = new Float64Array(TERMS * columns);
  let total = 0;
  const rows = samples.map(({ km, north, east, aboveKm, values }) => {
    const weight = (1 - (km / reach) ** 3) ** 3 / (1 + (aboveKm / settings.halfWeightKm) ** 2);
    const terms = [1, north, east, aboveKm];
    total += weight;
    for (let i = 0; i < TERMS; i += 1) {
      const own = weight * (terms[i] as number);
      for (let j = 0; j < TERMS; j += 1) {
        matrix[i * TERMS + j] = (matrix[i * TERMS + j] as number) + own * (terms[j] as number);
      }
      for (let c = 0; c < columns; c += 1) {
        slopes[i * columns + c] = (slopes[i * columns + c] as number) + own * (values[c] as number);
      }
    }
    return { weight, terms, km, values };
  });
  for (const [term, ridge] of [
    [1, settings.ridgePosition],
    [2, settings.ridgePosition],
    [3, settings.ridgeHeight],
  ] as const) {
    const diagonal = term * TERMS + term;
    matrix[diagonal] = (matrix[diagonal] as number) + ridge * total;
  }
  solve(matrix, slopes, columns);
  const departures = new Float64Array(columns);
  let departureTotal = 0;
  for (const { weight, terms, km, values } of rows) {
    const share = weight / (km + settings.departureKm) ** 1.5;
    departureTotal += share;
    for (let c = 0; c < columns; c += 1) {
      let fitted = 0;
      for (let i = 0; i < TERMS; i += 1) fitted += (terms[i] as number) * (slopes[i * columns + c] as number);
      departures[c] = (departures[c] as number) + share * ((values[c] as number) - fitted);
    }
  }
  return Array.from(departures, (departure, c) => (slopes[c] as number) + departure / departureTotal);
}
