import { describe, expect, it } from 'vitest';
import { type World, worldRecords } from '../../../../tests/world.ts';
import { assemble } from '../../../core/catalogue.ts';
import { day } from '../../../core/days.ts';
import { fruitMark, fruitMarksFile } from '../../drawing/fruitMarks.ts';
import { axisInWords, comparedFacts, comparedTraits, compareLists, differences } from './compare.ts';

const longName = `${'Ab cde'.repeat(13)}xy`;
const world: World = {
  cultivars: {
    'test-fig': {},
    long: { name: longName },
    rtl: { name: 'תאנה של הגבעה' },
    accented: { name: 'Zoë à l’Œillet' },
  },
  lots: [],
  walks: {},
};
const all = assemble(worldRecords(world), day('2026-08-29'), new Map());

const traits = (...values: string[]) => ({ traits: values });

describe('differences', () => {
  it('marks what is not what most have', () => {
    expect(differences([traits('a', 'x'), traits('a', 'y'), traits('b', 'x')])).toEqual([
      [false, false],
      [false, true],
      [true, false],
    ]);
  });

  it('marks nothing where all differ, or where there is one', () => {
    expect(differences([traits('a'), traits('b'), traits('c')])).toEqual([[false], [false], [false]]);
    expect(differences([traits('a', 'b')])).toEqual([[false, false]]);
    expect(differences([])).toEqual([]);
  });
});

describe('the tables', () => {
  it('has one for each species and flavor, with every cultivar, whatever its name', () => {
    const { species, flavor } = compareLists(all);
    expect(species.map(({ path }) => path)).toEqual(['/compare/species/fig/']);
    expect(flavor.map(({ path }) => path)).toEqual(['/compare/flavor/honey/']);
    const rows = species[0]!.list.pages[0]!.groups[0]!.rows;
    expect(rows.map(({ name }) => name)).toContain(longName);
    expect(longName).toHaveLength(80);
    expect(rows.map(({ name }) => name)).toEqual(expect.arrayContaining(['תאנה של הגבעה', 'Zoë à l’Œillet']));
    for (const row of rows) expect(row.traits).toHaveLength(comparedTraits('species').length);
  });

  it('leaves out what all of a table share', () => {
    expect(comparedTraits('species')).not.toContain('Species');
    expect(comparedTraits('flavor')).not.toContain('Flavor');
  });

  it('gives every cultivar the same labels', () => {
    const labels = all.cultivars.map(entry => comparedFacts(all, entry).map(({ label }) => label));
    for (const each of labels) expect(each).toEqual(labels[0]);
  });

  it('names the ends of the year as the hemisphere has it', () => {
    expect(axisInWords(35)).toBe('January to December');
    expect(axisInWords(-35)).toBe('July to June');
  });
});

describe('small plates', () => {
  const { cultivar, species } = all.cultivars[0]!;

  it('are to one scale, half a px to the millimeter', () => {
    const { lengthMm, widthMm } = cultivar.fruit;
    const mark = fruitMark(all, cultivar, species);
    expect(mark.width).toBeCloseTo(widthMm / 2, 0);
    expect(mark.height).toBeCloseTo(lengthMm / 2, 0);
    const twice = fruitMark(
      all,
      { fruit: { ...cultivar.fruit, lengthMm: lengthMm * 2, widthMm: widthMm * 2 } },
      species,
    );
    expect(twice.width).toBeCloseTo(mark.width * 2, 0);
    expect(twice.height).toBeCloseTo(mark.height * 2, 0);
  });

  it('shrink together where one fruit is very large', () => {
    const fruit = { ...cultivar.fruit, lengthMm: 192, widthMm: 96 };
    const large = { ...all, cultivars: [{ ...all.cultivars[0]!, cultivar: { ...cultivar, fruit } }] };
    expect(fruitMark(large, { fruit }, species)).toMatchObject({ width: 24, height: 48 });
  });

  it('share one file that holds the symbol of every row', () => {
    const file = fruitMarksFile(all);
    for (const entry of all.cultivars) {
      expect(file).toContain(`id="${fruitMark(all, entry.cultivar, entry.species).symbol}"`);
    }
    expect(file.match(/<symbol/g)).toHaveLength(
      new Set(all.cultivars.map(each => each.cultivar.fruit.shape)).size,
    );
  });
});
