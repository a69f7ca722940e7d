/** `npm run build`: builds the site of the content. */

import { join } from 'node:path';
import { build } from '../src/build/publish.ts';
import { contentDir, shownFolder } from '../src/content.ts';
import { basePath } from './basePath.ts';
import { readFlags, runIfMain } from './command.ts';

const help = `Builds the site from content/ into dist/.

  npm run build                       for today in the yard's time zone
  npm run build -- --as-of 2026-11-25 a look at another day; new addresses are not listed
  npm run build -- --base /orchard/   for a site that lives below a path
  npm run build -- --afresh           makes everything anew, also what has not changed
  npm run build -- --leave-list       does not add new addresses to content/addresses.csv: for a site only looked at
  npm run build -- --preview          the same for a proposal: search engines are asked to leave the site out

CONTENT_DIR and OUT_DIR name other folders; BASE_PATH does what --base does.
`;

export async function main(words: string[]): Promise<number> {
  const { values } = readFlags(words, help, {
    'as-of': { type: 'string' },
    base: { type: 'string' },
    afresh: { type: 'boolean' },
    'leave-list': { type: 'boolean' },
    preview: { type: 'boolean' },
  });
  const site = await build({
    asOf: values['as-of'],
    base: basePath(values.base),
    afresh: values.afresh,
    leaveList: values['leave-list'],
    preview: values.preview,
  });
  if (site === null) return 1;
  const kept = site.unchanged > 0 ? `, ${site.unchanged} unchanged ones kept` : '';
  process.stdout.write(`Built ${site.made} files${kept}, for ${site.asOf}, into ${site.out}\n`);
  if (site.listed > 0) {
    const count = `${site.listed} new ${site.listed === 1 ? 'address' : 'addresses'}`;
    process.stdout.write(
      `Listed ${count} in ${join(shownFolder(contentDir()), 'addresses.csv')}; commit it with the rest.\n`,
    );
  }
  return 0;
}

await runIfMain(import.meta, main);
