/** The picture of a shared link: a plate of fruit with the name of what the link leads to. Kept by the hash of all it is drawn from. */

import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import type { CultivarEntry } from '../../core/catalogue.ts';
import { signed, unsigned, writeWhole } from '../../files.ts';
import { hashOf } from '../../hash.ts';
import { htmlText } from '../../outputs/htmlText.ts';
import { fruitKind } from '../drawing/plate/kinds.ts';
import { canvasOf, plate, plateSvg } from '../drawing/plate.ts';
import { CARD_HEIGHT, CARD_WIDTH } from '../page.ts';
import { plateStyle } from './plateInColor.ts';

export interface CardWords {
  title: string;
  /** Small lines below the title. */
  lines: readonly string[];
}

/** Inks of the light sheet, see styles/tokens.css. */
const [paper, ink, soft, spot] = ['#fcfcfa', '#1b191d', '#544f58', '#7b1b4d'] as const;
const MARGIN_PX = 64;
/** Width of the words, and of the plate beside them. */
const WORDS_PX = 470;
const PLATE_PX = CARD_WIDTH - WORDS_PX - 3 * MARGIN_PX;
const PLATE_HEIGHT_PX = CARD_HEIGHT - 2 * MARGIN_PX;

const font = fileURLToPath(
  import.meta.resolve('@fontsource/source-sans-3/files/source-sans-3-latin-400-normal.woff'),
);
/** What that font has letters for; other names are left to the plate, or every machine would draw them with a font of its own. */
const covered = /^[\u0020-\u00ff\u2010-\u201f\u2026\u20ac]*$/;

const sheets = Promise.all(
  ['plates', 'fruit'].map(name => readFile(new URL(`../../styles/${name}.css`, import.meta.url), 'utf8')),
);

type Shown = Pick<CultivarEntry, 'cultivar' | 'species'>;

/** The plate as a drawing of its own, as large as there is room for. */
async function plateDrawing({ cultivar: { id, fruit }, species }: Shown): Promise<string> {
  const kind = fruitKind(species.botanical, fruit);
  const canvas = canvasOf(fruit, kind);
  const once = plate(fruit, kind, { seed: id, pxPerMm: 1, canvas });
  const pxPerMm = Math.min(PLATE_PX / once.width, (PLATE_HEIGHT_PX - 14) / once.height) * 0.98;
  const drawn = plate(fruit, kind, { seed: id, pxPerMm, canvas });
  const style = plateStyle(await sheets, drawn.colors, ink);
  return plateSvg(drawn, id).replace('>', `><style>${style}</style>`);
}

/** Lines of one color and size, wrapped to the width; null for nothing to write. */
async function written(text: string, color: string, sizePx: number): Promise<Buffer | null> {
  if (text === '' || !covered.test(text)) return null;
  return (
    sharp({
      text: {
        text: `<span foreground="${color}">${htmlText(text)}</span>`,
        fontfile: font,
        font: `Source Sans 3 ${sizePx}`,
        width: WORDS_PX,
        wrap: 'word-char',
        rgba: true,
        dpi: 72,
      },
    })
      // Names of eighty signs or of one long word still leave room for the rest.
      .resize(WORDS_PX, Math.round(CARD_HEIGHT / 3), { fit: 'inside', withoutEnlargement: true })
      .png()
      .toBuffer()
  );
}

async function drawn(drawing: string, { title, lines }: CardWords): Promise<Buffer> {
  const picture = await sharp(Buffer.from(drawing))
    .resize(PLATE_PX, PLATE_HEIGHT_PX, { fit: 'inside' })
    .png()
    .toBuffer();
  const { width = 0, height = 0 } = await sharp(picture).metadata();
  const parts = [
    await written(title, spot, title.length > 40 ? 46 : 64),
    ...(await Promise.all(lines.map(line => written(line, soft, 30)))),
  ];
  const texts = await Promise.all(
    parts
      .filter(part => part !== null)
      .map(async input => ({ input, height: (await sharp(input).metadata()).height })),
  );
  const gap = 24;
  let top = Math.round((CARD_HEIGHT - texts.reduce((sum, text) => sum + text.height + gap, -gap)) / 2);
  const placed = texts.map(text => {
    const at = { input: text.input, left: MARGIN_PX, top: Math.max(0, top) };
    top += text.height + gap;
    return at;
  });
  const left = 2 * MARGIN_PX + WORDS_PX + Math.round((PLATE_PX - width) / 2);
  return sharp({ create: { width: CARD_WIDTH, height: CARD_HEIGHT, channels: 3, background: paper } })
    .composite([...placed, { input: picture, left, top: Math.round((CARD_HEIGHT - height) / 2) }])
    .png({ compressionLevel: 9, palette: true, colors: 64 })
    .toBuffer();
}

const folder = resolve('.cache/cards');
/** Raised whenever a card is drawn in another way. */
const VERSION = 1;

/** PNG of a card. A lost or cut file only costs time. */
export async function cardPicture(shown: Shown, words: CardWords): Promise<Uint8Array> {
  const drawing = await plateDrawing(shown);
  const path = resolve(folder, hashOf(VERSION, drawing, words, sharp.versions));
  const kept = await readFile(path).then(unsigned, () => null);
  if (kept !== null) return kept;
  const bytes = await drawn(drawing, words);
  await writeWhole(path, signed(bytes));
  return bytes;
}
