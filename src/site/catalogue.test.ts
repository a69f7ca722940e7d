import { describe, expect, it } from 'vitest';
import { type World, worldRecords } from '../../tests/world.ts';
import { assemble, type Catalogue } from '../core/catalogue.ts';
import type { FreezeOdds } from '../core/climate/freezes.ts';
import type { ClimateSummary } from '../core/climate/summary.ts';
import { type Day, day } from '../core/days.ts';
import { cultivarFacts, cultivarList, cultivarSummary } from './pages/cultivars/cultivar.ts';
import { comingNext, freezeSentence, readyByForm, stockSentence } from './pages/home/home.ts';
import { gradeWhy, lotFacts, readinessWhy, signFacts } from './pages/lots/lot.ts';
import { formLists, lotSize, offered, otherLots, sold, soldList, stockList } from './pages/stock/stock.ts';
import { photoFiles } from './parts/photoFiles.ts';

/** Late August: full leaf, strong roots, outdoors for a month; nothing sleeps yet. */
const summer = day('2026-08-29');
const grown = {
  left: 12,
  heightCm: 80,
  caliperMm: 9,
  roots: 'full',
  leaves: 'full',
  wood: 'green',
  health: 'sound',
  where: 'outdoors',
} as const;

/** The yard with the freezes given for its home; dates made up for the test. */
function withFreeze(answer: FreezeOdds): Catalogue {
  const freeze = { '32F': { answer, standing: 'published', source: 'made up for the test' } };
  return { ...two, climates: new Map([[two.home.id, { freeze } as unknown as ClimateSummary]]) };
}

function yardOf(world: World, asOf: Day = summer): Catalogue {
  return assemble(worldRecords(world), asOf, new Map());
}

const two = yardOf({
  cultivars: {
    'test-fig': {},
    'amber-fig': { name: 'Amber Fig', photos: [{ file: 'amber.jpg', alt: 'Figs' }] },
  },
  lots: [{ lot: 'a-1' }, { lot: 'b-2', cultivar: 'amber-fig' }, { lot: 'b-10', cultivar: 'amber-fig' }],
  walks: {
    '2026-07-25': [
      { lot: 'a-1', where: 'outdoors' },
      { lot: 'b-2', where: 'outdoors' },
    ],
    '2026-08-28': [
      { lot: 'a-1', ...grown },
      { lot: 'b-2', ...grown, heightCm: 90 },
      { lot: 'b-10', left: 0 },
    ],
  },
});

describe('the stock list', () => {
  it('orders by species, cultivar and lot, and keeps sold lots apart', () => {
    expect(offered(two).map(({ lot }) => lot.id)).toEqual(['b-2', 'a-1']);
    expect(sold(two).map(({ lot }) => lot.id)).toEqual(['b-10']);
    expect(soldList(two).pages[0]?.groups[0]?.rows).toEqual([
      { lot: 'b-10', path: '/lots/b-10/', name: 'Amber Fig' },
    ]);
  });

  it('carries what a buyer compares in each row', () => {
    const row = stockList(two).pages[0]?.groups[0]?.rows[0];
    expect(row).toMatchObject({
      name: 'Amber Fig',
      flavor: 'Honey',
      ripens: 'mid-season',
      size: '#1 pot, 35 in (90 cm)',
      left: 12,
    });
    expect(row?.lines.map(({ formName }) => formName)).toEqual([
      'Leafed in a pot',
      'Dormant in a pot',
      'Bare-root',
    ]);
    for (const { price, words } of row?.lines ?? []) {
      expect(price).toMatch(/^\$\d+$/);
      expect(words).not.toBe('');
    }
  });

  it('shows each lot in the list of each of its forms, ready ones first', () => {
    const lists = formLists(two);
    for (const list of Object.values(lists)) {
      expect(list.total).toBe(2);
      expect(list.pages[0]?.groups.every(({ rows }) => rows.every(({ lines }) => lines.length === 1))).toBe(
        true,
      );
    }
    expect(lists['leafed-pot'].contents.map(({ heading }) => heading)).toEqual(['Ready']);
    expect(lists['dormant-pot'].contents.map(({ heading }) => heading)).toEqual(['Coming']);
  });

  it('leads from a sold lot to the others of the cultivar', () => {
    const gone = two.lots.find(({ lot }) => lot.id === 'b-10')!;
    expect(otherLots(two, gone).map(({ lot }) => lot)).toEqual(['b-2']);
    expect(lotSize(gone)).toMatch(/Sold\.$/);
  });

  it('is one empty page when every lot is sold', () => {
    const none = yardOf({ walks: { '2026-08-28': [{ left: 0 }] } });
    expect(stockList(none)).toMatchObject({ total: 0, contents: [] });
    expect(stockSentence(none)).toBe('Nothing is on the list today.');
    expect(readyByForm(none).map(({ ready, next }) => [ready, next])).toEqual([
      [0, null],
      [0, null],
      [0, null],
    ]);
  });
});

