/** CSV text to cells, through csv-parse, with the line of every row; the column of a cell is worked out on demand. */

import { CsvError, parse } from 'csv-parse/sync';
import { atLine, type Problem, quote } from './problem.ts';

/** A table's text as it was taken apart. */
export interface TableText {
  file: string;
  text: string;
  delimiter: string;
  header: string[];
}

interface TableRow {
  cells: string[];
  /** 1-based line on which the row starts. */
  line: number;
}

export interface RawTable extends TableText {
  headerLine: number;
  rows: TableRow[];
}

const delimiters = [',', ';', '\t'] as const;

/** Reads a table with a header row. Rows may still be ragged and columns unknown: that is the caller's to judge. */
export function readCsv(file: string, text: string): RawTable | { problem: Problem } {
  const delimiter = delimiterOf(text);
  try {
    const records = parse(text, {
      delimiter,
      info: true,
      relax_column_count: true,
      skip_empty_lines: true,
      skip_records_with_empty_values: true,
      trim: true,
    }) as unknown as { record: string[]; info: { lines: number } }[];
    const [first, ...rest] = records.map(({ record, info }) => ({
      cells: record,
      line: info.lines - lineBreaksIn(record),
    }));
    if (!first) return { problem: noHeader(file) };
    return { file, text, delimiter, header: first.cells.map(columnName), headerLine: first.line, rows: rest };
  } catch (problem) {
    return { problem: csvProblem(file, text, problem) };
  }
}

/** The separator of the header row: spreadsheets in some countries write semicolons, copied cells come with tabs. */
function delimiterOf(text: string): string {
  const header = text.trimStart().split('\n', 1)[0] ?? '';
  return delimiters.find(sign => header.includes(sign)) ?? ',';
}

function lineBreaksIn(cells: readonly string[]): number {
  return cells.reduce((total, cell) => total + (cell.includes('\n') ? cell.split('\n').length - 1 : 0), 0);
}

function noHeader(file: string): Problem {
  return {
    rule: 'csv-syntax',
    file,
    spot: atLine(1),
    message: 'the table has no header row',
    remedy: 'write the names of the columns in the first line, such as lot,left.',
  };
}

function csvProblem(file: string, text: string, problem: unknown): Problem {
  const { lines, code } = csvDetails(problem);
  const open = code === 'CSV_QUOTE_NOT_CLOSED';
  return {
    rule: 'csv-syntax',
    file,
    spot: atLine(open ? openQuoteLine(text) : lines),
    message: open
      ? 'a double quote is opened here but never closed'
      : 'a double quote stands in the middle of a cell',
    remedy:
      'take the quote away, or put the whole cell in double quotes and write each quote inside it twice.',
  };
}

/** Spreadsheets and telephones start a word with a capital, and people write spaces: `Height in` is height_in. */
export function columnName(cell: string): string {
  const plain = cell.toLowerCase().replace(/ +/g, '_');
  return /^[a-z_]+$/.test(plain) ? plain : cell;
}

/** Line on which the quote that is never closed is opened. */
function openQuoteLine(text: string): number {
  let line = 1;
  let opened: number | null = null;
  for (const letter of text) {
    if (letter === '"') opened = opened === null ? line : null;
    else if (letter === '\n') line += 1;
  }
  return opened ?? 1;
}

function csvDetails(problem: unknown): { lines: number; code: string } {
  if (!(problem instanceof CsvError)) return { lines: 1, code: '' };
  const { lines } = problem as unknown as { lines?: number };
  return { lines: Math.max(lines ?? 1, 1), code: problem.code };
}

/** Column, 1-based, on which a named cell of a line starts; 1 when the line has no such cell. */
export function cellColumn({ text, delimiter, header }: TableText, line: number, name: string): number {
  const wanted = header.indexOf(name);
  const content = text.split('\n')[line - 1] ?? '';
  let cell = 0;
  let inQuotes = false;
  for (let index = 0; wanted >= 0 && index <= content.length; index += 1) {
    const letter = content[index];
    if (!inQuotes && cell === wanted && letter !== ' ') return index + 1;
    if (letter === '"') inQuotes = !inQuotes;
    else if (letter === delimiter && !inQuotes) cell += 1;
  }
  return 1;
}

/** A cell or header as it is shown in a message. */
export function showCell(cell: string): string {
  return cell === '' ? 'an empty cell' : quote(cell);
}
