/** Parts of guides within parts: a reader meets the inner one just when both conditions hold. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  anyone,
  conditionOf,
  isOpenToAll,
  meet,
  type PartCondition,
  type ReaderFacts,
  sightOf,
  wordsOf,
} from '../../src/core/care/guideConditions.ts';
import { freezeThresholds } from '../../src/core/records/place.ts';

const values = {
  winter: ['cold', 'cool', 'mild'],
  form: ['leafed-pot', 'bare-root'],
  species: ['fig', 'kaki'],
};

const some = (words: readonly string[]) =>
  fc.option(fc.subarray([...words], { minLength: 1 }), { nil: undefined });
const threshold = fc.option(fc.constantFrom(...freezeThresholds), { nil: null });
const condition: fc.Arbitrary<PartCondition> = fc
  .record({
    winter: some(values.winter),
    form: some(values.form),
    species: some(values.species),
    freeze: threshold,
    noFreeze: threshold,
  })
  .map(({ freeze, noFreeze, ...asked }) => ({
    freeze,
    noFreeze,
    values: Object.fromEntries(Object.entries(asked).filter(([, words]) => words !== undefined)),
  }));

/** A reader of whom all is known: the coldest threshold the place reaches, -1 for none. */
function reader(winter: string, form: string, species: string, coldest: number): ReaderFacts {
  return {
    placeClass: { winter, season: 'long', summer: 'hot', air: 'fair' } as ReaderFacts['placeClass'],
    calendar: null,
    hasFreeze: level => freezeThresholds.indexOf(level) <= coldest,
    species,
    form,
    stage: null,
    kept: null,
  };
}

const known = values.winter.flatMap(winter =>
  values.form.flatMap(form =>
    values.species.flatMap(species =>
      [-1, ...freezeThresholds.keys()].map(coldest => reader(winter, form, species, coldest)),
    ),
  ),
);
const sees = (part: PartCondition, by: ReaderFacts) => !sightOf(part, by).hidden;

describe('a part within a part', () => {
  it('is met by those who meet both, and by nobody just where the two conflict', () => {
    fc.assert(
      fc.property(condition, condition, (outer, inner) => {
        const { both, conflicts } = meet(outer, inner);
        const readers = known.filter(by => sees(outer, by) && sees(inner, by));
        expect(known.filter(by => sees(both, by))).toEqual(readers);
        expect(conflicts.length > 0).toBe(readers.length === 0);
      }),
    );
  });

  it('changes nothing where the one within asks nothing', () => {
    fc.assert(
      fc.property(condition, part => {
        // A part that nobody can meet is told of where it stands, within whatever.
        fc.pre(known.some(by => sees(part, by)));
        expect(meet(part, anyone)).toEqual({ both: part, conflicts: [] });
        expect(meet(anyone, part).both).toEqual(part);
      }),
    );
  });
});

describe('what is not known of a reader', () => {
  const unknown: ReaderFacts = {
    placeClass: null,
    calendar: null,
    hasFreeze: null,
    species: null,
    form: null,
    stage: null,
    kept: null,
  };

  it('stays open, and what is known is settled', () => {
    fc.assert(
      fc.property(condition, part => {
        expect(sightOf(part, unknown)).toEqual({ hidden: false, open: part });
        for (const by of known) {
          const sight = sightOf(part, by);
          expect(sight.hidden || isOpenToAll(sight.open)).toBe(true);
        }
      }),
    );
  });

  it('hides a part for what is known alone', () => {
    const part = conditionOf({ winter: 'cold cool', form: 'leafed-pot', freeze: '24F' });
    const inMildPlace = { ...unknown, placeClass: reader('mild', '', '', 0).placeClass };
    expect(sightOf(part, inMildPlace)).toEqual({ hidden: true });
    const inColdPlace = { ...unknown, placeClass: reader('cold', '', '', 0).placeClass };
    expect(sightOf(part, inColdPlace)).toEqual({
      hidden: false,
      open: { values: { form: ['leafed-pot'] }, freeze: '24F', noFreeze: null },
    });
  });

  it('of a condition by the calendar is asked of the calendar', () => {
    const part = conditionOf({ pots: 'store', season: 'short' });
    const stored = {
      ...unknown,
      calendar: { pots: 'store', 'late-leaves': 'drop', 'dormant-planting': '', cover: '' },
    };
    expect(sightOf(part, stored as ReaderFacts)).toMatchObject({ open: { values: { season: ['short'] } } });
    const out = { ...stored, calendar: { ...stored.calendar, pots: 'stand-out' } };
    expect(sightOf(part, out as ReaderFacts)).toEqual({ hidden: true });
  });
});

describe('a condition as it is written', () => {
  it('takes words parted by spaces or commas, and asks nothing where nothing is written', () => {
    expect(wordsOf(' cold,  cool ,mild ')).toEqual(['cold', 'cool', 'mild']);
    expect(wordsOf('')).toEqual([]);
    expect(conditionOf({})).toEqual(anyone);
    expect(conditionOf({ winter: '', freeze: '', 'no-freeze': null })).toEqual(anyone);
    expect(conditionOf({ species: 'fig', 'no-freeze': '28F' })).toEqual({
      values: { species: ['fig'] },
      freeze: null,
      noFreeze: '28F',
    });
  });

  it('is open to all only where it asks nothing at all', () => {
    expect(isOpenToAll(anyone)).toBe(true);
    expect(isOpenToAll(conditionOf({ kept: 'pot' }))).toBe(false);
    expect(isOpenToAll(conditionOf({ freeze: '28F' }))).toBe(false);
    expect(isOpenToAll(conditionOf({ 'no-freeze': '28F' }))).toBe(false);
  });
});
