import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { day } from '../days.ts';
import type { AddressRow } from '../records/address.ts';
import { assignCodes, codeSigns, isCode } from './codes.ts';

const since = day('2026-03-01');

function row(address: string, leadsTo: string | null = null): AddressRow {
  return { address, since, leadsTo, line: 2 };
}

const lots = (count: number) => Array.from({ length: count }, (_, at) => `/lots/lot-${at}/`);

describe('the signs of a code', () => {
  test('none of a pair that is taken for one another in print or in handwriting', () => {
    // Crockford, Base 32 (2002, from memory) leaves out I L O U; RFC 4648 section 3.4 warns of 0 O and 1 l I. The other pairs: common
    // practice, no source.
    expect([...codeSigns].filter(sign => '0o1ilu2z5s8b9gqvwmae'.includes(sign))).toEqual([]);
    expect(new Set(codeSigns).size).toBe(16);
    expect(codeSigns).toBe(codeSigns.toLowerCase());
  });
});

describe('codes given', () => {
  test('6,000 pages get different codes of four signs or a few more, whatever their order', () => {
    const pages = lots(6000);
    const codes = assignCodes([], pages);
    expect(new Set(codes.values()).size).toBe(6000);
    expect([...codes.values()].every(isCode)).toBe(true);
    const lengths = [...codes.values()].map(code => code.length);
    // 6,000 drawn from 65,536: about 6000 - 65536 (1 - exp(-6000/65536)) = 266 share their first four signs.
    const longer = lengths.filter(length => length > 4).length;
    expect(longer).toBeGreaterThan(200);
    expect(longer).toBeLessThan(340);
    expect(Math.max(...lengths)).toBeLessThanOrEqual(6);
    expect(assignCodes([], pages.toReversed())).toEqual(codes);
  });

  test('a code in the list stays, and follows its page over renames', () => {
    const first = assignCodes([], ['/lots/a/']).get('/lots/a/')!;
    const rows = [row('/lots/a/'), row(`/go/${first}/`, '/lots/a/'), row('/lots/a/', '/lots/b/')];
    const codes = assignCodes(rows, ['/lots/b/', '/lots/c/']);
    expect(codes.get('/lots/b/')).toBe(first);
    expect(codes.get('/lots/c/')).not.toBe(first);
  });

  test('a code of a page that is gone is never given again', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 0, max: 5000 }), { minLength: 1, maxLength: 60 }),
        fc.integer({ min: 1, max: 60 }),
        (ids, kept) => {
          const before = ids.map(id => `/cultivars/${id}/`);
          const given = assignCodes([], before);
          const rows = [...given].map(([page, code]) => row(`/go/${code}/`, page));
          const gone = before.slice(kept);
          const after = assignCodes(rows, [...before.slice(0, kept), ...lots(40)]);
          for (const page of before.slice(0, kept)) expect(after.get(page)).toBe(given.get(page));
          const old = new Set(gone.map(page => given.get(page)));
          expect([...after.values()].some(code => old.has(code))).toBe(false);
          expect(new Set(after.values()).size).toBe(after.size);
        },
      ),
      { seed: 7, numRuns: 60 },
    );
  });

  test('the page whose code is taken gets a longer one', () => {
    const code = assignCodes([], ['/lots/a/']).get('/lots/a/')!;
    const other = assignCodes([row(`/go/${code}/`, '/lots/z/')], ['/lots/a/']).get('/lots/a/')!;
    expect(other).toHaveLength(5);
    expect(other.startsWith(code)).toBe(true);
  });
});
