import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import type { Catalogue } from '../core/catalogue.ts';
import { lineOfNote, privacyScan, refusePrivate, tellingPart } from './privacyScan.ts';

const bytes = (text: string) => Buffer.from(text);
const notesOf = (texts: readonly string[]) => texts.map(text => ({ text, file: 'lots/2026.yaml' }));

/** The scan looks for nothing in a catalogue but texts, wherever they stand. */
const catalogueOf = (texts: unknown) => texts as Catalogue;

/** Finds the text that is private in a page. */
function scanFor(texts: readonly string[], published: unknown = []) {
  const { found } = privacyScan({ notes: notesOf(texts) }, catalogueOf(published));
  return { found: (page: Buffer) => found(page)?.text ?? null };
}

describe('the privacy scan', () => {
  it('finds a private note wherever it stands', () => {
    const { found } = scanFor(['Paid the neighbor 40 for the wood', 'Do not sell before Easter']);
    expect(found(bytes('<p>Do not sell before Easter</p>'))).toBe('Do not sell before Easter');
    expect(found(bytes('Paid the neighbor 40 for the wood'))).toBe('Paid the neighbor 40 for the wood');
    expect(found(bytes('<p>Do not sell before Christmas</p>'))).toBeNull();
  });

  it('looks for the part that HTML and JSON write as it is', () => {
    expect(tellingPart('"A" & B: kept for Mrs. Pellowin')).toBe('B: kept for Mrs. Pellowin');
    expect(tellingPart('two\n  lines of a note')).toBe('two lines of a note');
    expect(tellingPart('too short')).toBeNull();
  });

  it('finds the names of private figures', () => {
    const { found } = scanFor([]);
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
        expect(scanFor(written).found(bytes(page)) !== null).toBe(expected);
        const planted = `${page}${parts[0]}${page}`;
        expect(scanFor(written).found(bytes(planted))).not.toBeNull();
      }),
      { seed: 7, numRuns: 500 },
    );
  });

  it.each([
    ['few', 0],
    ['many', 40],
  ])('is silent about words that are public anyway, beside %s other notes', (_, others) => {
    const more = Array.from({ length: others }, (_, index) => `kept for customer number ${index}`);
    const published = { lots: new Map([['a', { note: 'Kept  back for\nthe neighbors' }]]) };
    const { found } = scanFor(['Kept back for the neighbors', 'Sold to the cousins', ...more], published);
    expect(found(bytes('<p>Kept back for the neighbors</p>'))).toBeNull();
    expect(found(bytes('<p>Kept back for the neighbors</p><p>Sold to the cousins</p>'))).toBe(
      'Sold to the cousins',
    );
  });

  it('is silent about words of the program', () => {
    // The title of a page, as its template says it.
    expect(
      scanFor(['How do we know?', 'Address of this site']).found(bytes('<h1>Address of this site</h1>')),
    ).not.toBeNull();
    expect(scanFor(['no index of a language']).found(bytes('no index of a language'))).not.toBeNull();
    const said = 'the site was not published';
    expect(scanFor([said]).found(bytes(`<p>${said}</p>`))).toBeNull();
  });
});

describe('a site that shows a private note', () => {
  const content = mkdtempSync(join(tmpdir(), 'leafdrop-private-'));
  afterAll(() => rmSync(content, { recursive: true, force: true }));
  const source = [
    '- id: a',
    '  private_note: nothing of note',
    '- id: b',
    '  private_note: >-',
    '    Paid the neighbor 40',
    '    for the wood',
    '- id: c',
    '  private_note: more',
  ].join('\n');

  it('is refused with the page, the file and line of the note, and what to do', () => {
    mkdirSync(join(content, 'lots'));
    writeFileSync(join(content, 'lots/2026.yaml'), source);
    const secrets = {
      notes: notesOf(['Paid the neighbor 40 for the wood']),
      content,
      shownContent: 'content',
    };
    const scan = privacyScan(secrets, catalogueOf([]));
    const look = () =>
      refusePrivate(scan, secrets, 'lots/b/index.html', bytes('<p>Paid the neighbor 40 for the wood</p>'));
    expect(look).toThrow(
      /^the site was not published: lots\/b\/index\.html would show "Paid the neighbor 40 for the wood", which is private: it stands in private_note, content\/lots\/2026\.yaml:4\. If .+ word the private note differently/,
    );
    expect(() => refusePrivate(scan, secrets, 'index.html', bytes('"costFloor":12'))).toThrow(
      'The fault is in the program',
    );
  });

  it('is refused for a note of a walk too, with its line; a short one may be said by chance', () => {
    const noteOfWalk = (text: string) => ({ text, file: 'private/walks/2026-11-18.csv', line: 7 });
    const secrets = {
      notes: [noteOfWalk('two sold to the neighbor on trust'), noteOfWalk('leafed pots, #1')],
      content,
      shownContent: 'content',
    };
    const scan = privacyScan(secrets, catalogueOf([]));
    expect(() =>
      refusePrivate(scan, secrets, 'index.html', bytes('<p>two sold to the neighbor on trust</p>')),
    ).toThrow(/it stands in the column note of a walk, content\/private\/walks\/2026-11-18\.csv:7\./);
    expect(() => refusePrivate(scan, secrets, 'index.html', bytes('<p>leafed pots, #1</p>'))).not.toThrow();
  });

  it('names the line of the note that has the words', () => {
    expect(lineOfNote(source, 'nothing of note')).toBe(2);
    expect(lineOfNote(source, 'more')).toBe(8);
    expect(lineOfNote(source, 'not there')).toBe(1);
  });
});
