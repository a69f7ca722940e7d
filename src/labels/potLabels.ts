/** Pot labels and tie-on tags on a sheet: name, lot, botanical name, pot, and a QR code that leads to the page of the lot. */

import type { LabelWords } from './content.ts';
import { PaperWriter } from './paper.ts';
import { placeOfLabel, type Sheet } from './sheets.ts';

/** Kept free at the edges of a label: printers are off by a millimeter. */
const MARGIN_MM = 2;
/** A module of a code that telephones still read at arm's length; codes are given at least about 0.4 mm. Our working figure. */
const SMALLEST_QR_MM = 12;

export interface LabelOptions {
  title: string;
  day: string;
  /** First place on the first sheet that is still there, 0-based: a sheet half used can be used up. */
  from: number;
  /** Leaves room for a hole, and draws it, at the left end of a tag. */
  hole: boolean;
}

function drawLabel(
  paper: PaperWriter,
  words: LabelWords,
  x: number,
  y: number,
  sheet: Sheet,
  hole: boolean,
): void {
  const side = Math.min(sheet.height - 2 * MARGIN_MM, 26);
  const withCode = side >= SMALLEST_QR_MM;
  const left = x + MARGIN_MM + (hole ? 12 : 0);
  const right = x + sheet.width - MARGIN_MM;
  if (withCode) paper.qr(words.address, right - side, y + (sheet.height - side) / 2, side);
  const width = right - left - (withCode ? side + 1 : 0);
  const size = Math.min(sheet.height * 0.5, 16);
  const line = size * 0.44;
  const top = y + Math.max((sheet.height - 3.4 * line) / 2, MARGIN_MM);
  paper.text(words.name, { x: left, y: top + line * 0.8, width, size, weight: 600, smallest: 7 });
  paper.text(words.lot, { x: left, y: top + line * 1.75, width, size: size * 0.8, weight: 600 });
  paper.text(words.botanical, { x: left, y: top + line * 2.5, width, size: size * 0.55, smallest: 5 });
  paper.text(words.standing, { x: left, y: top + line * 3.2, width, size: size * 0.55, smallest: 5 });
  if (hole) {
    paper.circle(x + 7, y + sheet.height / 2, 2.5);
    paper.box(x, y, sheet.width, sheet.height);
  }
}

/** A PDF of labels, one after the other. Throws NoGlyph for a name that no font here can print. */
export async function labelSheets(
  labels: readonly LabelWords[],
  sheet: Sheet,
  { title, day, from, hole }: LabelOptions,
): Promise<Buffer> {
  const paper = new PaperWriter(sheet.paper, { title, day });
  let pages = 0;
  labels.forEach((words, index) => {
    const { page, x, y } = placeOfLabel(sheet, index + from);
    for (; pages <= page; pages += 1) paper.page();
    drawLabel(paper, words, x, y, sheet, hole);
  });
  if (pages === 0) paper.page();
  return paper.finish();
}
