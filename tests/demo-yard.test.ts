/** The demonstration yard in content/: read through the project's own door, whole, honest about its figures, and showing every state. */

import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { assembled, type LoadedContent, loadContent } from '../src/content.ts';
import type { Catalogue } from '../src/core/catalogue.ts';
import { daysBetween } from '../src/core/days.ts';
import type { Figure } from '../src/core/records/common.ts';
import { type Form, forms } from '../src/core/records/common.ts';
import type { Records } from '../src/core/records/records.ts';
import type { Species } from '../src/core/records/species.ts';

const folder = join(import.meta.dirname, '..', 'content');

let content: LoadedContent;
let records: Records;
let catalogue: Catalogue;

beforeAll(async () => {
  content = await loadContent({ dir: folder, asOf: '2026-11-25' });
  expect(content.reading.diagnostics.filter(({ level }) => level !== 'info')).toEqual([]);
  records = content.reading.records!;
  ({ catalogue } = await assembled(content));
});

describe('what is in the yard', () => {
  it('has species, cultivars, lots, batch files and walks enough to show', () => {
    expect(records.species.size).toBeGreaterThanOrEqual(6);
    expect(records.cultivars.size).toBeGreaterThanOrEqual(24);
    expect(records.lots.length).toBeGreaterThanOrEqual(60);
    expect(new Set(records.lots.map(({ file }) => file)).size).toBeGreaterThanOrEqual(5);
    expect(records.walks.length).toBeGreaterThanOrEqual(12);
    expect(daysBetween(records.walks[0]!.day, records.walks.at(-1)!.day)).toBeGreaterThanOrEqual(365);
    expect(records.guides.size).toBeGreaterThanOrEqual(1);
    expect(records.videos.length).toBeGreaterThanOrEqual(1);
  });

  it('holds the day it was made for', async () => {
    expect(records.yard.fixedDay).toBe('2026-11-25');
    expect((await loadContent({ dir: folder })).asOf).toBe(process.env.AS_OF || '2026-11-25');
  });

  it('has figs of every flavor class, and one whose main crop needs the wasp', () => {
    const figs = [...records.cultivars.values()].filter(({ species }) => species === 'fig');
    expect(new Set(figs.map(({ flavor }) => flavor))).toEqual(
      new Set(records.yard.flavorClasses.map(({ id }) => id)),
    );
    expect(new Set(figs.map(({ ripening }) => ripening))).toEqual(
      new Set(['very-early', 'early', 'mid', 'late']),
    );
    expect(figs.filter(({ pollination }) => pollination === 'wasp-main')).not.toEqual([]);
  });

  it('describes every cultivar in 60 to 160 words of plain text', () => {
    for (const { id, body } of records.cultivars.values()) {
      const words = body.trim().split(/\s+/).length;
      expect(words, id).toBeGreaterThanOrEqual(60);
      expect(words, id).toBeLessThanOrEqual(160);
      expect(body, id).not.toMatch(/<[a-z]|^:{2,}/im);
    }
  });

  it('says in words that its pictures are drawings, keeps them light, and shows each', () => {
    const shown = [
      ...[...records.cultivars.values()].flatMap(({ photos }) => photos),
      ...records.lots.flatMap(({ photo }) => (photo ? [photo] : [])),
    ];
    for (const { alt } of shown) expect(alt).toMatch(/^Drawing of /);
    const files = readdirSync(join(folder, 'photos'));
    expect(new Set(shown.map(({ file }) => file))).toEqual(new Set(files));
    for (const file of files) expect(statSync(join(folder, 'photos', file)).size, file).toBeLessThan(150_000);
  });
});

describe('the states of its lots', () => {
  const answers = () => catalogue.lots.flatMap(({ forms: answered }) => answered);
  const states = ['blocked', 'look', 'opens'];

  it('shows every state of a gate and of a form', () => {
    expect([...new Set(answers().flatMap(({ gates }) => gates.map(({ state }) => state)))].sort()).toEqual([
      ...states,
      'passed',
    ]);
    expect([...new Set(answers().map(({ state }) => state))].sort()).toEqual([...states, 'ready']);
  });

  it.each(forms)('has lots that are ready as %s, and lots that are not', (form: Form) => {
    const found = answers().filter(answer => answer.form === form);
    expect(found.filter(({ state }) => state === 'ready').length).toBeGreaterThanOrEqual(3);
    expect(found.filter(({ state }) => state === 'opens').length).toBeGreaterThanOrEqual(3);
    expect(found.filter(({ state }) => state === 'blocked').length).toBeGreaterThanOrEqual(3);
  });

  it('sells leafed trees only from under cover once the October freeze has passed', () => {
    const leafed = catalogue.lots.filter(({ forms: answered }) =>
      answered.some(({ form, state }) => form === 'leafed-pot' && state === 'ready'),
    );
    expect(new Set(leafed.map(({ signs }) => signs.where?.value))).toEqual(new Set(['tunnel']));
  });

  it('shows every scarcity class, sold-out lots, a hold and a price of its own', () => {
    expect(new Set(catalogue.lots.map(({ scarcity }) => scarcity.answer))).toEqual(new Set([0, 1, 2, 3, 4]));
    expect(catalogue.lots.filter(({ soldOut }) => soldOut).length).toBeGreaterThanOrEqual(3);
    expect(records.lots.filter(({ hold }) => hold).length).toBeGreaterThanOrEqual(2);
    expect(records.lots.filter(({ price }) => price).length).toBeGreaterThanOrEqual(2);
  });

  it('accounts for every plant: raised and returned are left, sold and lost', () => {
    const left = new Map<string, number>(records.lots.map(({ id, raised }) => [id, raised]));
    for (const { day, rows } of records.walks) {
      for (const row of rows) {
        if (row.left === null) continue;
        expect(row.left, `${row.lot} on ${day}`).toBeLessThanOrEqual(
          left.get(row.lot)! + (row.returned ?? 0),
        );
        left.set(row.lot, row.left);
      }
    }
    for (const { lot, stock } of catalogue.lots) {
      expect(stock.raised + stock.returned, lot.id).toBe(stock.left + stock.sold + stock.lost);
      expect(stock.left, lot.id).toBe(left.get(lot.id));
    }
  });
});

