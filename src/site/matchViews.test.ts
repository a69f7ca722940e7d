/** What pages say about cultivars in places, over a test yard with places of three climates. */

import { describe, expect, it } from 'vitest';
import { yardWithPlaces } from '../../tests/outlooks.ts';
import { hills } from '../../tests/world.ts';
import { day } from '../core/days.ts';
import { levels } from '../core/match/answers.ts';
import { ripeningClasses } from '../core/records/common.ts';
import { placeFile } from './data/file.ts';
import { treesFile } from './data/trees.ts';
import { whereFile } from './data/where.ts';
import { climateKinds, kindCultivars, kindPlaces } from './pages/climates/climates.ts';
import { cultivarPlaces, placesSentence } from './pages/cultivars/cultivarPlaces.ts';
import { rankedCultivars } from './pages/places/placeTrees.ts';
import { sendingView, travelView } from './pages/places/sending.ts';
import { alternativeRows } from './parts/alternatives.ts';
import { bookOf, rankedIn, verdictIn } from './parts/verdictBook.ts';
import { verdictOf } from './words/verdict.ts';

const traits = {
  skin: 'violet',
  flesh: 'red',
  shape: 'pear',
  length_mm: 50,
  width_mm: 40,
} as const;

const heat = (value: number) => ({
  value,
  unit: 'degree-days C' as const,
  standing: 'ours' as const,
  source: 'A figure of the test yard.',
});

const trial = {
  where: 'Our bench',
  class: { winter: 'cool', season: 'middle', air: 'humid' },
  from: 2018,
  to: 2024,
  winter: 'unhurt',
  ripened: 'none',
} as const;

/** Every mix of traits that a verdict depends on, some of them tried at home. */
const cultivars = Object.fromEntries(
  ripeningClasses
    .filter(ripening => ripening !== 'very-late')
    .flatMap(ripening =>
      (['unaided', 'wasp-main', 'partner'] as const).flatMap(pollination =>
        (['good', 'poor'] as const).flatMap(rain =>
          [-2, 0, 2].map(offset => {
            const id = `${ripening}-${pollination}-${rain}-${offset + 2}`;
            const tried = offset === 2 && rain === 'poor' ? { trials: [trial] } : {};
            return [
              id,
              {
                name: id,
                ripening,
                pollination,
                hardiness_offset_c: offset,
                fruit: { ...traits, eye: rain === 'good' ? 'closed' : 'open', splits: 'some', rain },
                ...tried,
              },
            ] as const;
          }),
        ),
      ),
    ),
);

const ready = {
  left: 3,
  heightCm: 80,
  caliperMm: 9,
  roots: 'full',
  leaves: 'bare',
  wood: 'brown',
  health: 'sound',
  where: 'outdoors',
} as const;

/** With its zone by the USDA map of 2023 and its rain and dew points: NOAA U.S. Climate Normals 1981-2010; USDA-ARS CLIGEN. */
const home = {
  ...hills,
  winter_zone: { zone: '7b', basis: '2023 USDA Plant Hardiness Zone Map' },
  rain_mm: [88.6, 87.6, 103.9, 91.7, 98, 128, 136.7, 112, 100.8, 72.4, 110.2, 92.7],
  dew_c: [-1, -1.5, 0.9, 6.3, 11.9, 17.2, 18.5, 18, 13.8, 8.6, 0.7, -1.4],
};

