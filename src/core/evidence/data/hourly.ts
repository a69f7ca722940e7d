/** Published hourly temperatures and chill, re-typed. */

/**
 * Klein-Altendorf, January 4 to 7: minimum and maximum, C. Latitude 50.4.
 * Source: data set KA_weather of the R package chillR.
 */
export const kleinAltendorf = [
  [4.5, 8.4],
  [4.5, 7.7],
  [4.4, 8.1],
  [6.9, 12],
] as const;

/**
 * Hourly temperatures of January 5 from hour 3, and of January 6 from hour 0, C.
 * Source: Luedeling, "Tree phenology analysis with R", chapter "Making hourly temperatures" (function stack_hourly_temps).
 */
export const january5From3 = [
  4.844164, 4.746566, 4.656244, 4.572187, 4.493583, 4.569464, 5.384001, 6.139939, 6.787169, 7.282787,
  7.593939, 7.7, 7.593939, 7.282787, 6.591821, 6.168074, 5.87057, 5.641106, 5.45428, 5.296704, 5.160445,
] as const;
export const january6 = [
  4.990741, 4.881232, 4.782253, 4.691956, 4.608939, 4.532117, 4.460628, 4.39378, 4.491337, 5.43095, 6.302486,
  7.048391, 7.61941, 7.977836, 8.1, 7.977836, 7.61941, 7.419674, 7.318919, 7.248287, 7.193854, 7.149557,
  7.112208, 7.07992,
] as const;

/** Hours 0 to 7 of January 6 with the whole night in the logarithm, as Linvill has it, C. Computed for comparison. */
export const january6Morning = [
  5.040418, 4.933163, 4.836223, 4.747785, 4.666478, 4.591238, 4.521222, 4.45575,
] as const;

/**
 * Winters, California, March: share of the daily range above the minimum at hours 0 to 23, from logged temperatures.
 * Source: documentation of the R package chillR (empirical daily temperature curve).
 */
export const wintersMarch = [
  0.177, 0.155, 0.129, 0.115, 0.07, 0.034, 0, 0.031, 0.312, 0.495, 0.682, 0.823, 0.951, 0.966, 0.992, 1,
  0.949, 0.848, 0.686, 0.495, 0.364, 0.297, 0.236, 0.179,
] as const;

/**
 * First 100 hourly temperatures of the data set Winters_hours_gaps, from March 3, 2008 10:00, C.
 * Source: R package chillR.
 */
export const wintersHours = [
  15.127, 17.153, 18.699, 18.699, 18.842, 19.508, 19.318, 17.701, 15.414, 12.727, 10.369, 9.706, 9.04, 7.92,
  6.535, 6.687, 8.767, 9.139, 6.788, 5.076, 3.985, 3.775, 10.001, 13.69, 15.796, 18.081, 19.888, 20.841,
  21.366, 21.867, 21.604, 20.079, 17.344, 13.93, 11.929, 10.761, 9.854, 9.706, 7.619, 9.509, 10.883, 12.147,
  12.606, 11.88, 11.589, 11.029, 12.171, 14.074, 15.533, 17.605, 19.318, 20.388, 20.412, 20.793, 20.436,
  19.579, 16.773, 12.558, 10.149, 9.064, 7.419, 6.611, 6.611, 6.585, 5.231, 4.844, 3.643, 3.459, 3.063, 3.67,
  6.128, 11.248, 15.581, 16.773, 17.534, 16.606, 17.177, 17.819, 17.701, 17.51, 15.485, 12.05, 9.756, 9.064,
  8.02, 6.889, 6.255, 5.205, 4.688, 4.428, 4.037, 4.194, 3.248, 3.38, 10.418, 13.522, 14.816, 17.843, 19.175,
  20.15,
] as const;

/** Hour of the record (1 is the first) and the total so far. Source: functions Chilling_Hours and Utah_Model of chillR. */
export const chillingHourTotals = [
  [15, 1],
  [20, 4],
  [22, 6],
  [62, 7],
  [71, 16],
  [86, 17],
  [94, 25],
  [100, 25],
] as const;
export const utahTotals = [
  [1, 0],
  [2, -0.5],
  [8, -6],
  [10, -6],
  [14, -3],
  [23, 5],
  [30, 0],
  [33, -2.5],
  [49, 4],
  [57, -3],
  [72, 10],
  [80, 6.5],
  [95, 19],
  [100, 16.5],
] as const;

/** Utah units by whole degrees F: a temperature inside each step, and its units. Source: Richardson et al. 1974 in F. */
export const utahFahrenheit = [
  [33, 0],
  [35, 0.5],
  [42, 1],
  [51, 0.5],
  [57, 0],
  [62, -0.5],
  [70, -1],
] as const;
