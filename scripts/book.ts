/** `npm run book`: the private book of the yard, in a folder of its own. */

import { mkdir } from 'node:fs/promises';
import { homedir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { yardBook } from '../src/book/book.ts';
import { bookPages } from '../src/book/bookPages.ts';
import { followed, isWithin, OutputError, outputFolder } from '../src/build/outputFolder.ts';
import { contentDir, privateDir, shownFolder } from '../src/content.ts';
import { assemble } from '../src/core/catalogue.ts';
import { currencyDecimals } from '../src/core/money.ts';
import { writeWhole } from '../src/files.ts';
import { readFlags, refuseLooseWords, runIfMain, UsageError } from './command.ts';
import { soundContent } from './soundContent.ts';

const root = resolve(dirname(fileURLToPath(import.meta.url)), '..');

const help = `Writes the private book of the yard into .yard/book/: what waits for what, prices beside costs, plants set aside and people who wait, what was
sold and for how much, what has not been looked at for long, cartons. It names people and costs, so it is never put into the site.

  npm run book
  --out FOLDER      another folder; not in the site, and not among the records
  --as-of DAY
  --help
`;

/** Throws where the book would lie in the site, among the records or in the program. */
function bookFolder(asked: string): string {
  const around = { root, content: [contentDir(), privateDir(contentDir())], home: homedir() };
  let folder: string;
  try {
    folder = outputFolder(asked, around);
  } catch (problem) {
    if (!(problem instanceof OutputError)) throw problem;
    throw new UsageError(
      `the book is not written into ${shownFolder(asked)}, which is a place for records, for the program or for something else. Leave --out away, or name an empty folder.`,
    );
  }
  const sites = [
    resolve(process.env.OUT_DIR ?? join(root, 'dist')),
    join(root, 'dist'),
    join(root, 'public'),
  ];
  if (sites.some(site => isWithin(followed(site), folder)))
    throw new UsageError(
      `${asked} lies in the site, which is published; the book names people and costs. Leave --out away, or name another folder.`,
    );
  return folder;
}

export async function main(words: string[]): Promise<number> {
  const { values, positionals } = readFlags(words, help, {
    out: { type: 'string' },
    'as-of': { type: 'string' },
  });
  refuseLooseWords(positionals);
  const folder = bookFolder(resolve(values.out ?? join(root, '.yard/book')));
  const { asOf, reading, records } = await soundContent({ asOf: values['as-of'] });
  const all = assemble(records, asOf, new Map());
  const book = yardBook(all, reading.orders, records.yard.costs, currencyDecimals(records.yard.currency));
  await mkdir(folder, { recursive: true, mode: 0o700 });
  for (const [name, text] of bookPages(all, book)) await writeWhole(join(folder, name), text);
  process.stdout.write(`${shownFolder(join(folder, 'index.html'))}\n`);
  return 0;
}

await runIfMain(import.meta, main);
