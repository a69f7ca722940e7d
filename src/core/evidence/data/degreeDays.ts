/** Published worked examples of degree days, re-typed. */

/**
 * Lower threshold 55 F, upper 90 F, horizontal cutoff: Tmin, Tmax, single triangle, single sine, F-degree-days.
 * Source: Zalom, Goodell, Wilson, Barnett, Bentley 1983, UC leaflet 21373, table 7.
 */
export const zalom1983 = [
  [96, 110, 35, 35],
  [91, 105, 35, 35],
  [45, 54, 0, 0],
  [38, 50, 0, 0],
  [60, 80, 15, 15],
  [75, 88, 26.5, 26.5],
  [50, 82, 11.39, 11.85],
  [45, 70, 4.5, 5.31],
  [60, 100, 23.75, 22.82],
  [75, 95, 29.38, 28.91],
  [50, 101, 19.56, 18.95],
  [48, 95, 16.76, 16.96],
] as const;

/**
 * Simple averages, base 0 C, no cap: Tmax, Tmin, method 1, method 2, C-degree-days.
 * Source: McMaster and Wilhelm 1997, Agric. For. Meteorol. 87:291-300, table 1.
 */
export const mcMaster1997 = [
  [20, 10, 15, 15],
  [10, 1, 5.5, 5.5],
  [8, -2, 3, 4],
  [6, 0, 3, 3],
  [10, 5, 7.5, 7.5],
  [5, -5, 0, 2.5],
  [-2, -7, 0, 0],
  [-5, -10, 0, 0],
  [10, -2, 4, 5],
  [15, 2, 8.5, 8.5],
] as const;

/**
 * Lower threshold 12 C, upper 33 C, horizontal cutoff: Tmin, Tmax, sine, triangle, C-degree-days.
 * Source: tests of the R package TrenchR (its sine case 35/40 is left out: the answer there must be 33 - 12).
 */
export const trenchR = [
  [7, 14, 0.47, 0.29],
  [13, 14, 1.5, 1.5],
  [13, 40, 12.94, 13.59],
  [7, 40, 10.94, 11.14],
] as const;

/**
 * Date, Tmin, Tmax, then F-degree-days by single sine horizontal, single sine vertical, single triangle horizontal,
 * single triangle vertical; lower threshold 50 F, upper 70 F, station Esparto-A, 2020.
 * Source: UC Statewide IPM Program degree-day calculator, as kept in the UC ANR IGIS degree days validation challenge.
 */
export const ucIpmDays = [
  ['01-01', 38, 55, 1.19, 1.19, 0.74, 0.74],
  ['01-02', 36, 67, 5.71, 5.71, 4.66, 4.66],
  ['01-08', 41, 50, 0, 0, 0, 0],
  ['01-17', 34, 47, 0, 0, 0, 0],
  ['01-26', 54, 67, 10.5, 10.5, 10.5, 10.5],
  ['01-27', 50, 64, 7, 7, 7, 7],
  ['02-10', 52, 73, 12.01, 7.08, 12.29, 9.43],
  ['02-11', 44, 76, 10, 4.3, 10, 6.25],
  ['02-17', 53, 71, 11.9, 8.87, 11.97, 10.86],
  ['02-25', 47, 77, 10.94, 4.52, 11.33, 6.67],
  ['03-03', 46, 81, 11.37, 3.79, 12, 5.71],
  ['03-31', 52, 72, 11.73, 7.63, 11.9, 9.9],
  ['04-14', 51, 80, 12.91, 4.92, 13.78, 6.88],
  ['04-18', 49, 70, 9.59, 9.59, 9.52, 9.52],
  ['04-24', 54, 90, 15.24, 4.53, 16.44, 5.33],
  ['04-25', 63, 89, 18.41, 5.36, 19.06, 4.44],
  ['05-14', 50, 70, 10, 10, 10, 10],
  ['05-18', 52, 69, 10.5, 10.5, 10.5, 10.5],
  ['05-27', 66, 100, 19.41, 3.87, 19.76, 2.12],
  ['08-14', 71, 103, 20, 0, 20, 0],
  ['08-15', 68, 107, 19.81, 2.72, 19.95, 0.97],
  ['09-28', 69, 97, 19.92, 2.34, 19.98, 0.7],
  ['10-28', 36, 76, 8.65, 3.59, 8, 5],
  ['11-10', 29, 63, 3.56, 3.56, 2.49, 2.49],
  ['12-07', 57, 72, 14.19, 9.43, 14.37, 11.7],
] as const;

/** Totals of the 366 days, in the order of the columns above. Same source. */
export const ucIpmYear = [4011.14, 1645.37, 4093.85, 1679.33] as const;

/** Running totals at the end of each month, single sine and single triangle with horizontal cutoff. Same source. */
export const ucIpmMonthEnds = {
  sine: [
    93.81, 293.39, 461.64, 779.36, 1222.81, 1739.54, 2271.21, 2824.42, 3323.71, 3742.72, 3921.14, 4011.14,
  ],
  triangle: [
    79.7, 263.97, 419.13, 742.88, 1210.49, 1751.93, 2314.26, 2891.78, 3419.36, 3861.22, 4021.73, 4093.85,
  ],
} as const;

/** Days of the year by the place of the day's range against the thresholds. Same source. */
export const ucIpmCases = [
  ['all below 50 F', 3],
  ['rising past 50 F only', 131],
  ['all between', 6],
  ['rising past 70 F only', 179],
  ['all above 70 F', 4],
  ['rising past both', 43],
] as const;
