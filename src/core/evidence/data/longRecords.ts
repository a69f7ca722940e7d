/**
 * Five long daily records: monthly figures and what was counted in the days themselves. C, kPa; freeze days are days of
 * the year.
 * Sources of the daily values: Johnson County, Kansas, gridMET 1980-2020 (University of Idaho); Bonn, Deutscher
 * Wetterdienst 1991-2019; Davis, California, 1978-2007; Beijing 1978-2007; Sfax 1985-2014 (course data of E. Luedeling,
 * University of Bonn). Standard deviations are about the smooth daily curve.
 */

export interface LongRecord {
  readonly name: string;
  readonly lat: number;
  readonly tminC: readonly number[];
  readonly tmaxC: readonly number[];
  readonly sdTminC: readonly number[];
  /** Standard deviation of the daily mean. */
  readonly sdMeanC: readonly number[];
  readonly lag1: number;
  /** Mean lowest temperature of a winter, and its zone by the map's bounds. */
  readonly annualMinC: number;
  readonly zone: string;
  /** Days a year above 30 C, and the heat zone. */
  readonly hotDays: number;
  readonly heatZone: number;
  /** Degree days a year from 8 C, held at 36 C, single sine, with their year-to-year standard deviation. */
  readonly heat8: number;
  readonly heat8Sd: number;
  /** Chill portions from October 1 to March 31, mean of about 20 winters. */
  readonly portions: number;
  /** First and last freeze by threshold in F: 10, 50 and 90 % days of the year, null where not reached. */
  readonly freezes: readonly (readonly [
    36 | 32 | 28,
    readonly (number | null)[],
    readonly (number | null)[],
  ])[];
}

export const longRecords: readonly LongRecord[] = [
  {
    name: 'Johnson County, Kansas',
    lat: 38.9,
    tminC: [-6, -4.1, 1.5, 7.1, 12.8, 18.1, 20.6, 19.4, 14.6, 7.9, 1.4, -4.3],
    tmaxC: [4.5, 6.9, 13.6, 19.1, 24.1, 29.3, 32, 31, 26.6, 19.7, 12.3, 5.6],
    sdTminC: [5.6, 5.9, 5.3, 4.6, 4.1, 3.2, 3, 3.3, 4.3, 4.7, 5, 5.7],
    sdMeanC: [5.8, 6.3, 5.7, 4.9, 4, 3.1, 3.2, 3.4, 4.2, 4.7, 5.1, 5.9],
    lag1: 0.72,
    annualMinC: -19.5,
    zone: '6b',
    hotDays: 66.6,
    heatZone: 7,
    heat8: 2863,
    heat8Sd: 201,
    portions: 94.5,
    freezes: [
      [36, [270, 286, 301], [96, 108, 124]],
      [32, [279, 298, 314], [81, 96, 108]],
      [28, [296, 313, 332], [65, 87, 104]],
    ],
  },
  {
    name: 'Bonn, Germany',
    lat: 50.8,
    tminC: [0, -0.1, 2.1, 4.6, 8.2, 11.3, 13.6, 12.7, 9.8, 6.9, 3.6, 1.1],
    tmaxC: [5.7, 6.8, 11.2, 15.8, 19.5, 22.4, 25, 24, 20.1, 15.1, 9.6, 6.5],
    sdTminC: [4.8, 4.6, 4.1, 3.8, 3.7, 3.2, 3, 3, 3.3, 4.1, 4, 4.6],
    sdMeanC: [4.4, 4.2, 3.8, 3.8, 3.7, 3.4, 3.4, 3.1, 2.9, 3.6, 3.6, 4.2],
    lag1: 0.72,
    annualMinC: -12.1,
    zone: '8a',
    hotDays: 9.4,
    heatZone: 3,
    heat8: 1688,
    heat8Sd: 140,
    portions: 117.1,
    freezes: [
      [36, [257, 283, 302], [107, 126, 145]],
      [32, [283, 294, 317], [99, 112, 136]],
      [28, [292, 320, 347], [54, 89, 111]],
    ],
  },
  {
    name: 'Davis, California',
    lat: 38.5,
    tminC: [3.1, 4.6, 6.2, 7.6, 10.5, 12.8, 13.7, 12.9, 12, 9.1, 5.2, 2.9],
    tmaxC: [12.3, 15.8, 18.7, 22.5, 27.6, 31.7, 34.2, 33.3, 31.3, 26.1, 17.6, 12.1],
    sdTminC: [3.6, 3.4, 2.9, 2.8, 3, 2.8, 2.7, 2.3, 2.5, 2.7, 3.4, 3.6],
    sdMeanC: [2.7, 2.7, 2.8, 3, 3.5, 3.2, 2.8, 2.5, 2.8, 2.8, 2.8, 2.8],
    lag1: 0.61,
    annualMinC: -3.3,
    zone: '9b',
    hotDays: 105.7,
    heatZone: 8,
    heat8: 3140,
    heat8Sd: 168,
    portions: 84.8,
    freezes: [
      [36, [299, 314, 328], [64, 90, 108]],
      [32, [316, 330, null], [30, 52, 76]],
      [28, [334, 363, null], [null, null, 44]],
    ],
  },
  {
    name: 'Beijing, China',
    lat: 39.9,
    tminC: [-7.6, -4.9, 0.9, 8.5, 14.4, 19.5, 22.1, 21.2, 15.3, 8.3, 0.3, -5.4],
    tmaxC: [2.2, 5.3, 12.1, 20.5, 26.5, 30.4, 31, 30, 26.1, 19.4, 10.4, 3.5],
    sdTminC: [3.1, 3.4, 3.2, 3.3, 2.8, 2.4, 1.9, 2.2, 2.7, 3.2, 3.1, 3],
    sdMeanC: [2.9, 3.5, 3.2, 3.2, 2.7, 2.5, 2, 2, 2.2, 2.6, 3, 2.9],
    lag1: 0.57,
    annualMinC: -13.6,
    zone: '7b',
    hotDays: 63.4,
    heatZone: 7,
    heat8: 2888,
    heat8Sd: 161,
    portions: 97.9,
    freezes: [
      [36, [292, 301, 313], [83, 92, 109]],
      [32, [298, 311, 320], [72, 83, 95]],
      [28, [306, 320, 332], [64, 74, 85]],
    ],
  },
  {
    name: 'Sfax, Tunisia',
    lat: 34.7,
    tminC: [8, 8.7, 10.6, 13, 16.2, 19.4, 21.9, 22.6, 20.7, 17.7, 12.9, 9.1],
    tmaxC: [17, 17.7, 19.8, 22.3, 25.8, 29.4, 32.2, 32.9, 30.5, 27.2, 22.3, 18.1],
    sdTminC: [1.9, 2.1, 2.3, 2.1, 2.2, 2.1, 1.9, 1.8, 1.9, 2.1, 2, 2.2],
    sdMeanC: [2, 2.4, 2.6, 2.4, 2.5, 2.4, 2.2, 2, 2.1, 2.3, 2.1, 2.3],
    lag1: 0.64,
    annualMinC: 3.2,
    zone: '10b',
    hotDays: 91,
    heatZone: 8,
    heat8: 4343,
    heat8Sd: 159,
    portions: 38.9,
    freezes: [[32, [null, null, null], [null, null, null]]],
  },
];
