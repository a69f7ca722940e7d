import { parseFragment } from 'parse5';
import { expect, test } from 'vitest';
import { loadYard } from '../../tests/yards/loadYard.ts';
import { assemble } from '../core/catalogue.ts';
import { readRecords } from '../core/reading/read.ts';
import { listingHtml, listingOf, listingText, wholeList, withinLimit } from './listing.ts';

const markers = [
  'MARKEDNOTE of the lot',
  'MARKEDNOTE of the walk',
  'MARKEDNOTE of the cultivar',
  'MARKEDBUYER Jo',
];

/** The base yard with a marker in every private field. */
function marked() {
  const { files, photos, asOf } = loadYard('base');
  const encoder = new TextEncoder();
  const decoder = new TextDecoder();
  const edited = files.map(({ path, bytes }) => {
    const text = decoder.decode(bytes);
    if (path === 'lots/2026-layers.yaml')
      return {
        path,
        bytes: encoder.encode(
          text.replace(
            '  raised: 20\n',
            `  raised: 20\n  private_note: ${markers[0]}\n  note: A <b>bold</b> & "quoted" note\n`,
          ),
        ),
      };
    if (path === 'walks/2026-09-05.csv')
      return { path, bytes: encoder.encode(text.replace('strong, even', markers[1]!)) };
    if (path === 'cultivars/bellwether.md')
      return {
        path,
        bytes: encoder.encode(text.replace('requests: 4\n', `requests: 4\nprivate_note: ${markers[2]}\n`)),
      };
    return { path, bytes };
  });
  const sales = `day,lot,plants,to\n2026-11-01,bellwether-2601,1,${markers[3]}\n`;
  const { records, diagnostics, privateNotes } = readRecords(
    [...edited, { path: 'private/sales.csv', bytes: encoder.encode(sales) }],
    { asOf, photos },
  );
  if (records === null) throw new Error(JSON.stringify(diagnostics));
  return { all: assemble(records, asOf, new Map()), privateNotes };
}

const { all, privateNotes } = marked();
const entry = all.lots.find(({ lot }) => lot.id === 'bellwether-2601')!;
const listing = listingOf(all, entry, '/orchard/');

test('every private field is marked, and no marker is in any text', () => {
  for (const marker of markers) expect(privateNotes.map(({ text }) => text)).toContain(marker);
  for (const each of all.lots) {
    const told = listingOf(all, each, '/');
    for (const text of [listingText(told), listingHtml(told)]) expect(text).not.toMatch(/MARKED/);
  }
  expect(wholeList(all, '/')).not.toMatch(/MARKED/);
});

test('the condition is what was seen, with its day', () => {
  const text = listingText(listing);
  // Walk of October 17: 48 cm, roots full, leaves turning. Walk of September 5: stem of 8 mm.
  expect(text).toContain('Height: 19 in (48 cm), measured October 17, 2026.');
  expect(text).toMatch(/Stem: .*\(8 mm\), measured September 5, 2026\./);
  expect(text).toContain('In leaf, seen October 17, 2026.');
  expect(text).toContain('Roots fill the pot, seen October 17, 2026.');
  expect(text).toContain('12 plants are left.');
  expect(text).toMatch(new RegExp(`${all.yard.address}/orchard/go/`));
});

test('a text that is too long loses its notes first, and never its cautions', () => {
  const full = [...listingText(listing)].length;
  for (const limit of [full, full - 1, full - 120, 300]) {
    const fitted = withinLimit(listing, limit);
    if ('over' in fitted) {
      expect(limit).toBe(300);
      continue;
    }
    const text = listingText(fitted.listing);
    expect([...text].length).toBeLessThanOrEqual(limit);
    for (const { caution } of entry.species.hazards) expect(text).toContain(caution.trim());
    expect(text.includes('bold')).toBe(limit === full);
  }
});

test('the HTML says the same words, and nothing in a record becomes markup', () => {
  const tree = parseFragment(listingHtml(listing));
  const texts: string[] = [];
  const names = new Set<string>();
  const walk = (node: (typeof tree)['childNodes'][number]): void => {
    if (node.nodeName === '#text') texts.push((node as { value: string }).value);
    else names.add(node.nodeName);
    if ('childNodes' in node) for (const child of node.childNodes) walk(child);
  };
  for (const node of tree.childNodes) walk(node);
  expect([...names].sort()).toEqual(['a', 'h3', 'h4', 'li', 'ul']);
  const words = (text: string) => text.replace(/:\n/g, '\n').split(/\s+/).filter(Boolean).join(' ');
  expect(words(texts.join('').replaceAll('\u00a0', ' '))).toBe(words(listingText(listing)));
  expect(texts.join('')).toContain('A <b>bold</b> & "quoted" note');
});