const { all, outlooks } = yardWithPlaces(
  {
    home,
    cultivars,
    species: {
      heat: {
        base: { ...heat(8), unit: 'C' },
        cap: { ...heat(36), unit: 'C' },
        budbreak: heat(200),
        ripens_above: { ...heat(12), unit: 'C' },
        need: { main: { 'very-early': heat(1300), early: heat(1500), mid: heat(1950), late: heat(2400) } },
      },
    },
    lots: [
      {
        lot: 'a-1',
        cultivar: 'very-early-unaided-good-2',
        started: '2025-06-06',
        severed: '2025-07-11',
        pottings: [{ date: '2025-07-11', container: '#1' }],
      },
      {
        lot: 'b-1',
        cultivar: 'late-wasp-main-poor-2',
        started: '2025-06-06',
        severed: '2025-07-11',
        pottings: [{ date: '2025-07-11', container: '#1' }],
      },
    ],
    walks: {
      '2025-12-01': [
        { lot: 'a-1', ...ready },
        { lot: 'b-1', ...ready },
      ],
      '2026-02-18': [
        { lot: 'a-1', ...ready },
        { lot: 'b-1', ...ready },
      ],
    },
    yard: {
      sending: {
        weekdays: ['mon'],
        transit_days: 3,
        cut_back_in: 30,
        not_to: [{ region: 'Singapore', why: 'Figs need a permit there.', checked: '2026-01-05' }],
      },
    },
  },
  '2026-02-20',
);
const answersAt = (id: string) => outlooks.get(id)!;
const kindAt = (id: string) => climateKinds(all).find(({ places }) => places.some(place => place.id === id))!;
const ids = all.cultivars.map(({ cultivar }) => cultivar.id);

const ranked = (of: typeof all, answers: ReturnType<typeof answersAt>) =>
  rankedCultivars(of, answers, sendingView(of, outlooks, answers).now);
const rankedPaths = (of: typeof all, answers: ReturnType<typeof answersAt>) =>
  ranked(of, answers).groups.flatMap(({ rows }) => rows.map(({ path }) => path));

describe('cultivars that are no longer raised', () => {
  const gone = 'very-early-unaided-good-0';
  const later = 'very-early-unaided-good-4';
  const lastPlants = 'late-wasp-main-poor-2';
  const retired: Record<string, string> = {
    [gone]: '2026-01-01',
    [later]: '2026-03-01',
    [lastPlants]: '2026-01-01',
  };
  const past = {
    ...all,
    cultivars: all.cultivars.map(entry => {
      const since = retired[entry.cultivar.id];
      return since === undefined ? entry : { ...entry, cultivar: { ...entry.cultivar, retired: day(since) } };
    }),
  };

  it('are recommended nowhere once the last is sold, and are answered on their own page', () => {
    const trees = treesFile(past);
    expect(trees.past).toEqual([gone]);
    expect(trees.cultivars.map(({ id }) => id)).toContain(gone);
    expect(treesFile(all).past).toEqual([]);
    for (const answers of outlooks.values()) {
      const paths = rankedPaths(past, answers);
      expect(paths).not.toContain(`/cultivars/${gone}/`);
      expect(paths).toContain(`/cultivars/${lastPlants}/`);
      expect(rankedPaths(all, answers)).toContain(`/cultivars/${gone}/`);
      expect(placeFile(past, outlooks, answers).cultivars[gone]).toBeTypeOf('number');
      const kinds = kindCultivars(past, outlooks, kindAt(answers.place.id)).map(({ path }) => path);
      expect(kinds).not.toContain(`/cultivars/${gone}/`);
      expect(kinds).toContain(`/cultivars/${later}/`);
    }
    for (const { cultivar } of past.cultivars) {
      const instead = alternativeRows(past, cultivar).map(({ id }) => id);
      expect(instead).not.toContain(gone);
    }
  });
});

describe('the book of a place', () => {
  it('says of every cultivar what its own match says', () => {
    for (const answers of outlooks.values()) {
      const book = bookOf(all, answers);
      for (const { cultivar } of all.cultivars) {
        expect(verdictIn(book, cultivar.id), `${cultivar.id} at ${answers.place.id}`).toEqual(
          verdictOf(answers.match(cultivar)),
        );
      }
      expect(book.kinds.length).toBeLessThanOrEqual(ids.length);
    }
  });

  it('holds each reason once and far fewer than are said', () => {
    const { reasons, kinds } = bookOf(all, answersAt('hills'));
    const said = kinds.reduce((sum, { because, change }) => sum + because.length + change.length, 0);
    expect(new Set(reasons.map(told => told.join('\n'))).size).toBe(reasons.length);
    expect(reasons.length).toBeLessThan(said / 5);
  });

  it('knows nothing of others', () => {
    expect(() => verdictIn(bookOf(all, answersAt('hills')), 'no-such-tree')).toThrow(RangeError);
  });

  it('ranks by level, then by chance, whatever order it is asked in', () => {
    const book = bookOf(all, answersAt('hills'));
    const ranked = rankedIn(book, ids);
    const ranks = ranked.map(id => levels.indexOf(verdictIn(book, id).level));
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
    expect(new Set(ranks).size).toBeGreaterThan(1);
    const levelsOf = (order: string[]) => order.map(id => verdictIn(book, id).level);
    expect(levelsOf(rankedIn(book, [...ids].reverse()))).toEqual(levelsOf(ranked));
  });
});