describe("a lot's page", () => {
  const entry = two.lots.find(({ lot }) => lot.id === 'a-1')!;

  it('states what was measured and when', () => {
    const facts = Object.fromEntries(lotFacts(entry).map(({ label, value }) => [label, value]));
    expect(facts).toMatchObject({
      Height: '31 in (80 cm), measured August 28, 2026',
      Roots: 'Its own',
      Raised: 'Air layer put on June 6, 2026, severed July 11, 2026',
      Left: '12 of 20 raised, counted August 28, 2026',
    });
    expect(facts.Pot).toMatch(/^#1 \(about 3\.\d L\) since July 11, 2026$/);
    expect(signFacts(entry.signs)).toContainEqual({ label: 'Leaves', value: 'Full, August 28, 2026' });
  });

  it('gives every reason behind readiness, size, scarcity and price', () => {
    const told = [...readinessWhy(entry), ...gradeWhy(entry)].flatMap(({ because }) => because);
    const reasons = [
      ...entry.forms.flatMap(({ gates }) => gates.flatMap(({ because }) => because)),
      ...entry.size.because,
      ...entry.scarcity.because,
      ...Object.values(entry.tiers).flatMap(({ because }) => because),
    ];
    expect(reasons.length).toBeGreaterThan(10);
    for (const reason of reasons) expect(told).toContainEqual(reason);
  });

  it('tells a gate that all forms share once', () => {
    const questions = readinessWhy(entry).map(({ question }) => question);
    expect(questions.filter(question => question.startsWith('Has it rooted?'))).toEqual(['Has it rooted?']);
    expect(new Set(questions).size).toBe(questions.length);
  });

  it('keeps to the count, and names no price, once the lot is sold', () => {
    const gone = two.lots.find(({ lot }) => lot.id === 'b-10')!;
    expect(readinessWhy(gone).map(({ question }) => question)).toEqual(['Are any left?']);
    expect(gradeWhy(gone).map(({ question }) => question)).toEqual(['Grade', 'Scarcity']);
  });
});

describe('cultivars', () => {
  it('are listed by name with the best any lot stands today', () => {
    const rows = cultivarList(two).pages[0]?.groups[0]?.rows ?? [];
    expect(rows.map(({ name, stock }) => [name, stock.words])).toEqual([
      ['Amber Fig', 'Ready now'],
      ['Test Fig', 'Ready now'],
    ]);
  });

  it('say how many trees are left, sold lots not counted', () => {
    const amber = two.cultivars.find(({ cultivar }) => cultivar.id === 'amber-fig')!;
    expect(cultivarSummary(amber, two)).toBe('Honey; ripens mid-season. Ready now, 12 trees.');
  });

  it('without lots, synonyms or photograph still have a page', () => {
    const bare = yardOf({ cultivars: { 'test-fig': {}, 'lonely-fig': { name: 'Lonely Fig' } } });
    const lonely = bare.cultivars.find(({ cultivar }) => cultivar.id === 'lonely-fig')!;
    expect(cultivarSummary(lonely, bare)).toBe('Honey; ripens mid-season. None raised yet.');
    const labels = cultivarFacts(lonely).map(({ label }) => label);
    expect(labels).not.toContain('Also called');
    expect(labels).not.toContain('Origin');
  });

  it('say how much hardier than the species in both units', () => {
    const yard = yardOf({ cultivar: { hardiness_offset_c: -2.5 } });
    expect(cultivarFacts(yard.cultivars[0]!)).toContainEqual({
      label: 'Hardiness',
      value: '5 F (2.5 C) hardier than the species',
    });
  });

  it('bring the photographs that are to be published', () => {
    expect(photoFiles(two)).toEqual(['amber.jpg']);
  });
});

describe('the first page', () => {
  it('counts what is ready and names cultivars once', () => {
    expect(stockSentence(two)).toBe('2 lots on the list; 2 of them, in 2 cultivars, ready today.');
    const [leafed] = readyByForm(two);
    expect(leafed?.rows.map(({ name, path }) => [name, path])).toEqual([
      ['Amber Fig', '/lots/b-2/'],
      ['Test Fig', '/lots/a-1/'],
    ]);
  });

  it('names the forms of a lot that open together in one row', () => {
    const coming = comingNext(two);
    expect(coming.length).toBeGreaterThan(0);
    expect(new Set(coming.map(({ lot, words }) => `${lot} ${words}`)).size).toBe(coming.length);
    expect(coming.every(({ words }) => words !== '')).toBe(true);
  });

  it('says when it freezes, and how that is known', () => {
    const answer = {
      first: { p10: '10-02', p50: '10-15', p90: '10-29' },
      last: { p10: '04-01', p50: '04-15', p90: '04-29' },
      none: 0,
    };
    expect(freezeSentence(withFreeze(answer))).toBe(
      'At Asheville the first freeze of fall comes between October 2 and October 29 in eight years in ten, and the last of spring between April 1 and April 29 (published).',
    );
  });

  it('says nothing of freezes where most winters have none, or nothing is known', () => {
    const never = { p10: null, p50: null, p90: null };
    expect(freezeSentence(withFreeze({ first: never, last: never, none: 1 }))).toBeNull();
    expect(freezeSentence(two)).toBeNull();
  });
});

describe('what a lot stands in', () => {
  it('is nothing yet while a layer is on its mother, and bare roots once lifted', () => {
    const yard = yardOf({
      lots: [
        { lot: 'on-mother', severed: undefined, pottings: undefined },
        { lot: 'dug', method: 'division', severed: undefined, pottings: undefined, lifted: '2026-08-01' },
      ],
    });
    const pots = yard.lots.map(entry => [
      entry.lot.id,
      lotFacts(entry).find(({ label }) => label === 'Pot')?.value,
    ]);
    expect(Object.fromEntries(pots)).toEqual({ 'on-mother': 'Not yet potted', dug: 'Bare roots' });
  });
});
