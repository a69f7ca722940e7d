/** A sheet for the clipboard: lots in the order of the benches, what was seen last in gray words, cells to write in, and the allowed words at the foot. */

import type { Catalogue, LotEntry } from '../core/catalogue.ts';
import { dayInWords } from '../core/days.ts';
import {
  healthSigns,
  leafSigns,
  rootSigns,
  type WalkColumn,
  wheres,
  woodSigns,
} from '../core/records/walk.ts';
import { benchOrder } from './content.ts';
import { PaperWriter } from './paper.ts';
import { type Paper, papers } from './sheets.ts';

export interface CountUnits {
  height: 'in' | 'cm';
  stem: 'in' | 'mm';
}

const columnsFor = ({ height, stem }: CountUnits): WalkColumn[] => [
  'lot',
  'left',
  'lost',
  `height_${height}`,
  `caliper_${stem}`,
  'roots',
  'leaves',
  'wood',
  'health',
  'where',
  'note',
];

/** The same sheet as a walk file with blank cells: to be typed into and saved as content/walks/DAY.csv. */
export function countTable(all: Catalogue, units: CountUnits): string {
  const columns = columnsFor(units);
  const blank = ','.repeat(columns.length - 1);
  return `${[columns.join(','), ...benchOrder(all.lots).map(({ lot }) => lot.id + blank)].join('\n')}\n`;
}

interface Column {
  title: string;
  /** mm. */
  width: number;
  last: (entry: LotEntry) => string;
}

const cmPerInch = 2.54;

function columnsOf({ height, stem }: CountUnits): Column[] {
  const number = (value: number | undefined, per: number) =>
    value === undefined ? '' : String(Math.round((value / per) * 10) / 10);
  return [
    { title: 'Lot', width: 58, last: () => '' },
    { title: 'Left', width: 20, last: ({ stock }) => String(stock.left) },
    { title: 'Lost', width: 14, last: () => '' },
    {
      title: `Height, ${height}`,
      width: 22,
      last: ({ signs }) => number(signs.heightCm?.value, height === 'in' ? cmPerInch : 1),
    },
    {
      title: `Stem, ${stem}`,
      width: 20,
      last: ({ signs }) => number(signs.caliperMm?.value, stem === 'in' ? 25.4 : 1),
    },
    { title: 'Roots', width: 21, last: ({ signs }) => signs.roots?.value ?? '' },
    { title: 'Leaves', width: 21, last: ({ signs }) => signs.leaves?.value ?? '' },
    { title: 'Wood', width: 18, last: ({ signs }) => signs.wood?.value ?? '' },
    { title: 'Health', width: 18, last: ({ signs }) => signs.health?.value ?? '' },
    { title: 'Where', width: 23, last: ({ signs }) => signs.where?.value ?? '' },
    { title: 'Note', width: 0, last: () => '' },
  ];
}

const EDGE_MM = 10;
const ROW_MM = 9.5;
const HEAD_MM = 24;
const FOOT_MM = 17;

const allowedWords = [
  'Left is a count, not a change. Blank: not looked at.',
  `Roots: ${rootSigns.join(', ')}.  Leaves: ${leafSigns.join(', ')}.  Wood: ${woodSigns.join(', ')}.  Health: ${healthSigns.join(', ')}.  Where: ${wheres.join(', ')}.`,
];

/** The sheet as a PDF, in landscape. Throws NoGlyph for a name that no font here can print. */
export async function countSheet(all: Catalogue, paperName: Paper, units: CountUnits): Promise<Buffer> {
  const paper = new PaperWriter(paperName, { title: 'Count sheet', day: all.asOf, landscape: true });
  const [width, height] = [papers[paperName].height, papers[paperName].width];
  const columns = columnsOf(units);
  columns.at(-1)!.width = width - 2 * EDGE_MM - columns.reduce((sum, each) => sum + each.width, 0);
  const lots = benchOrder(all.lots);
  const perPage = Math.floor((height - HEAD_MM - FOOT_MM) / ROW_MM);
  const pages = Math.max(Math.ceil(lots.length / perPage), 1);
  for (let page = 0; page < pages; page += 1) {
    paper.page();
    const title = `${all.yard.name}: count sheet, last seen up to ${dayInWords(all.asOf)}`;
    paper.text(title, { x: EDGE_MM, y: 12, width: width - 90, size: 12, weight: 600 });
    paper.text(`Day: ______________   ${page + 1} of ${pages}`, {
      x: width - 80,
      y: 12,
      width: 70,
      size: 10,
      align: 'right',
    });
    drawHead(paper, columns);
    for (const [index, entry] of lots.slice(page * perPage, (page + 1) * perPage).entries())
      drawRow(paper, columns, entry, HEAD_MM + index * ROW_MM);
    for (const [index, words] of allowedWords.entries()) {
      const y = height - FOOT_MM + 6 + index * 4.5;
      paper.text(words, { x: EDGE_MM, y, width: width - 2 * EDGE_MM, size: 9 });
    }
  }
  return paper.finish();
}

function drawHead(paper: PaperWriter, columns: readonly Column[]): void {
  let x = EDGE_MM;
  for (const { title, width } of columns) {
    paper.text(title, { x: x + 1, y: HEAD_MM - 2, width: width - 2, size: 9, weight: 600 });
    x += width;
  }
}

function drawRow(paper: PaperWriter, columns: readonly Column[], entry: LotEntry, y: number): void {
  const { lot, cultivar } = entry;
  let x = EDGE_MM;
  for (const [index, { width, last }] of columns.entries()) {
    paper.box(x, y, width, ROW_MM);
    if (index === 0) {
      paper.text(lot.id, { x: x + 1, y: y + 4, width: width - 2, size: 10, weight: 600 });
      paper.text(cultivar.name, { x: x + 1, y: y + 8, width: width - 2, size: 8 });
    } else {
      const words = last(entry);
      if (words !== '') paper.text(words, { x: x + 1, y: y + 3, width: width - 2, size: 7 });
    }
    x += width;
  }
}
