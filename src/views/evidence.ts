/** Evidence tables as they are printed: numbers no longer than they need be, rows under their source, sums first. */

import type { EvidenceRow, EvidenceStanding, EvidenceTable } from '../core/evidence/table.ts';
import { groupBy } from './paging.ts';
import { countInWords } from './words.ts';
import { shortMonthDay } from './yearDays.ts';

const standingWords: Record<EvidenceStanding, string> = {
  published: 'printed in the source',
  computed: 'computed by a separate program',
  measured: 'from observations',
  practice: 'common practice, no source',
  memory: 'from memory, to be looked up',
};

export interface EvidenceLine {
  what: string;
  expected: string;
  got: string;
  /** Largest difference allowed; an empty text where the two must be equal. */
  within: string;
  ok: boolean;
}

/** Rows of one source. */
export interface EvidenceGroup {
  source: string;
  lines: EvidenceLine[];
}

export interface EvidenceView {
  id: string;
  title: string;
  about: string;
  weak: string | null;
  /** Errors over many places, shown at once. */
  sums: EvidenceLine[];
  /** Every other row, under its source. */
  groups: EvidenceGroup[];
  /** `283 rows, all within what is allowed`. */
  verdict: string;
  rows: number;
  failed: number;
  notChecked: EvidenceTable['notChecked'];
}

/** Decimals needed to see a hundredth of the tolerance, at most six. */
function decimalsFor(tolerance: number | null): number {
  if (tolerance === null || tolerance === 0) return 6;
  return Math.min(6, Math.max(0, 1 - Math.floor(Math.log10(tolerance))));
}

function shown(value: number | string, tolerance: number | null): string {
  if (typeof value === 'number') return String(Number(value.toFixed(decimalsFor(tolerance))));
  return /^\d\d-\d\d$/.test(value) ? shortMonthDay(value) : value;
}

function evidenceLine({ what, expected, got, tolerance, unit, ok }: EvidenceRow): EvidenceLine {
  const withUnit = (text: string) => (unit === '' ? text : `${text} ${unit}`);
  return {
    what,
    expected: shown(expected, tolerance),
    got: shown(got, tolerance),
    within: tolerance === null || tolerance === 0 ? '' : withUnit(shown(tolerance, tolerance)),
    ok,
  };
}

/** Rows that sum up many places rather than compare one figure. */
const sumOfMany = /\bmean error\b|\bbias$|: largest$|^largest$|\bshare within\b/;

function verdictOf(rows: number, failed: number): string {
  const all = countInWords(rows, 'row');
  if (failed === 0) return `${all}, all within what is allowed`;
  return `${all}, ${failed} of them outside what is allowed`;
}

/** One table, ready for the page. */
export function evidenceView(table: EvidenceTable): EvidenceView {
  const { id, title, about, weak, rows, notChecked } = table;
  const [sums, single] = [true, false].map(wanted =>
    rows.filter(({ what }) => sumOfMany.test(what) === wanted),
  );
  const failed = rows.filter(({ ok }) => !ok).length;
  const bySource = groupBy(single ?? [], ({ source, standing }) => `${source} (${standingWords[standing]})`);
  return {
    id,
    title,
    about,
    weak,
    sums: (sums ?? []).map(evidenceLine),
    groups: [...bySource].map(([source, members]) => ({ source, lines: members.map(evidenceLine) })),
    verdict: verdictOf(rows.length, failed),
    rows: rows.length,
    failed,
    notChecked,
  };
}

/** All of it in one sentence. */
export function evidenceSummary(views: readonly EvidenceView[]): string {
  const count = (of: (view: EvidenceView) => number) => views.reduce((sum, view) => sum + of(view), 0);
  const [rows, failed] = [count(view => view.rows), count(view => view.failed)];
  const outcome = failed === 0 ? 'All of them hold.' : `${failed} of them do not hold; they are marked.`;
  return `${countInWords(rows, 'figure')} in ${countInWords(views.length, 'table')} are compared each time this site is built. ${outcome}`;
}