describe('a place', () => {
  it('shows each by its verdict, best verdict first, and counts the rest', () => {
    const { groups, rest } = ranked(all, answersAt('hills'));
    const rows = groups.flatMap(group => group.rows.map(row => ({ ...row, level: group.level })));
    expect(rows.length + rest.reduce((sum, { count }) => sum + count, 0)).toBe(ids.length);
    const book = bookOf(all, answersAt('hills'));
    for (const { id, level } of rows) expect(verdictIn(book, id).level).toBe(level);
    const ranks = groups.map(({ level }) => levels.indexOf(level));
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
  });

  it('offers the lots that are ready and suit, and no others', () => {
    const rows = ranked(all, answersAt('hills')).groups.flatMap(group => group.rows);
    const readyLots = all.lots.filter(({ forms }) => forms.some(({ state }) => state === 'ready'));
    expect(readyLots.map(({ lot }) => lot.id)).toEqual(['a-1', 'b-1']);
    // The late one needs the wasp to set its only crop.
    expect(rows.flatMap(({ best }) => best?.lot ?? [])).toEqual(['a-1']);
  });
});

describe('a cultivar', () => {
  it('names each place once, by verdict, and the home place first among those with reasons', () => {
    const where = cultivarPlaces(all, outlooks, 'mid-unaided-good-2');
    expect(
      where.groups
        .flatMap(({ places }) => places)
        .map(({ place }) => place.name)
        .sort(),
    ).toEqual(['Asheville', 'Canberra', 'Singapore']);
    // Canberra has a warmer summer than the home place, so it is told of too.
    expect(where.spread.map(({ place }) => place.name)).toEqual(['Asheville', 'Canberra', 'Singapore']);
    expect(where.count).toBe(3);
    // Only one of them is in the United States.
    expect(where.dots).toHaveLength(1);
    expect(placesSentence(where)).toMatch(/ in \d of 3 places/);
  });

  it('has others that can be had in its place, itself never', () => {
    const sold = all.cultivars.find(({ cultivar }) => cultivar.id === 'very-early-unaided-good-2')!;
    expect(alternativeRows(all, sold.cultivar).map(({ id }) => id)).toEqual(['late-wasp-main-poor-2']);
  });
});

describe('kinds of climate', () => {
  it('are those of the places, each place in one', () => {
    const kinds = climateKinds(all);
    expect(kinds.flatMap(kindPlaces)).toHaveLength(all.places.length);
    expect(new Set(kinds.map(({ id }) => id)).size).toBe(kinds.length);
    // Asheville: zone 7b on the USDA map of 2023, about 95 mm of rain a month from August to October.
    expect(kindAt('hills').id).toBe('cool-moderate-humid');
    expect(kinds.at(-1)!.places.map(({ id }) => id)).toEqual(['singapore']);
  });

  it('tell the level of the middle place, and the range where places differ', () => {
    const kind = kindAt('hills');
    const book = bookOf(all, answersAt('hills'));
    for (const row of kindCultivars(all, outlooks, kind)) {
      const id = row.path.split('/')[2]!;
      expect(row.level).toBe(verdictIn(book, id).level);
      expect(row.range).toBeNull();
    }
    const both = { ...kind, places: all.places };
    const ranges = kindCultivars(all, outlooks, both).map(({ range }) => range);
    expect(ranges.some(range => /^from .+ to .+$/.test(range ?? ''))).toBe(true);
  });
});

