/** `npm run photos`: what the originals of photographs weigh, and making large ones smaller. */

import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { contentDir, shownFolder } from '../src/content.ts';
import { writeWhole } from '../src/files.ts';
import { shrunk, worthShrinking } from '../src/photos/shrink.ts';
import { readFlags, refuseLooseWords, runIfMain, UsageError } from './command.ts';

const help = `Says what the originals in content/photos weigh, and makes large ones smaller where they are.

  npm run photos
  npm run photos -- --shrink

  --shrink          makes originals of more than ${worthShrinking / 1e6} MB smaller in their place: turned upright, in their colors, without the place
                    where they were taken, and larger than anything the site shows. What was committed before stays in git.
  --help

CONTENT_DIR names another content folder.
`;

const inWords = (bytes: number) => `${(bytes / 1e6).toFixed(1)} MB`;

async function shrinkOne(path: string, name: string): Promise<number> {
  const original = await readFile(path);
  const result = await shrunk(original).catch((problem: unknown) => ({
    kept: `cannot be read (${problem instanceof Error ? problem.message : problem})`,
  }));
  if ('kept' in result) {
    if (original.length >= worthShrinking)
      process.stdout.write(`${name}: ${inWords(original.length)}, ${result.kept}\n`);
    return 0;
  }
  await writeWhole(path, result.bytes);
  process.stdout.write(`${name}: ${inWords(original.length)}, now ${inWords(result.bytes.length)}\n`);
  return original.length - result.bytes.length;
}

export async function main(words: string[]): Promise<number> {
  const { values, positionals } = readFlags(words, help, {
    shrink: { type: 'boolean' },
  });
  refuseLooseWords(positionals);
  const folder = join(contentDir(), 'photos');
  const entries = await readdir(folder, { withFileTypes: true }).catch(() => []);
  const names = entries
    .filter(each => each.isFile() && !each.name.startsWith('.'))
    .map(({ name }) => name)
    .sort();
  if (names.length === 0) throw new UsageError(`there are no photographs in ${shownFolder(folder)}.`);
  if (values.shrink) {
    let saved = 0;
    for (const name of names) saved += await shrinkOne(join(folder, name), name);
    process.stdout.write(
      saved > 0 ? `Smaller by ${inWords(saved)} in all.\n` : 'Nothing had to be made smaller.\n',
    );
    return 0;
  }
  const sizes = await Promise.all(
    names.map(async name => ({ name, size: (await readFile(join(folder, name))).length })),
  );
  const large = sizes.filter(({ size }) => size >= worthShrinking).sort((a, b) => b.size - a.size);
  for (const { name, size } of large) process.stdout.write(`${name}: ${inWords(size)}\n`);
  const total = sizes.reduce((sum, { size }) => sum + size, 0);
  const more = large.length > 0 ? ` ${large.length} of them can be made smaller with --shrink.` : '';
  process.stdout.write(`${names.length} originals, ${inWords(total)} in all.${more}\n`);
  return 0;
}

await runIfMain(import.meta, main);
