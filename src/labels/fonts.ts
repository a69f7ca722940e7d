/**
 * The fonts of printed paper, with the scripts they cover: Latin, Greek, Cyrillic and Vietnamese (Source Sans 3), Hebrew and Arabic (Noto Sans).
 * Other scripts are told by name and never printed as empty boxes.
 */

import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

export type Weight = 400 | 600;

interface FontFile {
  name: string;
  path: (weight: Weight) => string;
  rightToLeft: boolean;
}

const source = fileURLToPath(import.meta.resolve('@fontsource/source-sans-3/package.json')).replace(
  'package.json',
  'files',
);
const hebrew = fileURLToPath(import.meta.resolve('@fontsource/noto-sans-hebrew/package.json')).replace(
  'package.json',
  'files',
);
const arabic = fileURLToPath(import.meta.resolve('@fontsource/noto-sans-arabic/package.json')).replace(
  'package.json',
  'files',
);

const sourceSans = (subset: string): FontFile => ({
  name: subset,
  path: weight => `${source}/source-sans-3-${subset}-${weight}-normal.woff`,
  rightToLeft: false,
});

/** In the order in which they are asked for a sign. */
export const fontFiles: readonly FontFile[] = [
  ...['latin', 'latin-ext', 'greek', 'greek-ext', 'cyrillic', 'cyrillic-ext', 'vietnamese'].map(sourceSans),
  {
    name: 'hebrew',
    path: weight => `${hebrew}/noto-sans-hebrew-hebrew-${weight}-normal.woff`,
    rightToLeft: true,
  },
  {
    name: 'arabic',
    path: weight => `${arabic}/noto-sans-arabic-arabic-${weight}-normal.woff`,
    rightToLeft: true,
  },
];

const coveredScripts = 'Latin, Greek, Cyrillic, Vietnamese, Hebrew and Arabic';

const bytes = new Map<string, Buffer>();

export function fontBytes(file: FontFile, weight: Weight): Buffer {
  const path = file.path(weight);
  const known = bytes.get(path) ?? readFileSync(path);
  bytes.set(path, known);
  return known;
}

/** A stretch of text that one font draws, left to right or right to left. */
export interface Run {
  font: FontFile;
  text: string;
}

/** A text with signs that no font here has. */
export class NoGlyph extends Error {
  override name = 'NoGlyph';
}

const isNeutral = (sign: string) => /[\s\p{P}\p{S}\p{N}]/u.test(sign);

/**
 * A text as runs in the order in which they are drawn from the left. Runs of Hebrew and Arabic are drawn right to left by the font's own shaping; where
 * the text begins with one of these scripts, the order of the runs is turned too. That is the part of the Unicode bidirectional algorithm (UAX 9) that
 * names and short lines need: numbers and marks go with the run before them. Throws NoGlyph where a sign is in no font.
 */
export function runsOf(text: string, has: (font: FontFile, codePoint: number) => boolean): Run[] {
  const runs: Run[] = [];
  for (const sign of text.normalize('NFC')) {
    const point = sign.codePointAt(0)!;
    const last = runs.at(-1);
    const stays = last !== undefined && isNeutral(sign) && has(last.font, point);
    const font = stays ? last.font : fontFiles.find(each => has(each, point));
    if (font === undefined) {
      const code = `U+${point.toString(16).toUpperCase().padStart(4, '0')}`;
      throw new NoGlyph(
        `"${text}" has the sign "${sign}" (${code}), which no font here can print; ${coveredScripts} are covered. Give the record a name in one of these scripts as well.`,
      );
    }
    if (last?.font === font) last.text += sign;
    else runs.push({ font, text: sign });
  }
  return runs[0]?.font.rightToLeft ? runs.reverse() : runs;
}
