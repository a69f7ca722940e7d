/** Evidence for winter zones, heat zones and the moisture of the air. */
import { heatZone } from '../climate/heat.ts';
import { actualKpa, meanSaturationKpa, saturationKpa, vaporDeficitKpa } from '../climate/humidity.ts';
import { monthlyDeficitKpa } from '../climate/placeClass.ts';
import {
  halfZoneIndex,
  halfZoneName,
  parseZone,
  winterZone,
  zoneLowerBoundC,
} from '../climate/winterZone.ts';
import { celsiusToFahrenheit, fahrenheitToCelsius } from '../units.ts';
import { longRecords } from './data/longRecords.ts';
import type { EvidenceTable } from './table.ts';
import { printed, rowsFrom } from './table.ts';

/** Half zone, lower and upper bound in F, and both in C where they are printed. */
const zoneBounds = [
  ['1a', -60, -55, null, null],
  ['3a', -40, -35, -40, -37.2],
  ['3b', -35, -30, -37.2, -34.4],
  ['4a', -30, -25, -34.4, -31.7],
  ['4b', -25, -20, -31.7, -28.9],
  ['5a', -20, -15, -28.9, -26.1],
  ['5b', -15, -10, -26.1, -23.3],
  ['6a', -10, -5, -23.3, -20.6],
  ['6b', -5, 0, -20.6, -17.8],
  ['7a', 0, 5, -17.8, -15],
  ['7b', 5, 10, -15, -12.2],
  ['8a', 10, 15, -12.2, -9.4],
  ['8b', 15, 20, -9.4, -6.7],
  ['9a', 20, 25, -6.7, -3.9],
  ['9b', 25, 30, -3.9, -1.1],
  ['10a', 30, 35, -1.1, 1.7],
  ['10b', 35, 40, 1.7, 4.4],
  ['11a', 40, 45, null, null],
  ['12a', 50, 55, null, null],
  ['13b', 65, 70, null, null],
] as const;

function winterZoneTable(): EvidenceTable {
  const usda = rowsFrom('USDA Plant Hardiness Zone Map, 2023 (USDA-ARS and Oregon State University)');
  const records = rowsFrom(
    'mean lowest temperature of long daily records, put into the map’s bounds',
    'computed',
  );
  return {
    id: 'winter-zones',
    title: 'Winter zones',
    about:
      'A zone is the mean of the coldest night of each winter, so about half of all winters are colder than the zone says.',
    weak: null,
    rows: [
      ...zoneBounds.flatMap(([zone, lowF, highF, lowC, highC]) => {
        const index = parseZone(zone) ?? -1;
        const bounds = [zoneLowerBoundC(index), zoneLowerBoundC(index + 1)] as const;
        const inC = [lowC, highC].flatMap((expected, i) =>
          expected === null
            ? []
            : [
                usda.number(
                  `${zone}, ${i === 0 ? 'lower' : 'upper'} bound`,
                  expected,
                  bounds[i] as number,
                  printed(1),
                  'C',
                ),
              ],
        );
        return [
          usda.text(`at ${lowF} F`, zone, winterZone(fahrenheitToCelsius(lowF))),
          usda.text(`just below ${highF} F`, zone, winterZone(fahrenheitToCelsius(highF - 0.01))),
          usda.number(`${zone}, upper bound`, highF, celsiusToFahrenheit(bounds[1]), 1e-9, 'F'),
          ...inC,
        ];
      }),
      ...longRecords.map(({ name, annualMinC, zone }) =>
        records.text(`${name}, ${annualMinC} C`, zone, halfZoneName(halfZoneIndex(annualMinC))),
      ),
    ],
    notChecked: [
      {
        what: 'the rule of thumb "January mean minimum less 2.25 standard deviations"',
        why: 'the site draws whole winters instead; their error is in the table of winter lows',
      },
    ],
  };
}

/** Mean days above 30 C, at and beside each printed bound, and the zone. */
const heatZoneBounds = [
  [0, 1],
  [0.9, 1],
  [1, 2],
  [7, 2],
  [7.1, 3],
  [14, 3],
  [14.1, 4],
  [30, 4],
  [30.1, 5],
  [45, 5],
  [45.1, 6],
  [60, 6],
  [60.1, 7],
  [90, 7],
  [90.1, 8],
  [120, 8],
  [120.1, 9],
  [150, 9],
  [150.1, 10],
  [180, 10],
  [180.1, 11],
  [210, 11],
  [210.1, 12],
] as const;

