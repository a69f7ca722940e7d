/** Count sheets and cards for boxes, read back by PDF.js; the code on a card by the `qr` package's reader (uqr has made it). */

import { createCanvas } from '@napi-rs/canvas';
import * as pdfjs from 'pdfjs-dist/legacy/build/pdf.mjs';
import decodeQR from 'qr/decode.js';
import { describe, expect, test } from 'vitest';
import { loadYard } from '../../tests/yards/loadYard.ts';
import { assemble } from '../core/catalogue.ts';
import { readRecords } from '../core/reading/read.ts';
import { readWalk } from '../core/reading/walkFile.ts';
import { healthSigns, leafSigns, rootSigns, wheres, woodSigns } from '../core/records/walk.ts';
import { type BoxCard, boxCards } from './boxCard.ts';
import { countSheet, countTable } from './countSheet.ts';
import { papers } from './sheets.ts';

const { files, photos, asOf } = loadYard('base');
const { records } = readRecords(files, { asOf, photos });
const all = assemble(records!, asOf, new Map());

const opened = (bytes: Buffer) => pdfjs.getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;

async function pagesOf(bytes: Buffer): Promise<string[]> {
  const document = await opened(bytes);
  return Promise.all(
    Array.from({ length: document.numPages }, async (_, index) => {
      const { items } = await (await document.getPage(index + 1)).getTextContent();
      return items
        .map(item => ('str' in item ? item.str : ''))
        .join(' ')
        .replace(/\s+/g, ' ');
    }),
  );
}

describe('the count sheet', () => {
  test('has every lot with what was counted last, and all words that may be written', async () => {
    const [page = '', ...more] = await pagesOf(await countSheet(all, 'letter', { height: 'in', stem: 'mm' }));
    expect(more).toEqual([]);
    for (const { id } of all.lots.map(({ lot }) => lot)) expect(page).toContain(id);
    // Counted on October 17: 12, 12 and 5 (tests/yards/base).
    expect(page.match(/\b12\b/g)?.length).toBeGreaterThanOrEqual(2);
    for (const word of [...rootSigns, ...leafSigns, ...woodSigns, ...healthSigns, ...wheres])
      expect(page).toContain(word);
  });

  test('is turned on its side, and a long list goes on', async () => {
    const lots = Array.from({ length: 60 }, (_, index) => {
      const entry = all.lots[0]!;
      return { ...entry, lot: { ...entry.lot, id: `many-${String(index).padStart(2, '0')}` } };
    });
    const bytes = await countSheet({ ...all, lots }, 'a4', { height: 'cm', stem: 'mm' });
    const pages = await pagesOf(bytes);
    expect(pages.length).toBeGreaterThan(1);
    expect(pages.join(' ').match(/many-\d\d/g)).toHaveLength(60);
    const [, , width, height] = (await (await opened(bytes)).getPage(1)).view;
    const mm = (points: number) => (points * 25.4) / 72;
    expect(mm(width!)).toBeCloseTo(papers.a4.height, 1);
    expect(mm(height!)).toBeCloseTo(papers.a4.width, 1);
  });

  test('as a table is a walk with blank cells', () => {
    const table = countTable(all, { height: 'in', stem: 'mm' });
    const { walk, problems } = readWalk('walks/2026-11-25.csv', table);
    expect(problems).toEqual([]);
    expect(walk?.rows.map(({ lot }) => lot).sort()).toEqual(all.lots.map(({ lot }) => lot.id).sort());
    expect(
      walk?.rows.every(({ left, heightCm, roots }) => left === null && heightCm === null && roots === null),
    ).toBe(true);
  });
});

describe('a card for a box', () => {
  const card: BoxCard = {
    yard: 'Long Meadow',
    contact: 'trees@meadow.example',
    title: 'A fig, bare-root, for Boston, Massachusetts',
    trees: ['Their Own Name (26-cut-01)'],
    tasks: [
      { title: 'Open the box', trigger: 'On the day it comes.' },
      { title: 'Soak the roots', trigger: 'For an hour before planting.' },
    ],
    cautions: [{ title: 'Sap', text: 'The sap burns skin in sunlight. Wear gloves.' }],
    address: 'https://meadow.example/go/x07k/',
  };

  test('says what has come, what to do and what to beware of, and its code leads to the guide', async () => {
    const bytes = await boxCards([card], 'letter', asOf);
    const text = (await pagesOf(bytes)).join(' ');
    for (const words of [
      card.title,
      ...card.trees,
      'Open the box',
      'Soak the roots',
      'Wear gloves',
      card.contact,
    ])
      expect(text).toContain(words);
    const page = await (await opened(bytes)).getPage(1);
    const viewport = page.getViewport({ scale: 3 });
    const canvas = createCanvas(Math.ceil(viewport.width), Math.ceil(viewport.height));
    const context = canvas.getContext('2d');
    await page.render({ canvas: canvas as never, canvasContext: context as never, viewport }).promise;
    const { data } = context.getImageData(0, 0, canvas.width, canvas.height);
    expect(decodeQR({ width: canvas.width, height: canvas.height, data: Uint8Array.from(data) })).toBe(
      card.address,
    );
  });

  test('runs on to its back rather than off the paper, and one card follows another', async () => {
    const cautions = Array.from({ length: 40 }, (_, index) => ({
      title: `Caution ${index}`,
      text: 'Keep it away from children and animals, and wash your hands when you are done with it.',
    }));
    const pages = await pagesOf(await boxCards([{ ...card, cautions }, card], 'letter', asOf));
    expect(pages.length).toBeGreaterThanOrEqual(3);
    expect(pages.join(' ').match(/Caution \d+/g)).toHaveLength(40);
  });
});
