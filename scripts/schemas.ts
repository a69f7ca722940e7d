/** `npm run schemas`: writes the JSON Schemas of the records for editors, from the same schemas that check them. */

import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { recordSchemas } from '../src/core/reading/schemas.ts';
import { writeWhole } from '../src/files.ts';
import { readFlags, runIfMain } from './command.ts';

const help = `Writes the JSON Schemas of the records to src/schemas/, for completion and help in editors.

  npm run schemas
  npm run schemas -- --check    writes nothing; ends with code 1 when a file is out of date
`;

const folder = join(dirname(dirname(fileURLToPath(import.meta.url))), 'src/schemas');

function written(path: string): string | null {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return null;
  }
}

/** Names of the schema files that are missing or out of date. */
export function staleSchemas(): string[] {
  return [...recordSchemas()]
    .filter(([name, text]) => written(join(folder, name)) !== text)
    .map(([name]) => name);
}

export async function main(words: string[]): Promise<number> {
  const { values } = readFlags(words, help, { check: { type: 'boolean' } });
  const stale = staleSchemas();
  if (values.check) {
    for (const name of stale)
      process.stderr.write(`src/schemas/${name} is out of date; run npm run schemas.\n`);
    return stale.length === 0 ? 0 : 1;
  }
  const schemas = recordSchemas();
  for (const name of stale) await writeWhole(join(folder, name), schemas.get(name)!);
  process.stdout.write(
    `${stale.length === 0 ? 'All schemas are up to date' : `Wrote ${stale.join(', ')}`}.\n`,
  );
  return 0;
}

await runIfMain(import.meta, main);
