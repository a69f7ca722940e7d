/** QR codes as PNG, for programs that take no SVG. */

import sharp from 'sharp';
import { QUIET_MODULES, qrModules, qrSide } from './qrImage.ts';

/** Half the height of a picture of 1920 by 1080: read from across a room, and leaves place for words beside it. Our working figure. */
const END_CARD_SIDE_PX = 540;

/** Pixels to a module of a code for an end card: a whole number, so that every module is as large as its neighbor. */
export function endCardModulePx(text: string): number {
  return Math.max(1, Math.floor(END_CARD_SIDE_PX / qrSide(qrModules(text))));
}

/** A code as a PNG of two tones, `modulePx` pixels to a module. The same text gives the same bytes. */
export function qrPng(text: string, modulePx: number): Promise<Buffer> {
  const modules = qrModules(text);
  const px = qrSide(modules) * modulePx;
  const tones = Buffer.alloc(px * px, 255);
  modules.forEach((row, y) => {
    row.forEach((dark, x) => {
      if (!dark) return;
      const left = (x + QUIET_MODULES) * modulePx;
      const top = (y + QUIET_MODULES) * modulePx;
      for (let line = top; line < top + modulePx; line += 1) {
        tones.fill(0, line * px + left, line * px + left + modulePx);
      }
    });
  });
  return sharp(tones, { raw: { width: px, height: px, channels: 1 } })
    .toColourspace('b-w')
    .png({ compressionLevel: 9, palette: true, colors: 2 })
    .toBuffer();
}
