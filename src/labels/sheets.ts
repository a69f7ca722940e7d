/**
 * Geometry of label sheets, as measures: no maker's numbers. The measures are those that the sheets in common use carry on their packs, from
 * memory; printers differ by a millimeter, so print the test sheet on plain paper first and hold it against a sheet of labels.
 */

/** Paper in mm. ISO 216 for A4, ANSI/ASME Y14.1 size A for letter. */
export const papers = {
  letter: { width: 215.9, height: 279.4 },
  a4: { width: 210, height: 297 },
} as const;
export type Paper = keyof typeof papers;

/** All lengths in mm. */
export interface Sheet {
  name: string;
  paper: Paper;
  columns: number;
  rows: number;
  width: number;
  height: number;
  /** From the edge of the paper to the first label. */
  left: number;
  top: number;
  /** From one label to the next, edge to the same edge. */
  across: number;
  down: number;
}

export const sheets: readonly Sheet[] = [
  {
    name: 'letter-3x10',
    paper: 'letter',
    columns: 3,
    rows: 10,
    width: 66.68,
    height: 25.4,
    left: 4.76,
    top: 12.7,
    across: 69.85,
    down: 25.4,
  },
  {
    name: 'letter-2x5',
    paper: 'letter',
    columns: 2,
    rows: 5,
    width: 101.6,
    height: 50.8,
    left: 3.97,
    top: 12.7,
    across: 106.36,
    down: 50.8,
  },
  {
    name: 'letter-2x7',
    paper: 'letter',
    columns: 2,
    rows: 7,
    width: 101.6,
    height: 33.87,
    left: 3.97,
    top: 21.17,
    across: 106.36,
    down: 33.87,
  },
  {
    name: 'a4-3x8',
    paper: 'a4',
    columns: 3,
    rows: 8,
    width: 70,
    height: 36,
    left: 0,
    top: 4.5,
    across: 70,
    down: 36,
  },
  {
    name: 'a4-2x7',
    paper: 'a4',
    columns: 2,
    rows: 7,
    width: 99.1,
    height: 38.1,
    left: 4.65,
    top: 15.15,
    across: 101.6,
    down: 38.1,
  },
  // Strips cut from plain card, with a hole for the tie at the left end.
  {
    name: 'letter-tag-1x10',
    paper: 'letter',
    columns: 1,
    rows: 10,
    width: 190,
    height: 25,
    left: 12.95,
    top: 14.7,
    across: 190,
    down: 25,
  },
  {
    name: 'a4-tag-1x11',
    paper: 'a4',
    columns: 1,
    rows: 11,
    width: 190,
    height: 25,
    left: 10,
    top: 11,
    across: 190,
    down: 25,
  },
];

/** Left, top, width and height of a label on its page, mm, and the page; labels run along the rows from the one `from` on, 0-based. */
export function placeOfLabel(sheet: Sheet, index: number): { page: number; x: number; y: number } {
  const perPage = sheet.columns * sheet.rows;
  const onPage = index % perPage;
  const [column, row] = [onPage % sheet.columns, Math.floor(onPage / sheet.columns)];
  return {
    page: Math.floor(index / perPage),
    x: sheet.left + column * sheet.across,
    y: sheet.top + row * sheet.down,
  };
}

/** What is wrong with a sheet, in a sentence; null for one that can be printed. */
export function sheetFault(sheet: Sheet): string | null {
  const paper = papers[sheet.paper];
  const right = sheet.left + (sheet.columns - 1) * sheet.across + sheet.width;
  const bottom = sheet.top + (sheet.rows - 1) * sheet.down + sheet.height;
  if (sheet.width < 30 || sheet.height < 15) return 'a label is at least 30 mm wide and 15 mm high';
  if (sheet.across < sheet.width - 0.01 || sheet.down < sheet.height - 0.01) return 'the labels overlap';
  if (right > paper.width + 0.01)
    return `the last column ends at ${right.toFixed(1)} mm, beyond the ${paper.width} mm of the paper`;
  if (bottom > paper.height + 0.01)
    return `the last row ends at ${bottom.toFixed(1)} mm, beyond the ${paper.height} mm of the paper`;
  return null;
}

const measure = String.raw`(\d+(?:\.\d+)?)`;
const described = new RegExp(
  `^(letter|a4) (\\d+)x(\\d+) ${measure}x${measure} at ${measure},${measure}(?: every ${measure},${measure})?$`,
);

/**
 * A sheet by its name, or described in mm: `letter 3x10 66.7x25.4 at 4.8,12.7 every 69.9,25.4` (columns x rows, width x height, left and top of
 * the first label, and from one to the next). Otherwise a sentence.
 */
export function sheetNamed(text: string): Sheet | string {
  const known = sheets.find(({ name }) => name === text.trim());
  if (known) return known;
  const found = described.exec(text.trim().replace(/\s+/g, ' '));
  if (!found)
    return `"${text}" is no sheet; write ${sheets.map(({ name }) => name).join(', ')}, or measures in mm such as "letter 3x10 66.7x25.4 at 4.8,12.7 every 69.9,25.4".`;
  const [columns, rows, width, height, left, top] = found.slice(2, 8).map(Number) as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const sheet: Sheet = {
    name: 'own',
    paper: found[1] as Paper,
    columns,
    rows,
    width,
    height,
    left,
    top,
    across: Number(found[8] ?? width),
    down: Number(found[9] ?? height),
  };
  if (columns < 1 || rows < 1) return 'a sheet has at least one column and one row.';
  const fault = sheetFault(sheet);
  return fault === null ? sheet : `${fault}.`;
}
