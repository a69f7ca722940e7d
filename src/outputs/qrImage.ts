/**
 * QR codes of addresses (ISO/IEC 18004) as modules, as an outline for any program that draws, and as SVG. Black on white whatever the colors
 * around them: many readers do not take a code with light modules on dark.
 */

import { encode } from 'uqr';

/** Rows of modules from the top, without the quiet zone; true is dark. */
export type QrModules = readonly (readonly boolean[])[];

/** White modules that are kept free on every side. ISO/IEC 18004; qrcode.com, "Point for determining the code area" (Denso Wave). */
export const QUIET_MODULES = 4;

/**
 * The smallest code that holds a text at error correction level M, which restores about 15 % of the code. M is the usual level, for codes that
 * are neither soiled nor covered: qrcode.com, "Error correction feature" (Denso Wave). Throws when the text is too long for any code.
 */
export function qrModules(text: string): QrModules {
  return encode(text, { ecc: 'M', border: 0 }).data;
}

/** Modules of one side with the quiet zone on both ends. */
export function qrSide(modules: QrModules): number {
  return modules.length + 2 * QUIET_MODULES;
}

/** Runs of dark modules in a row: where each starts and how long it is. */
function darkRuns(row: readonly boolean[]): { from: number; length: number }[] {
  const runs: { from: number; length: number }[] = [];
  row.forEach((dark, at) => {
    const last = runs.at(-1);
    if (!dark) return;
    if (last !== undefined && last.from + last.length === at) last.length += 1;
    else runs.push({ from: at, length: 1 });
  });
  return runs;
}

/**
 * The dark modules as one SVG path, a closed box for each run of a row, in modules from the corner of the quiet zone. To be filled, and
 * readable by every program that knows the path commands m, h, v and z.
 */
export function qrPath(modules: QrModules): string {
  let [x, y] = [0, 0];
  let path = '';
  modules.forEach((row, at) => {
    for (const { from, length } of darkRuns(row)) {
      const [toX, toY] = [from + QUIET_MODULES, at + QUIET_MODULES];
      // The first m is taken from the origin; z returns to the start of its box.
      path += `m${toX - x} ${toY - y}h${length}v1h-${length}z`;
      [x, y] = [toX, toY];
    }
  });
  return path;
}

/** A code as an SVG file, `modulePx` pixels to a module. */
export function qrSvg(text: string, modulePx: number): string {
  const modules = qrModules(text);
  const side = qrSide(modules);
  const px = side * modulePx;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${px}" height="${px}" viewBox="0 0 ${side} ${side}" shape-rendering="crispEdges">`,
    `<path fill="#fff" d="M0 0h${side}v${side}h-${side}z"/>`,
    `<path fill="#000" d="${qrPath(modules)}"/>`,
    '</svg>\n',
  ].join('');
}