describe('its figures', () => {
  function figuresOf(species: Species): [path: string, Figure][] {
    const found: [string, Figure][] = [];
    const visit = (path: string, value: unknown) => {
      if (typeof value !== 'object' || value === null || Array.isArray(value)) return;
      if ('standing' in value && 'low' in value) found.push([path, value as Figure]);
      else
        for (const [key, inner] of Object.entries(value)) visit(path === '' ? key : `${path}.${key}`, inner);
    };
    visit('', species);
    return found;
  }

  /**
   * All figures that a named source has printed, in C or hours; nothing else may be called published.
   * Sources: California Rare Fruit Growers, Fig Fruit Facts 1996 (30 F, 12-15 F), Persimmon Fruit Facts 1996 (26 F, 0 F, less than
   * 100 h), Pomegranate Fruit Facts (12 F); Souza et al. 2009, Rev. Bras. Fruticult. 31(2):314-322 (8 C, 36 C). Bare roots of any species: a
   * week in the packing (USDA Forest Service, hardwood seedling handling), a month heeled in or in a cooler (Virginia Cooperative Extension 1989).
   * Heights: Clemson Cooperative Extension, Persimmons 2021 (35-60 ft); Texas A&M AgriLife Extension, The Japanese Persimmon 2014 (25-30 ft, as
   * wide); University of Florida IFAS Extension, Baker County, Pomegranate (6-12 ft).
   */
  const published: Record<string, readonly [low: number, high: number]> = {
    'fig leafDamageC': [-1.11, -1.11],
    'fig dormantEstablishedC': [-11.11, -9.44],
    'fig heatBaseC': [8, 8],
    'fig heatCapC': [36, 36],
    'asian-persimmon leafDamageC': [-3.33, -3.33],
    'asian-persimmon dormantEstablishedC': [-17.78, -17.78],
    'asian-persimmon chillHours': [0, 100],
    'pomegranate dormantEstablishedC': [-11.11, -11.11],
    'american-persimmon bareRootKeepsDays': [7, 30],
    'asian-persimmon bareRootKeepsDays': [7, 30],
    'fig bareRootKeepsDays': [7, 30],
    'jujube bareRootKeepsDays': [7, 30],
    'mulberry bareRootKeepsDays': [7, 30],
    'pomegranate bareRootKeepsDays': [7, 30],
    'american-persimmon growth.heightCm': [1066.8, 1828.8],
    'asian-persimmon growth.heightCm': [762, 914.4],
    'asian-persimmon growth.spreadCm': [762, 914.4],
    'pomegranate growth.heightCm': [182.88, 365.76],
  };

  it('calls published only what was printed, with the value printed', () => {
    const claimed = [...records.species.values()].flatMap(species =>
      figuresOf(species).flatMap(([path, { standing, low, high }]) =>
        standing === 'published'
          ? [[`${species.id} ${path}`, [Number(low.toFixed(2)), Number(high.toFixed(2))]] as const]
          : [],
      ),
    );
    expect(Object.fromEntries(claimed)).toEqual(published);
  });

  it('says of every other figure whose it is', () => {
    let seen = 0;
    for (const species of records.species.values()) {
      for (const [path, { standing, source }] of figuresOf(species)) {
        seen += 1;
        if (standing === 'ours') expect(source, `${species.id} ${path}`).toMatch(/^Our working figure\b/);
        if (standing === 'practice')
          expect(source, `${species.id} ${path}`).toMatch(/^Common practice\b.*[Nn]o source/);
      }
    }
    expect(seen).toBeGreaterThan(100);
  });

  /** Means of 2003-2021 at Asheville airport, WMO 72315 (DWD open data, CLIMAT reports averaged), June to October, C. */
  const normals = [
    { month: '06', tminC: 16.2, tmaxC: 27.9 },
    { month: '07', tminC: 18, tmaxC: 29 },
    { month: '08', tminC: 17.8, tmaxC: 28.5 },
    { month: '09', tminC: 14.6, tmaxC: 25.6 },
    { month: '10', tminC: 8.1, tmaxC: 20.6 },
  ];

  it('keeps an invented temperature log that could be true of its home', () => {
    const log = records.temperatures;
    expect(log[0]!.day).toBe('2026-06-01');
    expect(log.at(-1)!.day).toBe('2026-11-24');
    for (const { day, tminC, tmaxC } of log) expect(tminC, day).toBeLessThan(tmaxC);
    for (const { month, tminC, tmaxC } of normals) {
      const days = log.filter(({ day }) => day.slice(5, 7) === month);
      const mean = (of: 'tminC' | 'tmaxC') =>
        days.reduce((sum, reading) => sum + reading[of], 0) / days.length;
      expect(Math.abs(mean('tminC') - tminC), `minimum of month ${month}`).toBeLessThan(3);
      expect(Math.abs(mean('tmaxC') - tmaxC), `maximum of month ${month}`).toBeLessThan(3);
    }
  });

  it('tells its reader that it is invented', () => {
    expect(readFileSync(join(folder, 'yard.yaml'), 'utf8')).toMatch(/invented/);
    expect(records.yard.about).toMatch(/made-up/);
    expect(new URL(records.yard.address).hostname).toMatch(/\.example$/);
  });
});
