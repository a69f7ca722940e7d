/** A page to hold against a sheet of labels: the outline of every label, with rulers in mm and inches to see whether the printer has scaled it. */

import { PaperWriter } from './paper.ts';
import { papers, placeOfLabel, type Sheet } from './sheets.ts';

const RULER_MM = 100;

export async function testSheet(sheet: Sheet, day: string): Promise<Buffer> {
  const paper = new PaperWriter(sheet.paper, { title: `Test sheet ${sheet.name}`, day });
  paper.page();
  for (let index = 0; index < sheet.columns * sheet.rows; index += 1) {
    const { x, y } = placeOfLabel(sheet, index);
    paper.box(x, y, sheet.width, sheet.height);
    paper.text(String(index + 1), { x: x + 3, y: y + 6, width: 20, size: 9 });
  }
  const { width, height } = papers[sheet.paper];
  const [left, top] = [(width - RULER_MM) / 2, height / 2];
  paper.rule(left, top, left + RULER_MM, top, 0.3);
  for (let mm = 0; mm <= RULER_MM; mm += 1) {
    const long = mm % 10 === 0 ? 5 : mm % 5 === 0 ? 3.5 : 2;
    paper.rule(left + mm, top, left + mm, top - long);
    if (mm % 10 === 0) paper.text(String(mm), { x: left + mm + 0.4, y: top - 3, width: 8, size: 6 });
  }
  for (let sixteenth = 0; sixteenth <= 62; sixteenth += 1) {
    const at = left + (sixteenth * 25.4) / 16;
    paper.rule(at, top, at, top + (sixteenth % 16 === 0 ? 5 : sixteenth % 8 === 0 ? 3.5 : 2));
    if (sixteenth % 16 === 0)
      paper.text(`${sixteenth / 16} in`, { x: at + 0.4, y: top + 5, width: 10, size: 6 });
  }
  paper.text(
    `${sheet.name}: print at 100 %, without "fit to page". The line is ${RULER_MM} mm long. Hold it against a sheet of labels before the light.`,
    { x: left - 25, y: top + 12, width: RULER_MM + 50, size: 9 },
  );
  return paper.finish();
}