function heatZoneTable(): EvidenceTable {
  const ahs = rowsFrom('American Horticultural Society, Plant Heat Zone Map');
  const counted = rowsFrom(
    'days above 30 C counted in long daily records, put into the map’s bounds',
    'computed',
  );
  return {
    id: 'heat-zones',
    title: 'Heat zones',
    about: 'Days a year above 30 C (86 F), in twelve classes.',
    weak: null,
    rows: [
      ...heatZoneBounds.map(([days, zone]) => ahs.number(`${days} days`, zone, heatZone(days), 0, 'zone')),
      ...longRecords.map(({ name, hotDays, heatZone: zone }) =>
        counted.number(`${name}, ${hotDays} days`, zone, heatZone(hotDays), 0, 'zone'),
      ),
    ],
    notChecked: [],
  };
}

/** Johnson County: vapor pressure deficit by month with the minimum standing in for the dew point, kPa. */
const johnsonDeficit = [0.25, 0.31, 0.49, 0.65, 0.79, 1.02, 1.19, 1.15, 0.95, 0.66, 0.41, 0.26];
/** Measured there, kPa. Source: gridMET 1980-2020. */
const johnsonMeasured = [0.27, 0.35, 0.58, 0.78, 0.9, 1.15, 1.39, 1.31, 1.04, 0.74, 0.47, 0.28];

function humidityTable(): EvidenceTable {
  const fao = rowsFrom('Allen et al. 1998, FAO Irrigation and Drainage Paper 56');
  const again = rowsFrom('FAO-56 equations, in another program', 'computed');
  const gridMet = rowsFrom('gridMET 1980-2020, Johnson County, Kansas', 'measured');
  const johnson = longRecords.find(({ name }) => name.startsWith('Johnson'));
  const { tminC, tmaxC } = johnson ?? { tminC: [], tmaxC: [] };
  const deficits = monthlyDeficitKpa({ lat: 38.9, tminC, tmaxC, rainMm: null, dewPointC: null });
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  return {
    id: 'humidity',
    title: 'Moisture of the air',
    about:
      'The vapor pressure deficit says how hard the air dries. Where no dew point is known the night’s low stands in for it.',
    weak: 'Without a dew point the deficit comes out 11 to 18 % too low in Kansas, and more in deserts; monthly means instead of days cost another 0.06 kPa at most.',
    rows: [
      fao.number('example 3, saturation at 24.5 C', 3.075, saturationKpa(24.5), printed(3), 'kPa'),
      fao.number('example 3, saturation at 15 C', 1.705, saturationKpa(15), printed(3), 'kPa'),
      fao.number('example 3, mean', 2.39, meanSaturationKpa(15, 24.5), printed(2), 'kPa'),
      fao.number(
        'example 5, from both humidities',
        1.7,
        actualKpa(18, 25, { rhMax: 82, rhMin: 54 }),
        printed(2),
        'kPa',
      ),
      fao.number(
        'example 5, from the highest humidity',
        1.69,
        actualKpa(18, 25, { rhMax: 82 }),
        printed(2),
        'kPa',
      ),
      fao.number(
        'example 5, from the mean humidity',
        1.78,
        actualKpa(18, 25, { rhMean: 68 }),
        printed(2),
        'kPa',
      ),
      fao.number(
        'example 20, dew point 14.8 C',
        1.68,
        actualKpa(14.8, 26.6, { dewPointC: 14.8 }),
        printed(2),
        'kPa',
      ),
      again.number(
        'example 5, deficit',
        0.914,
        vaporDeficitKpa(18, 25, { rhMax: 82, rhMin: 54 }),
        printed(3),
        'kPa',
      ),
      ...johnsonDeficit.map((expected, month) =>
        again.number(
          `Johnson County, estimated deficit of month ${month + 1}`,
          expected,
          deficits[month] ?? 0,
          0.06,
          'kPa',
        ),
      ),
      gridMet.number(
        'Johnson County, estimate as a share of the measured year',
        0.86,
        mean(deficits) / mean(johnsonMeasured),
        0.05,
        '',
      ),
    ],
    notChecked: [],
  };
}

/** Zones and humidity against their definitions and printed examples. */
export function zoneTables(): EvidenceTable[] {
  return [winterZoneTable(), heatZoneTable(), humidityTable()];
}
