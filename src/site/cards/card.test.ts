/** Pictures of shared links: the size that was said, the colors of the fruit in them, and no color left open. */

import { readFileSync } from 'node:fs';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { worldRecords } from '../../../tests/world.ts';
import { assemble } from '../../core/catalogue.ts';
import { day } from '../../core/days.ts';
import { fleshColors, skinColors } from '../../core/records/cultivar.ts';
import { CARD_HEIGHT, CARD_WIDTH } from '../page.ts';
import { cardPicture } from './card.ts';
import { plateStyle } from './plateInColor.ts';

const sheets = ['plates', 'fruit'].map(name =>
  readFileSync(new URL(`../../styles/${name}.css`, import.meta.url), 'utf8'),
);

describe('the style of a plate', () => {
  it('has a color for every skin and flesh, and no variable or mix left in it', () => {
    for (const skin of skinColors)
      for (const flesh of fleshColors) {
        const style = plateStyle(sheets, `skin-${skin} flesh-${flesh}`, '#000000');
        expect(style).not.toMatch(/var\(|color-mix|--|undefined|NaN/);
        expect(style).toMatch(/\.plate \.skin \{\s*fill: #[0-9a-f]{6};/);
      }
  });

  it('takes the color of the class', () => {
    const skin = /\.skin-yellow \{\s*--skin: (#[0-9a-f]{6})/.exec(sheets.join('\n'))![1]!;
    expect(plateStyle(sheets, 'skin-yellow flesh-amber', '#000000')).toContain(
      `.plate .skin {\n  fill: ${skin};`,
    );
  });
});

describe('a card', () => {
  const world = { cultivars: { 'test-fig': {}, rtl: { name: 'תאנה של הגבעה' } }, lots: [], walks: {} };
  const all = assemble(worldRecords(world), day('2026-08-29'), new Map());

  it.each([
    ['Test fig', 'A short name'],
    ['Ab cde'.repeat(13), 'A name of 78 letters'],
    ['תאנה של הגבעה', 'A name from right to left'],
    ['', 'No words'],
  ])('of “%s” is a picture of the size that was said', async title => {
    const bytes = await cardPicture(all.cultivars[0]!, { title, lines: ['Fig & others', 'Our yard'] });
    const { format, width, height } = await sharp(bytes).metadata();
    expect({ format, width, height }).toEqual({ format: 'png', width: CARD_WIDTH, height: CARD_HEIGHT });
    expect(bytes.length).toBeLessThan(120_000);
  });

  it('shows more than paper where the plate stands', async () => {
    const bytes = await cardPicture(all.cultivars[0]!, { title: 'Test fig', lines: [] });
    const right = await sharp(bytes)
      .extract({ left: CARD_WIDTH / 2, top: 0, width: CARD_WIDTH / 2, height: CARD_HEIGHT })
      .stats();
    expect(right.channels[0]!.stdev).toBeGreaterThan(10);
  });
});
