/** What the comparison of somebody's file of observations says, as data and as text. */
import { type ComparedRow, type Errors, errorsOf } from './comparison.ts';

/** A row of the file: the words of the file beside the comparison. */
export interface ReportRow extends Omit<ComparedRow, 'observation'> {
  readonly id: string;
  /** Line of the file, counted from 1. */
  readonly line: number;
  readonly species: string;
  /** Ripening class as the file has it. */
  readonly class: string;
  readonly event: string;
  readonly place: string;
  readonly observed: readonly [from: string, to: string];
}

export interface ObservationReport {
  readonly rows: readonly Pick<
    ReportRow,
    'id' | 'species' | 'class' | 'observed' | 'computed' | 'errorDays'
  >[];
  readonly species: Readonly<Record<string, Errors>>;
}

const isRipe = ({ event }: Pick<ReportRow, 'event'>) => event === 'harvest_begin';

/** Rows and, by species, the errors of first ripe fruit. */
export function observationReport(rows: readonly ReportRow[]): ObservationReport {
  const groups = Map.groupBy(rows.filter(isRipe), ({ species }) => species);
  return {
    rows: rows.map(({ id, species, class: name, observed, computed, errorDays }) => ({
      id,
      species,
      class: name,
      observed,
      computed,
      errorDays,
    })),
    species: Object.fromEntries([...groups].map(([name, own]) => [name, errorsOf(own)])),
  };
}

const signed = (days: number) => `${days > 0 ? '+' : ''}${days}`;

function errorsText({ n, meanAbsoluteDays, never }: Errors): string {
  const mean =
    meanAbsoluteDays === null ? 'no day computed' : `mean error ${meanAbsoluteDays.toFixed(1)} days`;
  return `${n} rows, ${mean}${never === 0 ? '' : `, ${never} never`}`;
}

function rowText({
  id,
  place,
  class: name,
  event,
  observed,
  computed,
  errorDays,
  reason,
  note,
}: ReportRow): string {
  const [from, to] = observed;
  const seen = from === to ? from : `${from} to ${to}`;
  const got =
    reason !== null
      ? `not computed: ${reason}`
      : computed === null
        ? 'computed never'
        : `computed ${computed} (${signed(errorDays ?? 0)})`;
  return `  ${id}  ${place}, ${name}, ${event}: ${seen}, ${got}${note === null ? '' : ` [${note}]`}`;
}

/** The same as text: rows by species and event, then the errors by species and class. */
export function observationText(rows: readonly ReportRow[]): string {
  const bySpecies = Map.groupBy(rows, ({ species }) => species);
  const parts = [...bySpecies].map(([species, own]) => {
    const ripe = own.filter(isRipe);
    const byClass = [...Map.groupBy(ripe, row => row.class)].map(
      ([name, some]) => `  first ripe, ${name}: ${errorsText(errorsOf(some))}`,
    );
    const others = [
      ...Map.groupBy(
        own.filter(row => !isRipe(row)),
        ({ event }) => event,
      ),
    ].map(([event, some]) => `  ${event}: ${errorsText(errorsOf(some))}`);
    return [
      species,
      ...own.map(rowText),
      `  first ripe: ${errorsText(errorsOf(ripe))}`,
      ...byClass,
      ...others,
      '',
    ].join('\n');
  });
  const ripe = rows.filter(isRipe);
  return `${parts.join('\n')}\nFirst ripe fruit of all species: ${errorsText(errorsOf(ripe))}\nErrors are days from the middle of the observed range; + means computed late.\n`;
}
