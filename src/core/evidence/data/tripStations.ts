/**
 * Stations of the winter trips: monthly means of daily minimum and maximum, C, 2003 to 2021, averaged from the monthly CLIMAT reports of the
 * stations (Deutscher Wetterdienst open data, CC BY 4.0). The spread of single days is reckoned from the spread of daily means in the same
 * reports by a fit on 201 places that have both (mean error 0.5 C). Seattle is not among them: its means are NOAA normals of 1981 to 2010, its spreads USDA ARS CLIGEN parameters.
 */
import type { ClimateFigures } from '../../climate/figures.ts';

export type TripStation =
  | 'asheville'
  | 'boston'
  | 'houston'
  | 'phoenix'
  | 'minneapolis'
  | 'seattle'
  | 'stLouis';

type Figures = Required<Pick<ClimateFigures, 'lat'>> & {
  readonly name: string;
  readonly wmo: string;
  readonly tminC: readonly number[];
  readonly tmaxC: readonly number[];
  readonly sdTminC: readonly number[];
  readonly sdTmaxC: readonly number[];
};

export const tripStations: Readonly<Record<TripStation, Figures>> = {
  asheville: {
    name: 'Asheville airport',
    wmo: '72315',
    lat: 35.43,
    tminC: [-2.3, -0.8, 3.0, 6.8, 11.8, 16.2, 18.0, 17.8, 14.6, 8.1, 2.1, -0.4],
    tmaxC: [8.9, 11.0, 15.4, 20.4, 24.1, 27.9, 29.0, 28.5, 25.6, 20.6, 15.2, 10.6],
    sdTminC: [5.77, 5.1, 4.99, 4.4, 3.82, 2.62, 2.25, 2.32, 3.25, 4.5, 4.77, 4.92],
    sdTmaxC: [6.27, 5.7, 5.67, 5.22, 4.39, 3.07, 2.64, 2.69, 3.64, 5.15, 5.56, 5.38],
  },
  boston: {
    name: 'Boston',
    wmo: '72509',
    lat: 42.36,
    tminC: [-4.7, -4.0, -0.5, 5.0, 10.4, 15.6, 19.3, 18.7, 15.0, 9.1, 3.4, -1.4],
    tmaxC: [2.9, 4.1, 7.9, 13.8, 19.3, 24.5, 28.0, 27.2, 23.3, 17.0, 11.3, 5.9],
    sdTminC: [6.29, 5.35, 5.63, 5.04, 4.95, 4.63, 3.62, 3.48, 4.23, 4.69, 5.2, 5.44],
    sdTmaxC: [6.07, 5.35, 5.6, 5.11, 4.99, 4.67, 3.72, 3.57, 4.24, 4.63, 5.12, 5.27],
  },
  houston: {
    name: 'Houston',
    wmo: '72243',
    lat: 29.98,
    tminC: [6.5, 8.5, 12.4, 15.5, 19.9, 23.3, 24.4, 24.4, 21.9, 16.3, 11.1, 7.4],
    tmaxC: [17.8, 19.5, 23.7, 26.7, 30.4, 33.7, 34.3, 35.1, 32.4, 28.5, 23.0, 18.6],
    sdTminC: [5.43, 5.75, 4.71, 3.91, 3.22, 2.23, 1.96, 2.1, 2.68, 4.32, 5.28, 5.6],
    sdTmaxC: [5.89, 6.13, 5.14, 4.31, 3.53, 2.55, 2.26, 2.43, 3.0, 4.86, 5.82, 6.03],
  },
  phoenix: {
    name: 'Phoenix',
    wmo: '72278',
    lat: 33.43,
    tminC: [7.7, 9.3, 12.8, 16.3, 20.9, 26.5, 29.6, 28.8, 25.7, 18.9, 12.5, 7.5],
    tmaxC: [20.0, 21.8, 26.2, 30.3, 34.9, 40.9, 41.6, 40.8, 38.2, 32.2, 25.3, 19.3],
    sdTminC: [3.45, 3.61, 3.74, 3.59, 3.46, 2.77, 2.76, 2.74, 3.12, 3.65, 3.92, 3.58],
    sdTmaxC: [4.03, 4.2, 4.44, 4.34, 4.18, 3.43, 3.16, 3.15, 3.61, 4.3, 4.55, 4.1],
  },
  seattle: {
    name: 'Seattle-Tacoma airport',
    wmo: '72793',
    lat: 47.44,
    tminC: [2.7, 2.7, 4.1, 5.7, 8.5, 11.1, 13.1, 13.3, 11.2, 7.7, 4.4, 2],
    tmaxC: [8.4, 9.9, 12.1, 14.7, 18.2, 21.1, 24.3, 24.6, 21.4, 15.4, 10.5, 7.6],
    sdTminC: [3.56, 3.16, 2.71, 2.6, 2.56, 2.09, 1.86, 1.92, 2.41, 2.72, 3.38, 3.52],
    sdTmaxC: [3.34, 3.39, 3.36, 3.8, 4.37, 4.28, 4.25, 4.07, 4, 3.65, 3.38, 3.32],
  },
  minneapolis: {
    name: 'Minneapolis',
    wmo: '72658',
    lat: 44.88,
    tminC: [-12.5, -11.6, -3.8, 3.3, 10.1, 16.3, 18.9, 17.4, 12.9, 5.2, -2.1, -9.3],
    tmaxC: [-4.4, -2.8, 5.6, 13.9, 20.8, 26.6, 29.3, 27.4, 23.2, 14.5, 6.2, -2.0],
    sdTminC: [7.52, 6.97, 6.9, 5.94, 5.28, 3.87, 3.25, 3.43, 4.99, 5.77, 6.37, 6.81],
    sdTmaxC: [7.29, 6.96, 6.97, 6.28, 5.61, 4.15, 3.55, 3.69, 5.24, 5.85, 6.24, 6.48],
  },
  stLouis: {
    name: 'St. Louis',
    wmo: '72434',
    lat: 38.75,
    tminC: [-4.0, -3.1, 3.5, 8.7, 14.8, 20.1, 22.0, 21.0, 16.7, 9.7, 3.4, -1.6],
    tmaxC: [5.3, 6.8, 14.4, 20.3, 25.2, 30.5, 32.1, 31.3, 27.6, 20.7, 13.6, 7.3],
    sdTminC: [6.88, 6.84, 6.25, 5.61, 5.11, 3.6, 3.22, 3.39, 4.27, 5.66, 5.91, 6.05],
    sdTmaxC: [6.93, 7.03, 6.64, 6.12, 5.36, 3.89, 3.47, 3.66, 4.62, 6.04, 6.17, 6.07],
  },
};
