import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { privacyScan, tellingPart } from './privacyScan.ts';

const bytes = (text: string) => Buffer.from(text);

describe('the privacy scan', () => {
  it('finds a private note wherever it stands', () => {
    const { found } = privacyScan(['Paid the neighbour 40 for the wood', 'Do not sell before Easter']);
    expect(found(bytes('<p>Do not sell before Easter</p>'))).toBe('Do not sell before Easter');
    expect(found(bytes('Paid the neighbour 40 for the wood'))).toBe('Paid the neighbour 40 for the wood');
    expect(found(bytes('<p>Do not sell before Christmas</p>'))).toBeNull();
  });

  it('looks for the part that HTML and JSON write as it is', () => {
    expect(tellingPart('"A" & B: kept for Mrs. Pellowin')).toBe('B: kept for Mrs. Pellowin');
    expect(tellingPart('two\n  lines of a note')).toBe('two lines of a note');
    expect(tellingPart('too short')).toBeNull();
  });

  it('finds the names of private figures', () => {
    const { found } = privacyScan([]);
    expect(found(bytes('{"lot":"a","costFloor":12}'))).toBe('"costFloor"');
    expect(found(bytes('private_note: x'))).toBe('private_note');
    expect(found(bytes('short'))).toBeNull();
  });

  it('agrees with a plain search, wherever the note lies in whatever bytes', () => {
    const letters = fc.string({ unit: fc.constantFrom('a', 'b', ' '), minLength: 11, maxLength: 16 });
    const notes = fc.array(
      letters.filter(note => tellingPart(note) !== null),
      { minLength: 1, maxLength: 20 },
    );
    const text = fc.string({ unit: fc.constantFrom('a', 'b', ' ', '<'), maxLength: 400 });
    fc.assert(
      fc.property(notes, text, (written, page) => {
        const parts = written.map(note => tellingPart(note)!);
        const expected = parts.some(part => page.includes(part));
        expect(privacyScan(written).found(bytes(page)) !== null).toBe(expected);
        const planted = `${page}${parts[0]}${page}`;
        expect(privacyScan(written).found(bytes(planted))).not.toBeNull();
      }),
      { seed: 7, numRuns: 500 },
    );
  });
});
