import { readdirSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { readContentFiles } from './contentFolder.ts';
import { parseDay } from './core/days.ts';
import { readRecords, type SourceFile } from './core/reading/read.ts';
import { readingOf } from './core/reading/readers.ts';
import { hashOf } from './hash.ts';
import { reuseReadings } from './keptReadings.ts';
import { cacheFolder, takeKeptSince } from './resultStore.ts';

const asOf = parseDay('2026-11-25')!;
const name = `reading test ${process.pid}`;
afterAll(() => rmSync(join(cacheFolder, 'reading', hashOf(name)), { force: true }));

/** The files with bytes of their own: what was read of others is not known of them. */
const anew = (files: readonly SourceFile[]) => files.map(file => ({ ...file, bytes: file.bytes.slice() }));
const countKnown = (files: readonly SourceFile[]) =>
  files.filter(({ bytes }) => readingOf(bytes) !== undefined).length;

describe('kept readings', () => {
  it('give the records of the demonstration as they are read the first time, and again after a change of some files', async () => {
    const { files, photos } = await readContentFiles(resolve('content'));
    const first = anew(files);
    const keepFirst = await reuseReadings(name, first);
    expect(countKnown(first)).toBe(0);
    const read = readRecords(first, { asOf, photos });
    expect(read.records).not.toBeNull();
    await keepFirst();

    const second = anew(files);
    await reuseReadings(name, second);
    expect(countKnown(second)).toBeGreaterThan(150);
    expect(readRecords(second, { asOf, photos })).toEqual(read);

    const changed = anew(files).map(file =>
      /^(?:lots|walks)\//.test(file.path)
        ? { ...file, bytes: new TextEncoder().encode(`${new TextDecoder().decode(file.bytes)}\n`) }
        : file,
    );
    await reuseReadings(name, changed);
    expect(countKnown(changed)).toBeLessThan(countKnown(second));
    expect(readRecords(changed, { asOf, photos })).toEqual(readRecords(anew(changed), { asOf, photos }));
  });

  it('are not taken for a file of another name, for another currency, or afresh', async () => {
    const { files, photos } = await readContentFiles(resolve('content'));
    const euros = anew(files).map(file => {
      const text = new TextDecoder().decode(file.bytes);
      const bytes = new TextEncoder().encode(text.replace(/^currency: \w+/m, 'currency: CHF'));
      return file.path === 'yard.yaml' ? { ...file, bytes } : file;
    });
    await reuseReadings(name, euros);
    expect(readRecords(euros, { asOf, photos })).toEqual(readRecords(anew(euros), { asOf, photos }));
    const renamed = anew(files).map(file => ({
      ...file,
      path: file.path.replace(/^(cultivars|lots)\/(?=.)/, '$1/x-'),
    }));
    await reuseReadings(name, renamed);
    expect(readRecords(renamed, { asOf, photos })).toEqual(readRecords(anew(renamed), { asOf, photos }));
    takeKeptSince(Date.now() + 60_000);
    const afresh = anew(files);
    await reuseReadings(name, afresh);
    takeKeptSince(0);
    expect(countKnown(afresh)).toBe(0);
  });

  it('are none of files with a problem of their own', async () => {
    for (const yard of readdirSync('tests/yards', { withFileTypes: true })
      .filter(entry => entry.isDirectory())
      .slice(0, 40)) {
      const { files, photos } = await readContentFiles(join('tests/yards', yard.name));
      const first = anew(files);
      const keep = await reuseReadings(name, first);
      const read = readRecords(first, { asOf, photos });
      await keep();
      const second = anew(files);
      await reuseReadings(name, second);
      expect(readRecords(second, { asOf, photos }), yard.name).toEqual(read);
    }
  });
});
