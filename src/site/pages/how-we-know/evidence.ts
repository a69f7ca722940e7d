/** Evidence tables as they are printed: numbers no longer than they need be, rows under their source, sums first. */

import {
  countByWorth,
  type EvidenceRow,
  type EvidenceStanding,
  type EvidenceTable,
  type EvidenceWorth,
  evidenceWorth,
} from '../../../core/evidence/table.ts';
import { groupBy } from '../../parts/paging.ts';
import { countInWords, sentence } from '../../words/words.ts';
import { shortMonthDay } from '../../words/yearDays.ts';

const standingWords: Record<EvidenceStanding, string> = {
  published: 'printed in the source',
  computed: 'worked separately',
  measured: 'from observations',
  practice: 'common practice, no source',
  memory: 'from memory, to be looked up',
  own: 'our own figure, restated',
};

const worthWords: Record<EvidenceWorth, string> = {
  outside: 'beside figures that others printed or observed',
  worked: 'beside the same formula worked separately',
  own: 'our own figures, restated or beside common practice',
};
const worths: readonly EvidenceWorth[] = ['outside', 'worked', 'own'];

export interface EvidenceLine {
  what: string;
  expected: string;
  got: string;
  /** Largest difference allowed; an empty text where the two must be equal. */
  within: string;
  ok: boolean;
}

/** Errors over many places side by side: `mean error`, `bias` and so on of one kind of date. */
export interface ErrorLine {
  over: string;
  /** In the order of the table's measures. */
  errors: (EvidenceLine | null)[];
}

/** Rows of one source. */
export interface EvidenceGroup {
  source: string;
  worth: EvidenceWorth;
  lines: EvidenceLine[];
}

export interface EvidenceView {
  id: string;
  title: string;
  about: string;
  weak: string | null;
  /** Errors over many places, shown at once: one line for each kind, a column for each measure. */
  measures: string[];
  errors: ErrorLine[];
  /** Every other row, under its source: what others printed or observed first, our own figures last. */
  groups: EvidenceGroup[];
  /** `283 rows beside figures that others printed or observed, all within what is allowed`. */
  verdict: string;
  worth: Record<EvidenceWorth, number>;
  failed: number;
  notChecked: EvidenceTable['notChecked'];
}

/** Decimals needed to see a hundredth of the tolerance, at most six. */
function decimalsFor(tolerance: number | null): number {
  if (tolerance === null || tolerance === 0) return 6;
  return Math.min(6, Math.max(0, 2 - Math.floor(Math.log10(tolerance))));
}

function shown(value: number | string, tolerance: number | null): string {
  if (typeof value === 'number') return String(Number(value.toFixed(decimalsFor(tolerance))));
  return /^\d\d-\d\d$/.test(value) ? shortMonthDay(value) : value;
}

function evidenceLine({ what, expected, got, tolerance, unit, ok }: EvidenceRow): EvidenceLine {
  const withUnit = (text: string) => (unit === '' ? text : `${text} ${unit}`);
  return {
    what: sentence(what),
    expected: shown(expected, tolerance),
    got: shown(got, tolerance),
    within: tolerance === null || tolerance === 0 ? '' : withUnit(shown(tolerance, tolerance)),
    ok,
  };
}

/** Rows that sum up many places rather than compare one figure. */
const sumOfMany = /\bmean error\b|\bbias$|: largest$|^largest$|\bshare within\b/;

/** What a sum is over and what it measures: `first freeze at 36 F: bias`. */
function partsOf(what: string): { over: string; measure: string } {
  const at = what.lastIndexOf(': ');
  if (at >= 0) return { over: what.slice(0, at), measure: what.slice(at + 2) };
  const [measure = what, places] = what.split(' over ');
  return { over: places === undefined ? 'all places' : `all ${places}`, measure };
}

/** Sums as a table: kinds down, measures across. */
function errorTable(sums: readonly EvidenceRow[]): Pick<EvidenceView, 'measures' | 'errors'> {
  const lines = sums.map(row => ({ ...partsOf(row.what), line: evidenceLine(row) }));
  // A table without kinds is one line; only its mean error says over how many places.
  const only = lines.every(({ over }) => over.startsWith('all ')) ? lines[0]?.over : undefined;
  const measures = [...new Set(lines.map(({ measure }) => measure))];
  return {
    measures: measures.map(sentence),
    errors: [...groupBy(lines, ({ over }) => only ?? over)].map(([over, members]) => ({
      over: sentence(over),
      errors: measures.map(measure => members.find(member => member.measure === measure)?.line ?? null),
    })),
  };
}

function verdictOf(counts: Record<EvidenceWorth, number>, failed: number): string {
  const parts = worths
    .filter(worth => counts[worth] > 0)
    .map(worth => `${countInWords(counts[worth], 'row')} ${worthWords[worth]}`);
  const outcome = failed === 0 ? 'all within what is allowed' : `${failed} of them outside what is allowed`;
  return `${parts.join('; ')}; ${outcome}`;
}

/** One table, ready for the page. */
export function evidenceView(table: EvidenceTable): EvidenceView {
  const { id, title, about, weak, rows, notChecked } = table;
  const [sums, single] = [true, false].map(wanted =>
    rows.filter(({ what }) => sumOfMany.test(what) === wanted),
  );
  const failed = rows.filter(({ ok }) => !ok).length;
  const counts = countByWorth([table]);
  const bySource = groupBy(single ?? [], ({ source, standing }) => `${source} (${standingWords[standing]})`);
  const groups = [...bySource].map(([source, members]) => ({
    source,
    worth: members[0] ? evidenceWorth(members[0]) : ('own' as const),
    lines: members.map(evidenceLine),
  }));
  return {
    id,
    title,
    about,
    weak,
    ...errorTable(sums ?? []),
    groups: worths.flatMap(worth => groups.filter(group => group.worth === worth)),
    verdict: verdictOf(counts, failed),
    worth: counts,
    failed,
    notChecked,
  };
}

/** All of it in a few sentences: what meets the world outside, what is arithmetic and what only restates our own figures. */
export function evidenceSummary(views: readonly EvidenceView[]): string {
  const count = (of: (view: EvidenceView) => number) => views.reduce((sum, view) => sum + of(view), 0);
  const [outside, worked, own] = worths.map(worth => count(view => view.worth[worth])) as [
    number,
    number,
    number,
  ];
  const failed = count(view => view.failed);
  const outcome = failed === 0 ? 'All of them hold.' : `${failed} of them do not hold; they are marked.`;
  return `The program that makes this site compares ${countInWords(outside, 'figure')} with what others printed or observed. ${countInWords(worked, 'more row')} ${worked === 1 ? 'checks' : 'check'} our arithmetic against the same formula worked separately, and ${own} only ${own === 1 ? 'restates' : 'restate'} figures of our own or common practice, which proves nothing. ${outcome}`;
}
