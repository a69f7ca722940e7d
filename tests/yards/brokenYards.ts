/** Yards with bytes that are not kept in files here: too large, binary, other line ends, bombs. */

import { day, dayFromNumber, dayNumber } from '../../src/core/days.ts';
import type { PhotoFile } from '../../src/core/reading/draft.ts';
import type { SourceFile } from '../../src/core/reading/read.ts';
import type { Unread } from '../../src/core/reading/unreadFile.ts';

type BreakYard = (files: readonly SourceFile[]) => SourceFile[];

const encoder = new TextEncoder();

/** Replaces the bytes of one file; adds it when it is not there. */
function withBytes(path: string, change: (bytes: Uint8Array) => Uint8Array): BreakYard {
  return files => {
    const old = files.find(file => file.path === path)?.bytes ?? new Uint8Array();
    return [...files.filter(file => file.path !== path), { path, bytes: change(old) }];
  };
}

function withText(path: string, change: (text: string) => string): BreakYard {
  return withBytes(path, bytes => encoder.encode(change(new TextDecoder().decode(bytes))));
}

const lots = 'lots/2026-layers.yaml';

/** Two years of days with the same weather, and a place that takes its climate from them. */
const shortDailyRecord: BreakYard = files => {
  const start = dayNumber(day('2020-01-01'));
  const rows = Array.from({ length: 731 }, (_, index) => `${dayFromNumber(start + index)},2,12`);
  const fill = withText('places/lexington.csv', () => `date,tmin_c,tmax_c\n${rows.join('\n')}\n`);
  const name = withText('places/lexington-ky.yaml', text =>
    text.replace(/^tmax_c: .*\ntmin_c: .*$/m, 'daily: lexington.csv'),
  );
  return name(fill(files));
};

/** Nine levels of ten references each: a thousand million values in a few hundred bytes. */
const aliasBomb = [
  'a: &a [x, x, x, x, x, x, x, x, x, x]',
  ...[...'bcdefghi'].map((name, index) => {
    const below = 'abcdefgh'[index];
    return `${name}: &${name} [${Array(10).fill(`*${below}`).join(', ')}]`;
  }),
].join('\n');

/** Files as `src/contentFolder.ts` hands them on when they are not read. */
const unread = (path: string, why: Unread, detail = ''): SourceFile => ({
  path,
  bytes: new Uint8Array(),
  unread: { why, detail },
});

export const brokenYards: Record<string, BreakYard> = {
  'unread-files': files => [
    ...files.filter(({ path }) => path !== 'species/fig.yaml' && path !== 'walks/2026-10-17.csv'),
    unread('species/fig.yaml', 'not-permitted'),
    unread('lots/more.yaml', 'special'),
    unread('walks/2026-10-17.csv', 'failed', 'EIO'),
    unread('places/Big.yaml', 'too-large', '3072 MiB'),
    unread('notes', 'outside'),
  ],
  'hidden-signs': withText(lots, text =>
    text
      .replace('cultivar: bellwether', 'cultivar: "bell\\u202Ewether\\0\\x1b[31m"')
      .replace('raised:', 'rai\u202esed:'),
  ),
  'a-very-long-word': withText('yard.yaml', text =>
    text.replace('home: lexington-ky', `home: ${'lexington-'.repeat(400)}ky\n${'k'.repeat(900)}: 1`),
  ),
  'short-daily-record': shortDailyRecord,
  'nothing-at-all': () => [],
  'five-megabytes': withBytes(lots, () => new Uint8Array(5 * 1024 * 1024).fill(0x61)),
  'zero-byte': withBytes(lots, bytes => new Uint8Array([...bytes.subarray(0, 40), 0, ...bytes.subarray(40)])),
  'old-encoding': withBytes(
    lots,
    bytes => new Uint8Array([...bytes, ...encoder.encode('# caf'), 0xe9, 0x0a]),
  ),
  'picture-as-yaml': withBytes(
    'yard.yaml',
    () => new Uint8Array([0xff, 0xd8, 0xff, 0xe0, 0, 16, 74, 70, 73, 70]),
  ),
  'wide-encoding': withBytes('yard.yaml', () => new Uint8Array([0xff, 0xfe, 0x6e, 0, 0x61, 0])),
  'empty-file': withBytes(lots, () => new Uint8Array()),
  'blank-file': withText(lots, () => '\n  \n\n'),
  'byte-order-mark-is-fine': withBytes(lots, bytes => new Uint8Array([0xef, 0xbb, 0xbf, ...bytes])),
  'byte-order-mark-in-front-matter-is-fine': withBytes(
    'cultivars/bellwether.md',
    bytes => new Uint8Array([0xef, 0xbb, 0xbf, ...bytes]),
  ),
  'windows-line-ends-are-fine': files =>
    files.map(({ path, bytes }) => ({
      path,
      bytes: encoder.encode(new TextDecoder().decode(bytes).replaceAll('\n', '\r\n')),
    })),
  'place-after-windows-line-ends': withText(lots, text =>
    text.replace('cultivar: bellwether', 'cultivar: bellweather').replaceAll('\n', '\r\n'),
  ),
  'tab-indentation': withText(lots, text => text.replace('  method: air-layer', '\tmethod: air-layer')),
  'alias-bomb': withText('yard.yaml', () => aliasBomb),
  'deep-nesting': withText('yard.yaml', () => '['.repeat(100_000)),
  'deep-nesting-closed': withText('yard.yaml', () => `${'['.repeat(50_000)}${']'.repeat(50_000)}`),
  'many-keys': withText('yard.yaml', () =>
    Array.from({ length: 6_000 }, (_, index) => `k${index % 5_999}: 1`).join('\n'),
  ),
  'broken-yard-spares-the-rest': withText('yard.yaml', text =>
    text.replace('currency: USD', 'currency: [USD'),
  ),
  'no-front-matter': withText('cultivars/inkpot.md', () => 'A mulberry for tests.\n'),
  'open-front-matter': withText('cultivars/inkpot.md', text => text.replace('\n---\n', '\n')),
  'deep-quotes': withText('cultivars/inkpot.md', text => `${text}\n${'> '.repeat(20_000)}<b>\n`),
  'deep-blocks': withText(
    'guides/first-winter.md',
    text => `${text}\n${':::part{winter="frozen"}\n'.repeat(3_000)}`,
  ),
  'semicolons-are-fine': withText('walks/2026-10-17.csv', text => text.replaceAll(',', ';')),
  'tabs-in-a-table-are-fine': withText('walks/2026-10-17.csv', text => text.replaceAll(',', '\t')),
  'spreadsheet-margins-are-fine': withText(
    'walks/2026-10-17.csv',
    text => `${text.trim().replaceAll('\n', ',,\n')},,\n,,,,,,,,,,,\n`,
  ),
};

/** Yards whose photographs are as large as no repository should keep them. */
export const heavyYards: Record<string, (photos: readonly PhotoFile[]) => PhotoFile[]> = {
  'a-large-photograph': photos =>
    photos.map(photo => ({ ...photo, facts: photo.facts && { ...photo.facts, size: 12_400_000 } })),
};