describe('sending', () => {
  it('says of every form how it goes now, when it goes and why', () => {
    const { now, table } = sendingView(all, outlooks, answersAt('hills'));
    if (!now.route) throw new Error('no route to the home place');
    // Late February at Asheville: nights below freezing at both ends.
    const leafed = now.forms.find(({ form }) => form === 'leafed-pot')!;
    expect(leafed.state).toBe('closed');
    expect(leafed.words).toMatch(/^Not now; (?:by forecast )?from (?:March|April|May) \d+$/);
    expect(leafed.because.map(([text]) => text).join(' ')).toMatch(/would meet a night of/);
    const dormant = now.forms.find(({ form }) => form === 'dormant-pot')!;
    expect(dormant.state).toBe('by-forecast');
    expect(dormant.words).toMatch(/we watch the forecast$/);
    expect(dormant.more).toMatch(/usual wait/);
    expect(table.map(({ form }) => form)).toEqual(['leafed-pot', 'dormant-pot', 'bare-root']);
    expect(table[0]!.runs.some(({ state }) => state === 'open')).toBe(true);
  });

  it('names a place we do not send to, with the reason, and no weeks', () => {
    const { now, table } = sendingView(all, outlooks, answersAt('singapore'));
    expect(table).toEqual([]);
    expect(now.route ? '' : now.because[0]![0]).toContain('Figs need a permit there.');
  });

  it('never calls a lot ready for a place without saying how it is sent there', () => {
    for (const place of ['hills', 'canberra', 'singapore']) {
      const answers = answersAt(place);
      const { now } = sendingView(all, outlooks, answers);
      for (const { best } of ranked(all, answers).groups.flatMap(({ rows }) => rows)) {
        // Where the yard does not send, neither a price nor a way to send it is told.
        if (best !== null) expect(best.words).toMatch(now.route ? /, (?:not )?sent/ : /^[^,]+$/);
      }
    }
  });
});

describe('files for the browser', () => {
  it('hold for each place what its book says', () => {
    const answers = answersAt('hills');
    const file = placeFile(all, outlooks, answers);
    const book = bookOf(all, answers);
    for (const id of ids) {
      const kind = file.kinds[file.cultivars[id]!]!;
      const { level, words, ripens, forms, because } = verdictIn(book, id);
      expect(kind).toMatchObject({ level, words, ripens, forms });
      expect(kind.because.map(index => file.reasons[index])).toEqual(because);
    }
    expect(file.travel).toEqual(travelView(all, outlooks, answers));
    // Survives the way: no maps, no typed arrays.
    expect(JSON.parse(JSON.stringify(file))).toEqual(file);
  });

  it('hold places with their heights, and cultivars without what nobody asked for', () => {
    expect(whereFile(all, {}).places.map(({ id, heightM }) => [id, heightM])).toEqual([
      ['canberra', 578],
      ['hills', 656],
      ['singapore', 5],
    ]);
    const { cultivars: trees, species } = treesFile(all);
    expect(trees).toHaveLength(ids.length);
    expect(Object.keys(trees[0]!)).not.toContain('requests');
    expect(Object.keys(trees[0]!)).not.toContain('body');
    expect(species.map(({ id }) => id)).toEqual(['fig']);
  });

  it('judge a cultivar by its own dates of ripe fruit', () => {
    const [first, ...others] = all.cultivars;
    const seen = { place: 'hills', crop: 'main' as const, from: '09-01', to: '09-09', note: null };
    const cultivar = { ...first!.cultivar, ripeSeen: [seen] };
    const { cultivars: trees, species } = treesFile({
      ...all,
      cultivars: [{ ...first!, cultivar }, ...others],
    });
    expect(species.map(({ id }) => id)).toEqual(['fig', `fig/${cultivar.id}`]);
    expect(trees.map(tree => tree.species)).toEqual([`fig/${cultivar.id}`, ...others.map(() => 'fig')]);
    const [usual, own] = species.map(({ heatNeed }) => heatNeed.main[cultivar.ripening]);
    expect(own!.standing).toBe('seen');
    expect(own!.value).not.toBe(usual!.value);
  });
});
