/**
 * Printed paper, read back by other programs: text and its places by PDF.js, QR codes from a rendering by the `qr` package's reader (uqr has made them).
 */

import { createCanvas } from '@napi-rs/canvas';
import * as pdfjs from 'pdfjs-dist/legacy/build/pdf.mjs';
import decodeQR from 'qr/decode.js';
import { describe, expect, test } from 'vitest';
import type { LabelWords } from './content.ts';
import { NoGlyph } from './fonts.ts';
import { PaperWriter } from './paper.ts';
import { labelSheets } from './potLabels.ts';
import { papers, placeOfLabel, sheetFault, sheetNamed, sheets } from './sheets.ts';
import { testSheet } from './testSheet.ts';

const day = '2026-11-25';
const mm = (points: number) => (points * 25.4) / 72;

interface Word {
  text: string;
  /** mm from the upper left corner to the baseline. */
  x: number;
  y: number;
  width: number;
}

async function opened(bytes: Buffer) {
  return pdfjs.getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
}

async function wordsOf(bytes: Buffer, number = 1): Promise<Word[]> {
  const page = await (await opened(bytes)).getPage(number);
  const height = page.view[3]!;
  const { items } = await page.getTextContent();
  return items.flatMap(item =>
    'str' in item && item.str.trim() !== ''
      ? [
          {
            text: item.str,
            x: mm(item.transform[4]),
            y: mm(height - item.transform[5]),
            width: mm(item.width),
          },
        ]
      : [],
  );
}

/** A page as pixels, at so many to the mm. */
async function rendered(bytes: Buffer, perMm: number) {
  const page = await (await opened(bytes)).getPage(1);
  const viewport = page.getViewport({ scale: (perMm * 25.4) / 72 });
  const canvas = createCanvas(Math.ceil(viewport.width), Math.ceil(viewport.height));
  const context = canvas.getContext('2d');
  await page.render({ canvas: canvas as never, canvasContext: context as never, viewport }).promise;
  return context;
}

const label = (name: string, index = 0): LabelWords => ({
  lot: `26-cut-${String(index).padStart(2, '0')}`,
  name,
  botanical: 'Ficus carica, on its own roots',
  standing: 'In a #1 pot since July 11, 2026',
  address: `https://trees.example/go/x${index}7k/`,
});

describe('sheets', () => {
  test('fit on their paper, and no two labels touch', () => {
    for (const sheet of sheets) {
      expect(sheetFault(sheet), sheet.name).toBeNull();
      const count = sheet.columns * sheet.rows;
      const last = placeOfLabel(sheet, count - 1);
      expect(last.page).toBe(0);
      expect(last.x + sheet.width).toBeLessThanOrEqual(papers[sheet.paper].width + 0.01);
      expect(last.y + sheet.height).toBeLessThanOrEqual(papers[sheet.paper].height + 0.01);
      expect(placeOfLabel(sheet, count)).toEqual({ page: 1, x: sheet.left, y: sheet.top });
    }
  });

  test('may be described by their measures; what cannot be is told', () => {
    expect(sheetNamed('letter 3x10 66.7x25.4 at 4.8,12.7 every 69.9,25.4')).toMatchObject({
      columns: 3,
      across: 69.9,
      down: 25.4,
    });
    expect(sheetNamed('a4 2x7 99.1x38.1 at 4.65,15.15')).toMatchObject({ across: 99.1, down: 38.1 });
    expect(sheetNamed('a4 4x7 99.1x38.1 at 4.65,15.15')).toMatch(/beyond the 210 mm/);
    expect(sheetNamed('a4 2x7 99.1x38.1 at 4.65,15.15 every 80,38.1')).toBe('the labels overlap.');
    expect(sheetNamed('avocado')).toMatch(/no sheet/);
  });
});

