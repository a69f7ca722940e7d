/** Lists of published sites put together with what was committed meanwhile. */

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays, type Day, day } from '../days.ts';
import { ledgerOf, resolve } from './ledger.ts';
import { emptyList, listRows, type NewRow, withRows } from './listText.ts';
import { mergedList, unlistedRows } from './mergedList.ts';

const start = day('2026-03-01');
const row = (address: string, leadsTo: string | null = null, after = 0): NewRow => ({
  address,
  since: addDays(start, after),
  leadsTo,
});
const textOf = (...rows: NewRow[]) =>
  `${emptyList}${rows.map(({ address, since, leadsTo }) => `${address},${since},${leadsTo ?? ''}\n`).join('')}`;

function merged(here: string | null, published: string): string {
  const list = mergedList(here, published);
  if ('problem' in list) throw new Error(list.problem);
  return list.text;
}

describe('what a published list adds', () => {
  const renamed = [row('/a/'), row('/go/3467/', '/a/'), row('/a/', '/b/', 5)];

  test('nothing where nothing is new, also after renames', () => {
    const list = textOf(...renamed, row('/b/', null, 5), row('/b/', '/a/', 9), row('/a/', null, 9));
    expect(merged(list, list)).toBe(list);
  });

  test('what is new, once, in the manner of the list', () => {
    const published = textOf(...renamed, row('/b/', null, 6));
    const list = textOf(...renamed);
    expect(merged(list, published)).toBe(published);
    expect(merged(published, published)).toBe(published);
    expect(merged(list.slice(0, -1).replaceAll('\n', '\r\n'), published)).toBe(
      published.replaceAll('\n', '\r\n'),
    );
  });

  test('a list that is not there is taken as it was published', () => {
    const published = textOf(...renamed);
    expect(merged(null, published)).toBe(published);
  });

  test('the line of an earlier run stays, whatever day the later run wrote', () => {
    const list = textOf(row('/a/', null, 1));
    expect(merged(list, textOf(row('/a/', null, 2), row('/c/', null, 2)))).toBe(
      textOf(row('/a/', null, 1), row('/c/', null, 2)),
    );
  });

  test('a rename committed while the site was built is the later word', () => {
    const list = textOf(row('/a/'), row('/a/', '/b/', 3));
    expect(merged(list, textOf(row('/a/'), row('/a/#x', null, 2)))).toBe(
      textOf(row('/a/'), row('/a/', '/b/', 3), row('/a/#x', null, 3)),
    );
    // The page was published for the first time while its record got another id.
    expect(merged(textOf(row('/c/'), row('/a/', '/b/', 3)), textOf(row('/c/'), row('/a/', null, 2)))).toBe(
      textOf(row('/c/'), row('/a/', '/b/', 3)),
    );
  });

  test('no list that is empty, cut off or something else', () => {
    const whole = textOf(row('/a/'), row('/lots/a/'));
    for (const published of [
      '',
      emptyList,
      '<!doctype html>\n',
      whole.slice(0, -14),
      `${emptyList}a,b,c\n`,
    ]) {
      expect(mergedList(whole, published), published).toHaveProperty('problem');
    }
    expect(mergedList('address;since\n', whole)).toHaveProperty('problem');
  });
});

/** What happens to a list: a page is published or renamed, some days after what happened before. */
interface Step {
  page: number;
  to: number;
  days: number;
  rename: boolean;
}

const steps: fc.Arbitrary<Step[]> = fc.array(
  fc.record({ page: fc.nat(5), to: fc.nat(5), days: fc.nat(2), rename: fc.boolean() }),
  {
    maxLength: 12,
  },
);

function happened(rows: readonly NewRow[], what: readonly Step[]): NewRow[] {
  const list = [...rows];
  let on: Day = list.at(-1)?.since ?? start;
  const holds = (address: string) => list.findLast(each => each.address === address);
  for (const { page, to, days, rename } of what) {
    on = addDays(on, days);
    const [address, target] = [`/p${page}/`, `/p${to}/`];
    const now = holds(address);
    if (!rename && now?.leadsTo !== null) list.push({ address, since: on, leadsTo: null });
    else if (rename && now?.leadsTo === null && page !== to && holds(target) === undefined) {
      list.push({ address, since: on, leadsTo: target }, { address: target, since: on, leadsTo: null });
    }
  }
  return list;
}

test('whatever happened on both sides: all addresses are listed, the word here stands, days go up, and again adds nothing', () => {
  fc.assert(
    fc.property(steps, steps, steps, (before, meanwhile, inBuild) => {
      const base = happened([], before);
      const [here, published] = [happened(base, meanwhile), happened(base, inBuild)];
      const added = unlistedRows(here, published);
      const all = [...here, ...added];
      expect(all.slice(0, here.length)).toEqual(here);
      const addresses = new Set(all.map(({ address }) => address));
      for (const { address } of published) expect(addresses.has(address)).toBe(true);
      const ledger = (rows: readonly NewRow[]) => ledgerOf(rows.map(each => ({ ...each, line: 1 })));
      for (const [address, now] of ledger(here).latest) {
        const words = (rows: readonly NewRow[]) =>
          rows.flatMap(each => (each.address === address ? (each.leadsTo ?? '') : []));
        const own = words(here);
        const wentOnThere = own.every((word, at) => words(published)[at] === word);
        if (!wentOnThere) expect(ledger(all).latest.get(address)!.leadsTo).toBe(now.leadsTo);
        expect(resolve(ledger(all), address)).toBeDefined();
      }
      for (const [index, { since }] of all.entries()) {
        if (index > 0) expect(since >= all[index - 1]!.since).toBe(true);
      }
      expect(unlistedRows(all, published)).toEqual([]);
      const text = textOf(...all);
      expect(withRows(textOf(...here), added)).toBe(text);
      expect(listRows(text)).toEqual(all);
    }),
    { seed: 4180, numRuns: 400 },
  );
});
