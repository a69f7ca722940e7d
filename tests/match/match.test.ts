/** One verdict: level, reasons, trials, what would change it, which form suits. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, day } from '../../src/core/days.ts';
import { evidenceFigures } from '../../src/core/evidence/matchRipening.ts';
import { type Level, levels, type Match, winterCares } from '../../src/core/match/answers.ts';
import { buyingSeason } from '../../src/core/match/buyingSeason.ts';
import { levelOf } from '../../src/core/match/level.ts';
import type { ClimateTraits } from '../../src/core/match/likeness.ts';
import { matchAll } from '../../src/core/match/match.ts';
import { wetVerdict } from '../../src/core/match/wet.ts';
import { ripeningWord, yearsOfTen } from '../../src/core/match/words.ts';
import type { AirClass, Crop, WinterClass } from '../../src/core/records/common.ts';
import type { Trial } from '../../src/core/records/cultivar.ts';
import { rainLosses } from '../../src/core/records/rainLoss.ts';
import { realSpecies, speciesIds } from '../care/realPlaces.ts';
import { chilly, context, cultivar, fig, matchPlace, movedBy, outlookOf, placeNamed } from './places.ts';

const rank = (level: (typeof levels)[number]) => levels.indexOf(level);
const { fruit } = cultivar();

describe('the level', () => {
  const share = fc.double({ min: 0, max: 1, noNaN: true });
  const parts = fc.record({
    care: fc.constantFrom(...winterCares),
    outdoors: share,
    headStart: share,
    wet: fc.constantFrom(...rainLosses),
    chill: fc.constantFrom('met' as const, 'doubtful' as const, 'short' as const),
    fruitless: fc.constant(false),
  });

  it('never falls with less care, a better chance or less wet', () => {
    fc.assert(
      fc.property(parts, share, (some, more) => {
        const base = rank(levelOf(some));
        const easier = winterCares[Math.max(0, winterCares.indexOf(some.care) - 1)]!;
        expect(rank(levelOf({ ...some, care: easier }))).toBeLessThanOrEqual(base);
        expect(rank(levelOf({ ...some, outdoors: Math.max(some.outdoors, more) }))).toBeLessThanOrEqual(base);
        expect(rank(levelOf({ ...some, headStart: Math.max(some.headStart, more) }))).toBeLessThanOrEqual(
          base,
        );
        expect(rank(levelOf({ ...some, wet: 'sound' }))).toBeLessThanOrEqual(base);
        expect(rank(levelOf({ ...some, chill: 'met' }))).toBeLessThanOrEqual(base);
      }),
    );
  });

  it('is the worst for a tree that sets no fruit', () => {
    const best = { care: 'nothing', outdoors: 1, headStart: 1, wet: 'sound', chill: 'met' } as const;
    expect(levelOf({ ...best, fruitless: false })).toBe('at-home');
    expect(levelOf({ ...best, fruitless: true })).toBe('not-here');
  });
});

describe('matches', () => {
  it('put a mid-season fig at home at Davis, in a pot in Kansas and not at Bonn outdoors', () => {
    const davis = matchPlace(placeNamed('davis'), cultivar(), fig, context);
    expect(davis.level).toBe('at-home');
    expect(davis.whatWouldChangeIt.map(({ text }) => text).join()).not.toContain('pot woken');
    const kansas = matchPlace(placeNamed('johnson'), cultivar(), fig, context);
    expect(kansas.level).toBe('in-a-pot');
    expect(kansas.winter.established.care).toBe('bury');
    const bonn = matchPlace(placeNamed('bonn'), cultivar(), fig, context);
    expect(bonn.ripening[0]!.word).toBe('not-outdoors');
    expect(['in-a-pot', 'a-gamble']).toContain(bonn.level);
    expect(bonn.because[0]!.text).toContain('main crop ripens');
    expect(bonn.whatWouldChangeIt.some(({ text }) => text.includes('four weeks early'))).toBe(true);
  });

  it('are never better in the same place made colder by 2 C or more', () => {
    const ranks = [0, -2, -4, -6].map(byC =>
      rank(
        matchPlace(
          outlookOf(`davis ${byC}`, movedBy(evidenceFigures('davis'), byC)),
          cultivar(),
          fig,
          context,
        ).level,
      ),
    );
    expect([...ranks].sort((a, b) => a - b)).toEqual(ranks);
  });

  it('are never worse with more shelter', () => {
    for (const name of ['johnson', 'bonn', 'beijing'] as const) {
      const ranks = [-5, 0, 1, 3, 6].map(shelterC =>
        rank(matchPlace(placeNamed(name), cultivar(), fig, { ...context, shelterC }).level),
      );
      expect([...ranks].sort((a, b) => b - a)).toEqual(ranks);
    }
  });

  it('say when winters are too warm for a species', () => {
    const { level, because } = matchPlace(
      placeNamed('sfax'),
      cultivar({ species: 'chilly' }),
      chilly,
      context,
    );
    expect(level).toBe('a-gamble');
    expect(because.some(({ text }) => text.includes('too warm'))).toBe(true);
    expect(
      matchPlace(placeNamed('bonn'), cultivar({ species: 'chilly' }), chilly, context).because.at(-2)!.text,
    ).toMatch(/hours of chill/);
  });

  it('give every reason a standing and words, and no figure that is none', () => {
    for (const name of ['johnson', 'bonn', 'davis', 'beijing', 'sfax'] as const) {
      for (const pollination of ['unaided', 'partner', 'wasp-main', 'wasp-all'] as const) {
        const match = matchPlace(
          placeNamed(name),
          cultivar({ pollination, crops: ['breba', 'main'] }),
          fig,
          context,
        );
        const text = JSON.stringify(match);
        expect(text).not.toMatch(/NaN|undefined|Infinity/);
        // A share, margin or temperature that was NaN would have become null.
        for (const { share, headStart } of match.ripening) {
          expect(Number.isFinite(share) && Number.isFinite(headStart.share)).toBe(true);
        }
        for (const verdict of Object.values(match.winter))
          expect(Number.isFinite(verdict.marginC)).toBe(true);
        expect(Number.isFinite(match.pot.mixLowC)).toBe(true);
        for (const reason of [...match.because, ...match.whatWouldChangeIt]) {
          expect(reason.standing).toMatch(/^(?:seen|published|practice|ours|modeled)$/);
          expect(reason.text).toMatch(/^\S.*\.$/);
        }
      }
    }
  });

  it('ask for a partner where one is needed', () => {
    const { because, whatWouldChangeIt } = matchPlace(
      placeNamed('davis'),
      cultivar({ pollination: 'partner' }),
      fig,
      context,
    );
    expect(because.at(-1)).toMatchObject({ standing: 'practice' });
    expect(whatWouldChangeIt.some(({ text }) => text.includes('partner'))).toBe(true);
  });

  it('refuse a species the outlook does not know', () => {
    const stranger = { ...fig, id: 'stranger' };
    expect(() => matchPlace(placeNamed('davis'), cultivar(), stranger, context)).toThrow(RangeError);
    expect(() => matchAll(placeNamed('davis'), [cultivar({ species: 'x' })], [fig], context)).toThrow(
      RangeError,
    );
  });

  it('come out the same from an outlook that was kept and read back', () => {
    const place = placeNamed('bonn');
    const readBack = structuredClone(place);
    expect(matchPlace(readBack, cultivar(), fig, context)).toEqual(
      matchPlace(place, cultivar(), fig, context),
    );
  });

  it('give the same for one and for many', () => {
    const many = [cultivar({ id: 'a' }), cultivar({ id: 'b', ripening: 'late' }), cultivar({ id: 'c' })];
    const place = placeNamed('bonn');
    expect(matchAll(place, many, [fig], context)).toEqual(
      many.map(each => matchPlace(place, each, fig, context)),
    );
  });
});

describe('trials', () => {
  const place = placeNamed('johnson');
  const { traits } = place;
  const trial = (over: Partial<Trial> = {}): Trial => ({
    where: 'a test bench',
    place: 'bench',
    class: place.class,
    crop: 'main',
    from: 2015,
    to: 2022,
    winter: 'unhurt',
    ripened: 'all',
    note: null,
    ...over,
  });
  const at = (bench: ClimateTraits, ...trials: Trial[]) =>
    matchPlace(place, cultivar({ trials, ripening: 'late' }), fig, { ...context, trialClimates: { bench } });
  const here = (...trials: Trial[]) => at(traits, ...trials);
  const mainOf = (match: Match) => match.ripening.find(({ crop }) => crop === 'main')!;
  const model = mainOf(here());

  it('at the place itself outweigh the model, and are told first, with what the model alone says', () => {
    const match = here(trial({ ripened: 'none' }));
    // Eight seasons of never beside the model counted as four: a third of its odds are left.
    expect(mainOf(match).share).toBeCloseTo((4 * model.share) / 12, 10);
    expect(match.because[0]).toMatchObject({ standing: 'seen' });
    expect(match.because.map(({ text }) => text).join(' ')).toMatch(/By the model alone/);
  });

  it('pull the odds toward what they saw, the more the longer they ran and the more alike the climates are', () => {
    const share = (bench: ClimateTraits, years: number) =>
      mainOf(at(bench, trial({ from: 2022 - years + 1, ripened: 'none' }))).share;
    const warmer = (by: number): ClimateTraits => ({ ...traits, heat: traits.heat * by });
    for (const bench of [traits, warmer(1.1), warmer(1.2)]) {
      expect(share(bench, 8)).toBeLessThan(share(bench, 3));
      expect(share(bench, 3)).toBeLessThan(model.share);
    }
    expect(share(traits, 8)).toBeLessThan(share(warmer(1.1), 8));
    expect(share(warmer(1.1), 8)).toBeLessThan(share(warmer(1.2), 8));
  });

  it('count nothing in a climate that is unlike, whatever its class is called', () => {
    for (const bench of [
      { ...traits, heat: traits.heat * 1.6 },
      { ...traits, heat: traits.heat / 1.6 },
      { ...traits, deficitKpa: traits.deficitKpa + 2 },
    ]) {
      const match = at(bench, trial());
      expect(match.trials).toEqual([]);
      expect(match.level).toBe(match.modeled);
    }
  });

  it('that name no climate lean a little where the class is the same, and not at all elsewhere', () => {
    const nameless = here(trial({ place: null, ripened: 'none' }));
    expect(mainOf(nameless).share).toBeLessThan(model.share);
    expect(mainOf(nameless).share).toBeGreaterThan(mainOf(here(trial({ ripened: 'none' }))).share);
    const elsewhere = here(trial({ place: null, class: { ...place.class, winter: 'frost-free' } }));
    expect(elsewhere.trials).toEqual([]);
  });

  it('are led by those that count most, the newer of two alike', () => {
    const match = here(
      trial({ where: 'short', from: 2021 }),
      trial({ where: 'older', from: 2000, to: 2007 }),
      trial({ where: 'newer' }),
    );
    expect(match.trials.map(({ where }) => where)).toEqual(['newer', 'older', 'short']);
  });

  it('of stored trees speak for pots only', () => {
    const stored = here(trial({ winter: 'stored', ripened: 'none' }));
    expect(mainOf(stored).share).toBe(model.share);
    expect(mainOf(stored).headStart.share).toBeLessThan(model.headStart.share);
    expect(stored.winter.established.care).toBe(here().winter.established.care);
  });

  it('move what the winter asks for by one step at most, and never for a tree that was unhurt where nothing is asked', () => {
    const care = (...trials: Trial[]) => winterCares.indexOf(here(...trials).winter.established.care);
    const own = care();
    for (const winter of ['unhurt', 'died-back', 'killed'] as const) {
      expect(Math.abs(care(trial({ winter })) - own)).toBeLessThanOrEqual(1);
    }
    expect(care(trial({ winter: 'killed' }))).toBeGreaterThanOrEqual(care(trial({ winter: 'unhurt' })));
    expect(care(trial({ winter: 'killed', from: 2021 }))).toBe(own);
  });

  it('say nothing of a crop they did not watch, nor of one that sets no fruit here', () => {
    const breba = at(traits, trial({ crop: 'breba', ripened: 'none' }));
    expect(mainOf(breba).share).toBe(model.share);
    const smyrna = cultivar({ pollination: 'wasp-all', trials: [trial()] });
    const match = matchPlace(place, smyrna, fig, { ...context, trialClimates: { bench: traits } });
    expect(mainOf(match).blocked).toBe('needs-wasp');
    expect(match.level).toBe('not-here');
  });
});

describe('the words of a verdict', () => {
  const names = ['johnson', 'davis', 'bonn'] as const;
  const trials = fc.array(
    fc.record({
      where: fc.constant('a bench'),
      place: fc.constantFrom('near', 'far', null),
      class: fc.constantFrom(...names.map(name => placeNamed(name).class)),
      crop: fc.constantFrom('main' as const, 'breba' as const),
      from: fc.integer({ min: 2000, max: 2015 }),
      to: fc.integer({ min: 2015, max: 2025 }),
      winter: fc.constantFrom('unhurt' as const, 'died-back' as const, 'killed' as const, 'stored' as const),
      ripened: fc.constantFrom('all' as const, 'most' as const, 'some' as const, 'none' as const),
      note: fc.constant(null),
    }),
    { maxLength: 4 },
  );
  const grown = fc.record({
    trials,
    ripening: fc.constantFrom('early' as const, 'mid' as const, 'late' as const),
    crops: fc.constantFrom<Crop[][]>(['main'], ['breba', 'main'], ['breba']),
    pollination: fc.constantFrom('unaided' as const, 'partner' as const, 'wasp-main' as const),
    hardinessOffsetC: fc.constantFrom(-3, 0, 3),
  });

  it('never contradict its figures, whatever trials say', () => {
    fc.assert(
      fc.property(
        grown,
        fc.constantFrom(...names),
        fc.double({ min: 0.8, max: 1.3, noNaN: true }),
        (over, name, by) => {
          const place = placeNamed(name);
          const trialClimates = {
            near: { ...place.traits, heat: place.traits.heat * by },
            far: placeNamed('bonn').traits,
          };
          const match = matchPlace(place, cultivar(over), fig, { ...context, trialClimates });
          const open = match.ripening.filter(({ blocked }) => blocked === null);
          const outdoors = Math.max(0, ...open.map(({ share }) => share));
          const best = Math.max(outdoors, ...open.map(({ headStart }) => headStart.share));
          const { care } = match.winter.established;
          for (const { share, word, dates, headStart } of match.ripening) {
            expect(word).toBe(ripeningWord(share));
            expect(headStart.word).toBe(ripeningWord(headStart.share));
            expect(headStart.share).toBeGreaterThanOrEqual(share);
            if (share < 0.1)
              expect(match.ripening.length > 1 || dates === null || open.length === 0).toBe(true);
          }
          const fits: Record<Level, boolean> = {
            'at-home':
              outdoors >= 0.8 && ['nothing', 'mulch'].includes(care) && match.wet.level !== 'heavy-loss',
            'with-care': outdoors >= 0.5 && ['nothing', 'mulch', 'wrap'].includes(care),
            'in-a-pot': best >= 0.5,
            'a-gamble': best >= 0.2,
            'not-here': best < 0.2,
          };
          expect(fits[match.level], `${match.level} at ${name}`).toBe(true);
          // What is said in words of years is said of the figures shown.
          const told = match.because.find(({ text }) => text.startsWith('Counting these trials'));
          if (told) expect(open.some(({ share }) => told.text.includes(yearsOfTen(share)))).toBe(true);
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe('rain at ripening', () => {
  const window = (wetness: 0 | 1 | 2) => ({ fromDoy: 250, rainMm: 50, deficitKpa: 0.9, wetness });
  const tender = { ...fruit, rain: 'poor', splits: 'high', eye: 'open' } as const;
  const tough = { ...fruit, rain: 'good', splits: 'low', eye: 'closed' } as const;

  it('spoils a tender fruit sooner than a tough one, and none in dry weather', () => {
    const level = (wetness: 0 | 1 | 2, of: typeof fruit) => wetVerdict(window(wetness), of).level;
    expect(([0, 1, 2] as const).map(wetness => level(wetness, tender))).toEqual([
      'sound',
      'heavy-loss',
      'heavy-loss',
    ]);
    expect(([0, 1, 2] as const).map(wetness => level(wetness, fruit))).toEqual([
      'sound',
      'some-loss',
      'heavy-loss',
    ]);
    expect(([0, 1, 2] as const).map(wetness => level(wetness, tough))).toEqual([
      'sound',
      'sound',
      'some-loss',
    ]);
  });
});

describe('rain by species', () => {
  const soaked = { fromDoy: 250, rainMm: 150, deficitKpa: 0.4, wetness: 2 as const };
  const tender = { ...fruit, rain: 'poor', splits: 'high', eye: 'none' } as const;
  const outcome = (id: string) => wetVerdict(soaked, tender, realSpecies(id).rainAtRipening);

  it('takes most of a fig, a jujube or a pomegranate that splits, and never most of a persimmon or mulberry', () => {
    // Common practice, no source: firm persimmons hang through rain; mulberries ripen over weeks.
    expect(Object.fromEntries(speciesIds.map(id => [id, outcome(id).level]))).toEqual({
      'american-persimmon': 'some-loss',
      'asian-persimmon': 'some-loss',
      fig: 'heavy-loss',
      jujube: 'heavy-loss',
      mulberry: 'some-loss',
      pomegranate: 'heavy-loss',
    });
  });

  it('speaks of an eye, of souring and of a roof over the tree to nobody but fig growers', () => {
    for (const id of speciesIds) {
      const words = outcome(id)
        .because.map(({ text }) => text)
        .join(' ');
      expect(/\beye\b|\bfigs\b/.test(words), id).toBe(id === 'fig');
    }
  });

  it('counts splitting only where that is how rain spoils the fruit', () => {
    const splitting = { ...fruit, rain: 'fair', splits: 'high', eye: 'none' } as const;
    const mulberry = realSpecies('mulberry').rainAtRipening!;
    const words = wetVerdict(soaked, splitting, mulberry).because.map(({ text }) => text);
    expect(words.join(' ')).not.toMatch(/splits/);
  });

  it('judges with care, in words for any fruit, where the record says nothing of rain', () => {
    const { level, because } = wetVerdict(soaked, tender);
    expect(level).toBe('heavy-loss');
    expect(because.at(-1)).toMatchObject({ standing: 'ours' });
  });

  it('says rain in inches first and the air in words', () => {
    expect(outcome('fig').because[0]!.text).toMatch(
      /about 6 in \(150 mm\) of rain falls, and the air is damp/,
    );
  });
});

describe('what the species says of itself', () => {
  const words = (match: { because: readonly { text: string }[] }) =>
    match.because.map(({ text }) => text).join(' ');

  it('names the chromosome races of American persimmon, and the one to look for', () => {
    const { pollination } = realSpecies('american-persimmon');
    const female = cultivar({ pollination: 'partner', chromosomes: 90 });
    const said = words(matchPlace(placeNamed('davis'), female, { ...fig, pollination }, context));
    // Kentucky State University, HortScience, 2017: tetraploids have 60 chromosomes, hexaploids 90.
    expect(said).toMatch(/60 in the southern Appalachians and 90/);
    expect(said).toMatch(/It has 90 chromosomes/);
    const alone = words(matchPlace(placeNamed('davis'), cultivar(), { ...fig, pollination }, context));
    expect(alone).not.toMatch(/chromosome/);
  });

  it('warns of nematodes where winters are mild and of rust where summers are humid, and nowhere else', () => {
    const { troubles } = realSpecies('fig');
    const at = (winter: WinterClass, air: AirClass) => {
      const place = placeNamed('davis');
      const there = { ...place, class: { ...place.class, winter, air } };
      return words(matchPlace(there, cultivar(), { ...fig, troubles }, context));
    };
    // Texas A&M AgriLife EHT-019 and University of Georgia C945 for nematodes; LSU AgCenter 2024 for rust.
    expect(at('mild', 'dry')).toMatch(/nematodes/);
    expect(at('mild', 'dry')).not.toMatch(/rust/);
    expect(at('cold', 'humid')).toMatch(/rust/);
    expect(at('cold', 'humid')).not.toMatch(/nematodes/);
    expect(at('cool', 'fair')).not.toMatch(/rust|nematodes/);
  });
});

describe('which form suits (common practice, no source)', () => {
  const forms = (name: Parameters<typeof placeNamed>[0], asOf: string) =>
    matchPlace(placeNamed(name), cultivar(), fig, { ...context, asOf: day(asOf) }).forms;

  it('late in a short season a tree needs no leaves', () => {
    for (const asOf of ['2026-10-05', '2026-12-01', '2027-01-20']) {
      const [best, ...others] = forms('johnson', asOf);
      expect(best!.form).toBe('dormant-pot');
      expect(best!.because[0]!.standing).toBe('practice');
      expect(others.find(({ form }) => form === 'leafed-pot')!.fit).toBe('poor');
    }
  });

  it('in a long season leaves are preferred, and a sleeping tree wakes within one to two weeks', () => {
    for (const asOf of ['2026-06-10', '2026-10-05']) {
      const advice = forms('davis', asOf);
      expect(advice[0]).toMatchObject({ form: 'leafed-pot', fit: 'best' });
      const dormant = advice.find(({ form }) => form === 'dormant-pot')!;
      expect(dormant.because[0]!.text).toContain('one to two weeks');
    }
  });

  it('bare-root trees are for the planting weeks, or keep until them', () => {
    const bareRoot = (asOf: string) => forms('johnson', asOf).find(({ form }) => form === 'bare-root')!;
    expect(bareRoot('2027-02-20').fit).toBe('best');
    expect(bareRoot('2026-12-28').fit).toBe('fine');
    expect(bareRoot('2026-11-10').fit).toBe('poor');
    expect(bareRoot('2027-06-10').fit).toBe('poor');
  });

  it('walks through the stages of a year in order', () => {
    const { freeze, lat } = placeNamed('johnson');
    const seen = Array.from(
      { length: 365 },
      (_, i) => buyingSeason({ freeze, lat }, addDays(day('2026-07-01'), i)).stage,
    );
    const order = seen.filter((stage, i) => stage !== seen[i - 1]);
    expect(order).toEqual(['growing', 'late', 'winter', 'planting', 'spring', 'growing']);
  });
});
