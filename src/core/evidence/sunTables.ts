/** Evidence for day length. */
import { dayLengthFao56, declinationFao56, sunsetHourAngleFao56, sunTimes } from '../climate/dayLength.ts';
import type { EvidenceTable } from './table.ts';
import { rowsFrom } from './table.ts';

const RADIANS = Math.PI / 180;

/** Relative distance to the sun squared, inverted. Source: FAO-56, equation 23. */
function inverseDistance(doy: number): number {
  return 1 + 0.033 * Math.cos((2 * Math.PI * doy) / 365);
}

/** Radiation on top of the air, MJ a square meter a day, from our declination and hour angle. Source: FAO-56, equation 21. */
function extraterrestrialRadiation(lat: number, doy: number): number {
  const [phi, delta, angle] = [lat * RADIANS, declinationFao56(doy), sunsetHourAngleFao56(lat, doy)];
  const share = angle * Math.sin(phi) * Math.sin(delta) + Math.cos(phi) * Math.cos(delta) * Math.sin(angle);
  return ((24 * 60) / Math.PI) * 0.082 * inverseDistance(doy) * share;
}

/** Latitude, day of the year, hours. */
const fao56Own = [
  [45, 172, 15.4248],
  [45, 355, 8.5753],
  [35, 80, 11.9719],
  [60, 172, 18.4873],
  [38.5, 1, 9.3721],
] as const;

/** Latitude, day of the year, sunrise, sunset, day length. */
const spencerOwn = [
  [50, 40, 7.1416, 16.8584, 9.7167],
  [45, 172, 4.1904, 19.8096, 15.6193],
  [45, 355, 7.6167, 16.3833, 8.7665],
  [35, 80, 5.9353, 18.0647, 12.1295],
  [0, 80, 5.9444, 18.0556, 12.1111],
  [60, 172, 2.5636, 21.4364, 18.8727],
  [-20, 246, 6.1319, 17.8681, 11.7361],
  [50.4, 5, 7.9159, 16.0841, 8.1682],
  [50.4, 6, 7.9042, 16.0958, 8.1916],
] as const;

/** Day length against FAO-56's examples and against values worked out separately. */
export function sunTables(): EvidenceTable[] {
  const fao = rowsFrom('Allen et al. 1998, FAO Irrigation and Drainage Paper 56, examples 8 and 9');
  const ncl = rowsFrom('NCAR Command Language, daylight_fao56');
  const separately = rowsFrom('FAO-56 equations 24, 25 and 34, in another program', 'computed');
  const spencer = rowsFrom(
    'Spencer 1971 with refraction (Almorox et al. 2005), in another program',
    'computed',
  );
  const polar = rowsFrom('the definition of polar night and midnight sun', 'computed');
  return [
    {
      id: 'day-length',
      title: 'Day length',
      about:
        'Two formulas: one without the bending of light for evaporation, one with it for hourly temperatures. They differ by 4 to 23 minutes.',
      weak: null,
      rows: [
        fao.number('September 3 at 20 S, declination', 0.12, declinationFao56(246), 0.0005, 'rad'),
        fao.number('September 3 at 20 S, sunset angle', 1.527, sunsetHourAngleFao56(-20, 246), 0.0005, 'rad'),
        fao.number('September 3 at 20 S, day length', 11.7, dayLengthFao56(-20, 246), 0.05, 'h'),
        fao.number('September 3, distance term', 0.985, inverseDistance(246), 0.0005, ''),
        fao.number(
          'September 3 at 20 S, radiation',
          32.2,
          extraterrestrialRadiation(-20, 246),
          0.05,
          'MJ m-2 d-1',
        ),
        ncl.number('September 3 at 20 S, day length', 11.66559, dayLengthFao56(-20, 246), 0.000005, 'h'),
        ...fao56Own.map(([lat, doy, hours]) =>
          separately.number(`latitude ${lat}, day ${doy}`, hours, dayLengthFao56(lat, doy), 0.00005, 'h'),
        ),
        ...spencerOwn.flatMap(([lat, doy, sunrise, sunset, hours]) => {
          const sun = sunTimes(lat, doy);
          const what = `latitude ${lat}, day ${doy}`;
          return [
            spencer.number(`${what}, sunrise`, sunrise, sun.sunrise, 0.0001, 'h'),
            spencer.number(`${what}, sunset`, sunset, sun.sunset, 0.0001, 'h'),
            spencer.number(`${what}, day length`, hours, sun.dayLength, 0.0001, 'h'),
          ];
        }),
        polar.number('80 N in June', 24, dayLengthFao56(80, 172), 0, 'h'),
        polar.number('80 N in December', 0, dayLengthFao56(80, 355), 0, 'h'),
        polar.number('80 S in December, with refraction', 24, sunTimes(-80, 355).dayLength, 0, 'h'),
        polar.number('80 S in June, with refraction', 0, sunTimes(-80, 172).dayLength, 0, 'h'),
      ],
      notChecked: [],
    },
  ];
}
