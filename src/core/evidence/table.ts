/** What an evidence table is: published or independently found figures beside ours, each row with its verdict. */

/**
 * `published`: printed in the source named. `computed`: found for this comparison from the formula or data named, by a
 * separate program. `measured`: from observations, as named. `practice`: common practice, no source. `memory`: typed from memory of
 * the source named, to be verified before anything is built on it. `own`: a figure of ours set beside the range or rule it was taken
 * from, which shows that nothing slipped and proves nothing.
 */
export type EvidenceStanding = 'published' | 'computed' | 'measured' | 'practice' | 'memory' | 'own';

/**
 * What a row is worth as evidence. `outside`: the model meets a figure that others printed or observed. `worked`: the program meets the
 * same formula worked separately. `own`: our own figures and rules, restated or beside common practice.
 */
export type EvidenceWorth = 'outside' | 'worked' | 'own';

const worth: Record<EvidenceStanding, EvidenceWorth> = {
  published: 'outside',
  measured: 'outside',
  memory: 'outside',
  computed: 'worked',
  practice: 'own',
  own: 'own',
};

/** What a row is worth, by its standing. */
export function evidenceWorth({ standing }: Pick<EvidenceRow, 'standing'>): EvidenceWorth {
  return worth[standing];
}

/** How many rows there are of each worth. */
export function countByWorth(tables: readonly Pick<EvidenceTable, 'rows'>[]): Record<EvidenceWorth, number> {
  const counts: Record<EvidenceWorth, number> = { outside: 0, worked: 0, own: 0 };
  for (const { rows } of tables) for (const row of rows) counts[evidenceWorth(row)] += 1;
  return counts;
}

export interface EvidenceRow {
  readonly what: string;
  readonly source: string;
  readonly standing: EvidenceStanding;
  readonly expected: number | string;
  readonly got: number | string;
  /** Largest difference allowed; null for words, which must be equal. */
  readonly tolerance: number | null;
  readonly unit: string;
  readonly ok: boolean;
}

interface NotChecked {
  readonly what: string;
  readonly why: string;
}

export interface EvidenceTable {
  /** Permanent, for links. */
  readonly id: string;
  readonly title: string;
  /** What the table means, in plain words. */
  readonly about: string;
  /** Where the model is weak; null when there is nothing to warn of. */
  readonly weak: string | null;
  readonly rows: readonly EvidenceRow[];
  /** Published rows that are left out, and why. */
  readonly notChecked: readonly NotChecked[];
}

/** Makes rows of one source. */
export function rowsFrom(source: string, standing: EvidenceStanding = 'published') {
  return {
    /** A number within a tolerance (in its own unit) of the one expected. */
    number(what: string, expected: number, got: number, tolerance: number, unit: string): EvidenceRow {
      // A bare comparison would fail on float dust when the difference is exactly the tolerance.
      const ok = Math.abs(got - expected) <= tolerance + 1e-9;
      return { what, source, standing, expected, got, tolerance, unit, ok };
    },
    /** A word or name that must be the same. */
    text(what: string, expected: string, got: string): EvidenceRow {
      return { what, source, standing, expected, got, tolerance: null, unit: '', ok: expected === got };
    },
  };
}

/** Half a unit in the last of so many decimals: what a figure printed with them can be off by rounding alone. */
export function printed(decimals: number): number {
  return 0.5 * 10 ** -decimals;
}

/** Numbers of a line of text; `-` gives null. */
function numbersOf(line: string): (number | null)[] {
  return line
    .trim()
    .split(/\s+/)
    .map(cell => (cell === '-' ? null : Number(cell)));
}

/** Numbers of a line in which none may be missing; throws a RangeError otherwise. */
export function allNumbersOf(line: string): number[] {
  return numbersOf(line).map(value => {
    if (value === null || Number.isNaN(value)) throw new RangeError(`not all numbers: ${line}`);
    return value;
  });
}
