/** The fitted figures of the species records are what the dated observations ask for, and say how many rows they rest on. */
import { describe, expect, it } from 'vitest';
import { stationNetwork } from '../../src/core/climate/anywhere/network.ts';
import { speciesNamed } from '../../src/core/evidence/phenology/comparison.ts';
import { refitted } from '../../src/core/evidence/phenology/fit.ts';
import { observedRows } from '../../src/core/evidence/phenology/observedRows.ts';
import { climateAt } from '../../src/core/evidence/phenology/pointClimate.ts';
import { reachedOn } from '../../src/core/phenology/growingYear.ts';
import { meanYear, middleIndex } from '../../src/core/phenology/seenDate.ts';
import { type Crop, crops, type Figure, type RipeningClass } from '../../src/core/records/common.ts';
import { readStations } from '../../src/stations/read.ts';
import { realSpecies, speciesIds } from '../care/realPlaces.ts';

const at = climateAt(stationNetwork(readStations()));
const all = speciesIds.map(realSpecies);
/** Records round to 10 degree days or a day, which is at most this share of a figure. */
const ROUNDING = 0.012;

describe.each(speciesIds)('%s', id => {
  const species = realSpecies(id);
  const rows = observedRows()
    .filter(row => speciesNamed(all, row.species) === species)
    .flatMap(row => {
      const climate = at(row);
      return 'refused' in climate ? [] : [{ row, years: climate.years }];
    });
  const ripe = (crop: Crop) => rows.filter(({ row }) => row.event === 'first-ripe' && row.crop === crop);
  const fitted = refitted(species, rows);
  const figuresOf = (of: typeof species, crop: Crop) =>
    of.bloom === null ? of.heatNeed[crop] : crop === 'main' ? of.bloom.toRipeDays : {};
  const classes = crops.flatMap(crop =>
    (Object.entries(figuresOf(species, crop)) as [RipeningClass, Figure][]).map(
      ([name, figure]) => [crop, name, figure] as const,
    ),
  );

  it.each(classes)(
    '%s %s: the figure of the record is the one its rows ask for, or in proportion',
    (crop, name, figure) => {
      const asked = figuresOf(fitted, crop)[name] as Figure;
      expect(Math.abs(figure.value / asked.value - 1)).toBeLessThanOrEqual(ROUNDING);
      const own = ripe(crop).filter(({ row }) => row.class === name).length;
      const read = ripe(crop).filter(({ row }) => row.standing === 'published').length;
      if (figure.standing !== 'fitted') {
        expect(figure.source).toMatch(
          own === 0 ? /in proportion.*no dated row was found/ : /in proportion.*the one dated row/,
        );
        return;
      }
      expect(figure.source).toMatch(
        new RegExp(`fitted to ${own} dated rows; ${read} of ${ripe(crop).length} rows`),
      );
    },
  );

  it('comes into bloom by the heat its rows ask for', () => {
    if (species.bloom === null) return expect(fitted.bloom).toBeNull();
    const blooms = rows.filter(({ row }) => row.event === 'full-bloom');
    expect(Math.abs(species.bloom.heat.value / fitted.bloom!.heat.value - 1)).toBeLessThanOrEqual(ROUNDING);
    const places = new Set(blooms.map(({ row }) => row.place)).size;
    expect(species.bloom.heat.source).toMatch(
      new RegExp(`fitted to ${blooms.length} dated blooms at ${places} places`),
    );
  });

  it('is never on record sooner after budbreak than its least days', () => {
    for (const crop of crops) {
      const least = species.leastDays[crop];
      if (least === null) continue;
      const soonest = Math.min(
        ...ripe(crop).map(({ row, years }) => {
          const year = meanYear(years, species);
          const budbreak = reachedOn(year.heatSum, year.calendar.heatFrom, species.budbreakHeat.value);
          return middleIndex(row, year.calendar) - budbreak;
        }),
      );
      expect(least.value).toBeLessThanOrEqual(soonest);
      expect(least.value).toBeGreaterThan(0.93 * soonest);
    }
  });
});
