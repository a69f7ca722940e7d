/** Evidence for what is said about places: modeled freezes, winter lows, zones and heat against observed ones. */
import { chillOfYears } from '../climate/chillYears.ts';
import { findWinters } from '../climate/freezes.ts';
import { heatOfYear, hotDays } from '../climate/heat.ts';
import { weatherYears } from '../climate/weatherYears.ts';
import { halfZoneIndex, parseZone, winterLow, winterZone } from '../climate/winterZone.ts';
import type { Compared } from './comparedPlaces.ts';
import { comparedPlaces, mean, meanError } from './comparedPlaces.ts';
import { freezeTables } from './freezeTables.ts';
import { longRecordFigures, placesWithZone } from './stationFigures.ts';
import type { EvidenceRow, EvidenceTable } from './table.ts';
import { rowsFrom } from './table.ts';

function winterLowTable(places: readonly Compared[]): EvidenceTable {
  const known = places.flatMap(({ name, source, observedMinC, meanMinC }) =>
    observedMinC === null ? [] : [{ name, source, observedMinC, error: meanMinC - observedMinC, meanMinC }],
  );
  const errors = known.map(({ error }) => error);
  const from = rowsFrom('places listed below', 'measured');
  return {
    id: 'winter-lows',
    title: 'The coldest night of a winter',
    about:
      'Mean of the lowest temperature of each winter, modeled from monthly figures, against long records.',
    weak: 'Skewed winters are not in the model: it errs warm in the high interior west and cold on the Gulf coast, by up to 5 C.',
    rows: [
      from.number(`mean error over ${errors.length} places`, 0, meanError(errors), 1.65, 'C'),
      from.number('bias', 0, mean(errors), 0.85, 'C'),
      ...known.map(({ name, source, observedMinC, meanMinC }) =>
        rowsFrom(source, 'measured').number(name, observedMinC, meanMinC, 5.5, 'C'),
      ),
    ],
    notChecked: [],
  };
}

function zoneErrorTable(): EvidenceTable {
  const usda = rowsFrom(
    '2023 USDA Plant Hardiness Zone Map (USDA-ARS and Oregon State University), nearest ZIP code',
  );
  const places = placesWithZone().map(({ name, zone, figures }) => {
    const { meanC } = winterLow(findWinters(weatherYears(figures)));
    return { name, zone, modeled: winterZone(meanC), off: halfZoneIndex(meanC) - (parseZone(zone) ?? 0) };
  });
  const off = places.map(place => place.off);
  const within = off.filter(half => Math.abs(half) <= 1).length / off.length;
  return {
    id: 'winter-zone-errors',
    title: 'Modeled winter zones',
    about:
      'Winter zones worked out from monthly normals alone, against the map. The map uses warmer years (1991-2020) than most of the normals (1981-2010).',
    weak: 'One place in twenty is more than half a zone off. A published zone always wins.',
    rows: [
      usda.number(`mean error over ${off.length} places`, 0, meanError(off), 0.7, 'half zones'),
      usda.number('share within one half zone', 1, within, 0.1, ''),
      ...places.map(
        ({ name, zone, modeled, off: half }): EvidenceRow => ({
          ...usda.text(name, zone, modeled),
          tolerance: 2,
          unit: 'half zones',
          ok: Math.abs(half) <= 2,
        }),
      ),
    ],
    notChecked: [],
  };
}

/** Season heat of Johnson County at other thresholds: base, cap, mean of 41 years. C-degree-days. */
const johnsonHeat = [
  [10, null, 2410],
  [10, 30, 2352],
  [7, null, 3111],
  [15, null, 1432],
] as const;

function heatTable(): EvidenceTable {
  const rows = longRecordFigures().flatMap(({ record, figures }) => {
    const from = rowsFrom(`daily record, ${record.name}`, 'measured');
    const years = weatherYears(figures);
    const { mean: heat, sd } = heatOfYear(years, 8, 36);
    const chill = chillOfYears(years).portions.p50;
    const others = record.name.startsWith('Johnson') ? johnsonHeat : [];
    return [
      from.number(`${record.name}, 8 to 36 C`, record.heat8, heat, record.heat8 * 0.01, 'C-degree-days'),
      from.number(
        `${record.name}, year-to-year deviation`,
        record.heat8Sd,
        sd,
        record.heat8Sd * 0.3,
        'C-degree-days',
      ),
      ...others.map(([base, cap, expected]) =>
        from.number(
          `${record.name}, ${base} C ${cap === null ? 'without a cap' : `to ${cap} C`}`,
          expected,
          heatOfYear(years, base, cap).mean,
          expected * 0.01,
          'C-degree-days',
        ),
      ),
      from.number(`${record.name}, days above 30 C`, record.hotDays, hotDays(years), 5, 'days'),
      from.number(`${record.name}, chill portions`, record.portions, chill, 8, 'portions'),
    ];
  });
  return {
    id: 'season-heat',
    title: 'Heat and chill of the year',
    about:
      'Yearly sums over the weather years against sums over real years. One year made of monthly means alone would be up to 9 % too cool and up to 15 % too chilly.',
    weak: 'Good and poor summers differ a little less in the model than in records, which also hold a warming trend.',
    rows,
    notChecked: [],
  };
}

/** Modeled places against records, published dates and the zone map. Takes a second or two. */
export function placeTables(): EvidenceTable[] {
  const places = comparedPlaces();
  return [...freezeTables(places), winterLowTable(places), zoneErrorTable(), heatTable()];
}
