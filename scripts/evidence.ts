/** `npm run evidence`: the models against published figures and long records, as tables. */

import { evidence, records } from '../src/content.ts';
import { countByWorth, type EvidenceRow, type EvidenceTable } from '../src/core/evidence/table.ts';
import { readFlags, refuseLooseWords, runIfMain } from './command.ts';
import { compareFile } from './observations.ts';

const help = `Checks the models against published figures and long records, and prints the tables.

  npm run evidence
  npm run evidence -- --json       the tables as JSON
  npm run evidence -- --failed     only the rows that fail
  npm run evidence -- --observations FILE.csv
                                   dated observations of your own beside computed days (with --json as data)

Columns of the file: id, species (botanical name), crop (main or breba), ripening_class, event (harvest_begin, full_bloom,
budbreak, leafout, leaf_fall), date_from and date_to (MM-DD), place, lat, lon, elevation_m; others are passed over.

Ends with code 1 when a row fails, 0 otherwise.
`;

/** Digits enough to see a difference of a hundredth of the tolerance. */
function shown(value: number | string): string {
  return typeof value === 'number' ? String(Number(value.toPrecision(7))) : value;
}

function rowText({ what, expected, got, tolerance, unit, ok }: EvidenceRow): string {
  const within = tolerance === null ? '' : `, within ${shown(tolerance)}`;
  const unitText = unit === '' ? '' : ` ${unit}`;
  return `  ${ok ? 'ok  ' : 'FAIL'}  ${what}: ${shown(got)} (expected ${shown(expected)}${within}${unitText})`;
}

function tableText(table: EvidenceTable, rows: readonly EvidenceRow[]): string {
  const passed = table.rows.filter(({ ok }) => ok).length;
  const sources = [...new Set(rows.map(({ source, standing }) => `  ${standing}: ${source}`))];
  return [
    `${table.title} [${table.id}]  ${passed} of ${table.rows.length} rows`,
    `  ${table.about}`,
    ...(table.weak === null ? [] : [`  Weak: ${table.weak}`]),
    ...sources,
    ...rows.map(rowText),
    ...table.notChecked.map(({ what, why }) => `  left out: ${what}: ${why}`),
    '',
  ].join('\n');
}

export async function main(words: string[]): Promise<number> {
  const { values, positionals } = readFlags(words, help, {
    json: { type: 'boolean' },
    failed: { type: 'boolean' },
    observations: { type: 'string' },
  });
  refuseLooseWords(positionals);
  if (values.observations !== undefined) {
    const species = [...(await records()).species.values()];
    return compareFile(values.observations, values.json === true, species);
  }
  const tables = await evidence();
  const failed = tables.flatMap(({ rows }) => rows.filter(({ ok }) => !ok));
  if (values.json) {
    process.stdout.write(`${JSON.stringify({ version: 1, tables }, null, 2)}\n`);
  } else {
    for (const table of tables) {
      const rows = values.failed ? table.rows.filter(({ ok }) => !ok) : table.rows;
      if (rows.length > 0) process.stdout.write(`${tableText(table, rows)}\n`);
    }
    const count = tables.reduce((sum, { rows }) => sum + rows.length, 0);
    const { outside, worked, own } = countByWorth(tables);
    process.stdout.write(
      `${count} rows in ${tables.length} tables, ${failed.length} failed: ${outside} beside what others printed or observed, ` +
        `${worked} beside the same formula worked separately, ${own} our own figures or common practice\n`,
    );
  }
  return failed.length === 0 ? 0 : 1;
}

await runIfMain(import.meta, main);
