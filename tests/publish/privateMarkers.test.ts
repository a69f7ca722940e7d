/** A marker in every field that is private, in the private folder and in public files: none of them is in any byte of the site. */

import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { reservationColumns, saleColumns, waitingColumns } from '../../src/core/records/orders.ts';
import { buildsAlone } from '../buildsAlone.ts';
import { buildYard, writeSmallYard } from './smallYard.ts';

buildsAlone();

const scratch = mkdtempSync(join(tmpdir(), 'leafdrop-markers-'));
const content = join(scratch, 'content');
const out = join(scratch, 'out');
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

let made = 0;
const markers: string[] = [];
/** Words no page has by chance. */
function marker(field: string): string {
  made += 1;
  const words = `Quizzaciously ${field} number ${made}zq`;
  markers.push(words);
  return words;
}

/** A row with a marker in each column of free text. */
function table(columns: object, known: Record<string, string>): string {
  const names = Object.keys(columns);
  const row = names.map(name => known[name] ?? (['to', 'note'].includes(name) ? marker(name) : ''));
  return `${names.join(',')}\n${row.join(',')}\n`;
}

beforeAll(() => {
  writeSmallYard(content);
  const yard = join(content, 'yard.yaml');
  writeFileSync(yard, readFileSync(yard, 'utf8').replace(/^private_note:[\s\S]*$/m, ''));
  const [cultivar = '', other = ''] = readdirSync(join(content, 'cultivars'));
  const lotFile = readdirSync(join(content, 'lots'))[0]!;
  const ids = [...readFileSync(join(content, 'lots', lotFile), 'utf8').matchAll(/lot: (\S+)/g)].map(
    ([, id]) => id!,
  );
  const walk = readdirSync(join(content, 'walks')).at(-1)!;
  const notesIn = (text: string) =>
    text.replace(/^private_note:.*\n(?: .*\n)*/gm, '').replace(/^requests:.*\n/gm, '');
  for (const name of [cultivar, other]) {
    const path = join(content, 'cultivars', name);
    writeFileSync(path, notesIn(readFileSync(path, 'utf8')));
  }
  const file = join(content, 'cultivars', other);
  writeFileSync(
    file,
    readFileSync(file, 'utf8').replace(/^species:/m, `private_note: ${marker('cultivar')}\nspecies:`),
  );
  const folder = join(content, 'private');
  for (const each of ['cultivars', 'lots', 'walks']) mkdirSync(join(folder, each), { recursive: true });
  writeFileSync(join(folder, 'yard.yaml'), `private_note: ${marker('yard')}\n`);
  writeFileSync(
    join(folder, 'cultivars', cultivar.replace('.md', '.yaml')),
    `requests: 98765\nprivate_note: ${marker('cultivar')}\n`,
  );
  writeFileSync(join(folder, 'lots/notes.yaml'), `- { lot: ${ids[0]}, private_note: ${marker('lot')} }\n`);
  writeFileSync(join(folder, 'walks', walk), `lot,note\n${ids[0]},${marker('walk')}\n`);
  const lot = ids[1]!;
  const known = {
    day: '2026-11-20',
    since: '2026-11-20',
    lot,
    plants: '1',
    cultivar: cultivar.replace('.md', ''),
  };
  writeFileSync(join(folder, 'sales.csv'), table(saleColumns, { ...known, price: '43.21' }));
  writeFileSync(
    join(folder, 'reservations.csv'),
    table(reservationColumns, { ...known, until: '2026-12-24' }),
  );
  writeFileSync(join(folder, 'waiting.csv'), table(waitingColumns, known));
});

function everyByte(path: string): Buffer[] {
  const bytes = readFileSync(path);
  try {
    return [bytes, gunzipSync(bytes)];
  } catch {
    // Not compressed as a whole.
    return [bytes];
  }
}

test('no marker is in any file', () => {
  expect(markers.length).toBe(11);
  const { status, stderr } = buildYard(content, out);
  expect(status, stderr).toBe(0);
  const files = readdirSync(out, { recursive: true, withFileTypes: true }).filter(each => each.isFile());
  expect(files.length).toBeGreaterThan(100);
  const found = files.flatMap(({ parentPath, name }) =>
    everyByte(join(parentPath, name)).flatMap(bytes =>
      ['Quizzaciously', '98765', 'space_week']
        .filter(word => bytes.includes(word))
        .map(word => `${name}: ${word}`),
    ),
  );
  expect(found).toEqual([]);
});