describe('text', () => {
  test('stands within 0.2 mm of where it is meant to', async () => {
    const paper = new PaperWriter('a4', { title: 'x', day });
    paper.page();
    const places = [
      [0, 5],
      [12.3, 45.6],
      [100, 150],
      [180.5, 290],
    ] as const;
    for (const [x, y] of places) paper.text('Hx', { x, y, width: 20, size: 12 });
    paper.text('right', { x: 50, y: 100, width: 80, size: 10, align: 'right' });
    const words = await wordsOf(await paper.finish());
    for (const [index, [x, y]] of places.entries()) {
      expect(Math.abs(words[index]!.x - x)).toBeLessThan(0.2);
      expect(Math.abs(words[index]!.y - y)).toBeLessThan(0.2);
    }
    const right = words.at(-1)!;
    expect(Math.abs(right.x + right.width - 130)).toBeLessThan(0.2);
  });

  test('of every label lies inside its label, however long the name', async () => {
    const names = [
      'Wrenfoot',
      "Miss Aldermoor's Second-Best Window Fig of the Long Wall",
      'Bergère d’Orsenne',
      'Ő',
    ];
    for (const sheet of sheets) {
      const count = Math.min(sheet.columns * sheet.rows, 8);
      const labels = Array.from({ length: count }, (_, index) => label(names[index % names.length]!, index));
      const hole = sheet.name.includes('tag');
      const words = await wordsOf(await labelSheets(labels, sheet, { title: 'x', day, from: 0, hole }));
      for (let index = 0; index < count; index += 1) {
        const { x, y } = placeOfLabel(sheet, index);
        const inside = words.filter(
          each => each.x >= x && each.x < x + sheet.width && each.y > y && each.y < y + sheet.height,
        );
        expect(inside.map(({ text }) => text).join(' '), sheet.name).toContain(labels[index]!.lot);
        for (const each of inside) expect(each.x + each.width).toBeLessThanOrEqual(x + sheet.width - 1);
      }
      expect(words.filter(({ text }) => text.startsWith('26-cut'))).toHaveLength(count);
    }
  });

  test('with accents, in Greek, Cyrillic, Hebrew and Arabic comes out as it went in', async () => {
    const names = ['Éclair d’août', 'Łódź ě ő', 'Σύκο', 'Инжир', 'Ớt đỏ'];
    for (const name of names) {
      const words = await wordsOf(
        await labelSheets([label(name)], sheets[0]!, { title: 'x', day, from: 0, hole: false }),
      );
      const line = words
        .filter(({ y }) => Math.abs(y - words[0]!.y) < 0.1)
        .map(({ text }) => text)
        .join('');
      expect(line.replace(/\s/g, '')).toBe(name.replace(/\s/g, ''));
    }
    // Right to left: the first letter stands on the right. PDF.js gives such text back in reading order.
    for (const name of ['תאנה', 'تين']) {
      const paper = new PaperWriter('a4', { title: 'x', day });
      paper.page();
      paper.text(name, { x: 20, y: 20, width: 50, size: 12 });
      const words = await wordsOf(await paper.finish());
      expect(
        words
          .map(({ text }) => text)
          .join('')
          .normalize('NFKC')
          // Dots of Arabic letters are glyphs of their own in this font, and come back as control characters.
          .replace(/\p{Cc}/gu, ''),
      ).toBe(name);
      // The dots of Arabic letters take room in what PDF.js measures and none on paper.
      if (name === 'תאנה') expect(Math.abs(words.at(-1)!.x + words.at(-1)!.width - 70)).toBeLessThan(0.2);
    }
  });

  test('in a script that no font here has is refused in words, never printed as boxes', async () => {
    await expect(
      labelSheets([label('無花果')], sheets[0]!, { title: 'x', day, from: 0, hole: false }),
    ).rejects.toThrow(NoGlyph);
    await expect(
      labelSheets([label('無花果')], sheets[0]!, { title: 'x', day, from: 0, hole: false }),
    ).rejects.toThrow(/U\+7121.*Latin, Greek/);
  });
});

describe('codes and rulers', () => {
  test('the code on every sheet leads to the lot', async () => {
    for (const sheet of sheets) {
      const words = label('Wrenfoot', 3);
      const bytes = await labelSheets([words], sheet, { title: 'x', day, from: 1, hole: false });
      const perMm = 12;
      const context = await rendered(bytes, perMm);
      const { x, y } = placeOfLabel(sheet, 1);
      const [width, height] = [Math.floor(sheet.width * perMm), Math.floor(sheet.height * perMm)];
      const data = context.getImageData(Math.round(x * perMm), Math.round(y * perMm), width, height);
      expect(decodeQR({ width, height, data: Uint8Array.from(data.data) }), sheet.name).toBe(words.address);
    }
  });

  test('the ruler of the test sheet is 100 mm long', async () => {
    const words = await wordsOf(await testSheet(sheets[1]!, day));
    const at = (text: string) => words.find(each => each.text === text)!.x;
    expect(Math.abs(at('100') - words.filter(({ text }) => text === '0').at(-1)!.x - 100)).toBeLessThan(0.2);
    expect(Math.abs(at('3 in') - at('0 in') - 76.2)).toBeLessThan(0.2);
  });
});

test('five hundred labels take less than a megabyte, and the same records give the same bytes', async () => {
  const labels = Array.from({ length: 500 }, (_, index) => label(`Name ${index} é`, index));
  const options = { title: 'x', day, from: 0, hole: false };
  const bytes = await labelSheets(labels, sheets[0]!, options);
  expect(bytes.length).toBeLessThan(1_000_000);
  expect((await labelSheets(labels, sheets[0]!, options)).equals(bytes)).toBe(true);
  expect((await opened(bytes)).numPages).toBe(17);
});
