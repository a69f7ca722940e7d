/** `npm run deploy:check`: proves a built site below its base path before it is put online. */

import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { outDir } from '../src/build/job.ts';
import { shownFolder } from '../src/content.ts';
import { basePath } from './basePath.ts';
import { readFlags, refuseLooseWords, runIfMain, UsageError } from './command.ts';
import { serve } from './serve.ts';
import { crawlFaults } from './siteCrawl.ts';
import { soundContent } from './soundContent.ts';

const help = `Serves the built site on this machine as the host will, asks for every page and every link, and lists what is not right.

  npm run deploy:check
  npm run deploy:check -- --base /orchard/    for a site that lives below a path

OUT_DIR and CONTENT_DIR name other folders; BASE_PATH does what --base does. Ends with code 1 when something is not right.
`;

/** Faults shown at most: one wrong link stands on every page. */
const MOST_FAULTS = 40;

/** The base path a site was built for: that of its style sheets. Null when its first page names none. */
function builtBase(folder: string): string | null {
  const first = readFileSync(join(folder, 'index.html'), 'utf8');
  return /<link rel="stylesheet" href="([^"]*?\/)assets\//.exec(first)?.[1] ?? null;
}

function filesOf(folder: string): string[] {
  return (
    readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter(entry => entry.isFile())
      .map(entry => relative(folder, join(entry.parentPath, entry.name)).replaceAll(sep, '/'))
      // Tables for the host itself, which are not asked for.
      .filter(file => file !== '_headers' && file !== '_redirects')
      .sort()
  );
}

/** Files without which a part of the site is dead although no link shows it. */
const needed = ['404.html', 'robots.txt', 'pagefind/pagefind.js', 'pagefind/pagefind-entry.json'];

export interface ProvedSite {
  files: number;
  faults: string[];
}

/** Every fault of the site in a folder when it is served below `base`. Throws a UsageError when there is no such site. */
export async function proveSite(folder: string, base: string, address: string): Promise<ProvedSite> {
  if (!existsSync(join(folder, 'index.html'))) {
    throw new UsageError(`there is no built site in ${shownFolder(folder)}; run npm run build first.`);
  }
  const built = builtBase(folder);
  if (built !== base) {
    const rebuild = `npm run build${base === '/' ? '' : ` -- --base ${base}`}`;
    return {
      files: 0,
      faults: [
        `the site was built for ${built ?? 'no known path'} and is to be served at ${base}: rebuild it with ${rebuild}`,
      ],
    };
  }
  const files = filesOf(folder);
  const present = new Set(files);
  const absent = needed.filter(file => !present.has(file)).map(file => `${file} was not built`);
  const site = await serve(folder, base, 0);
  try {
    const { origin } = new URL(site.address);
    return {
      files: files.length,
      faults: [...absent, ...(await crawlFaults({ origin, base, address, files }))],
    };
  } finally {
    await site.stop();
  }
}

export async function main(words: string[]): Promise<number> {
  const { values, positionals } = readFlags(words, help, {
    base: { type: 'string' },
  });
  refuseLooseWords(positionals);
  const { records } = await soundContent();
  const base = basePath(values.base);
  const { files, faults } = await proveSite(outDir(), base, records.yard.address);
  if (faults.length === 0) {
    process.stdout.write(
      `All is well below ${base}: ${files} files asked for, every link leads somewhere.\n`,
    );
    return 0;
  }
  const told = faults.slice(0, MOST_FAULTS);
  const more = faults.length > told.length ? [`and ${faults.length - told.length} more`] : [];
  process.stderr.write(`Not to be put online yet (${faults.length}):\n${[...told, ...more].join('\n')}\n`);
  return 1;
}

await runIfMain(import.meta, main);
