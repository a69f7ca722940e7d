/** A problem found while reading, as data. Words are made in one place: `formatDiagnostic`. */

export type Level = 'error' | 'warning' | 'info';

export interface Diagnostic {
  level: Level;
  /** Permanent id of the rule, such as `lot-cultivar`. */
  rule: string;
  /** Path below the content folder, with `/`, such as `lots/2026-layers.yaml`; '' when no file is meant. */
  file: string;
  /** 1-based; 0 when the problem has no line. */
  line: number;
  /** 1-based; 0 when the problem has no column. */
  column: number;
  /** Keys that lead to the value: `3.cultivar`; '' for a whole file. */
  path: string;
  /** What was found, as text; '' when nothing was. */
  got: string;
  /** What should stand there. */
  expected: string;
  /** One sentence: what is wrong. */
  message: string;
  /** One sentence: what to do. */
  remedy: string;
}
