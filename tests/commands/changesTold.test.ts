/** `npm run changes` names what an edit changes on the site, whatever kind of edit it is; one row an edit. And no warning is new twice. */

import { cpSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { changes } from '../../scripts/changes.ts';
import { reportText } from '../../src/site/reports/changeReport.ts';
import { yardsFolder } from '../yards/loadYard.ts';
import { commitAll, edit, git, startRepository } from './gitYard.ts';

const scratch = mkdtempSync(join(tmpdir(), 'leafdrop-told-'));
const content = join(scratch, 'content');

function picture(red: number, where?: string): Promise<Buffer> {
  const plain = sharp({
    create: { width: 900, height: 600, channels: 3, background: { r: red, g: 90, b: 90 } },
  });
  const placed = where ? plain.withExif({ IFD3: { GPSLatitude: where, GPSLatitudeRef: 'N' } }) : plain;
  return placed.jpeg().toBuffer();
}

beforeAll(async () => {
  startRepository(scratch);
  cpSync(join(yardsFolder, 'base/content'), content, { recursive: true });
  writeFileSync(join(content, 'photos/bellwether.jpg'), await picture(120, '38/1 2/1 0/1'));
  writeFileSync(join(content, '.gitignore'), 'videos/unlisted.yaml\n');
  commitAll(scratch, 'Open the yard');
});
afterEach(() => {
  git(scratch, 'checkout', '--quiet', '--', '.');
  git(scratch, 'clean', '--quiet', '--force', '-d', '-x');
  vi.unstubAllEnvs();
});
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

async function report(): Promise<string> {
  vi.stubEnv('CONTENT_DIR', content);
  return reportText(await changes({ asOf: '2026-11-25' }));
}

type Edit = [file: string, find: string, put: string];

const layers = 'lots/2026-layers.yaml';
const bellwether = 'cultivars/bellwether.md';
const held = '  hold:\n    since: 2026-10-01\n    why: Not yet rooted.\n';

/** What is edited, how, and the lines the report has for it. */
const rows: [string, Edit, string[]][] = [
  [
    'a hold on a lot that is not ready',
    [
      'lots/2025-grafts.yaml',
      '  raised: 6\n',
      '  raised: 6\n  hold:\n    since: 2026-11-20\n    why: Being looked at.\n',
    ],
    ['inkpot-2501 Inkpot, held since November 20, 2026: Being looked at.'],
  ],
  [
    'a hold taken back',
    [layers, held, ''],
    ['bellwether-2602 Bellwether, no longer held (was: Not yet rooted.)'],
  ],
  [
    'another reason of a hold',
    [layers, 'Not yet rooted.', 'Roots are thin.'],
    ['bellwether-2602 Bellwether, hold, why: "Not yet rooted." to "Roots are thin."'],
  ],
  [
    'a cultivar retired',
    [bellwether, 'offered: a-few', 'retired: 2026-11-01\noffered: a-few'],
    ['Bellwether, no longer raised, since November 1, 2026'],
  ],
  [
    'a name',
    [bellwether, 'name: Bellwether', 'name: Bellwether Late'],
    ['Bellwether Late, name: Bellwether to "Bellwether Late"'],
  ],
  [
    'a further name',
    [bellwether, 'species: fig\n', 'species: fig\nsynonyms: [Old Bell]\n'],
    ['Bellwether, synonyms: "Old Bell" added'],
  ],
  [
    'the flavor class of a cultivar',
    [bellwether, 'flavor: red-jam', 'flavor: toffee'],
    ['Bellwether, flavor class: red-jam to toffee'],
  ],
  [
    'a flavor class',
    ['yard.yaml', 'means: Brown sugar', 'means: Burnt sugar'],
    ['flavor class, toffee, meaning: "Brown sugar" to "Burnt sugar"'],
  ],
  [
    'a trait of the fruit',
    [bellwether, 'length_mm: 55', 'length_mm: 60'],
    ['Bellwether, fruit, length: 2.15 in (55 mm) to 2.35 in (60 mm)'],
  ],
  [
    'a trial',
    [bellwether, 'winter: died-back', 'winter: unhurt'],
    ['Bellwether, trials, A garden near Lexington, winter: died-back to unhurt'],
  ],
  [
    'climates a cultivar suits',
    [bellwether, 'season: [middle, long]', 'season: [long]'],
    ['Bellwether, suits, season: middle taken out'],
  ],
  [
    'a place it is not sent to',
    [
      'yard.yaml',
      'not_to: []',
      'not_to:\n    - region: Hawaii\n      why: Plants need a permit there.\n      checked: 2026-10-01',
    ],
    ['no longer sent to Hawaii: Plants need a permit there.'],
  ],
  ['days on the way', ['yard.yaml', 'transit_days: 3', 'transit_days: 4'], ['sending, transit days: 3 to 4']],
  [
    'days of sending',
    ['yard.yaml', 'weekdays: [mon, tue]', 'weekdays: [mon, wed]'],
    ['sending, days of sending: Wednesday added, Tuesday taken out'],
  ],
  [
    'the coldest weather sent in',
    ['yard.yaml', 'coldest_f: 20', 'coldest_f: 25'],
    ['sending, limits, dormant in a pot, plain, coldest weather sent in: 20 F (-6.5 C) to 25 F (-4 C)'],
  ],
  [
    'how to order',
    ['yard.yaml', 'how: Write to us.', 'how: Call us.'],
    ['ordering, how to order: "Write to us." to "Call us."'],
  ],
  [
    'days before sending',
    ['yard.yaml', 'lead_days: 3', 'lead_days: 5'],
    ['ordering, days before sending: 3 to 5'],
  ],
  [
    'a carton',
    ['yard.yaml', 'inner_in: [40, 6, 6]', 'inner_in: [20, 6, 6]'],
    ['cartons, Long slim, inner: 40, 6, 6 to 20, 6, 6'],
  ],
  [
    'hardiness of a species',
    ['species/fig.yaml', 'value: [12, 15]', 'value: [10, 13]'],
    ['fig, dormant established: 12 F (-11 C) - 15 F (-9.5 C) to 10 F (-12 C) - 13 F (-10.5 C)'],
  ],
  [
    'a figure by a hair',
    ['species/fig.yaml', 'root_injury: { value: -4,', 'root_injury: { value: -4.1,'],
    ['fig, root injury: -4 to -4.1'],
  ],
  [
    'the source of a figure',
    [
      'species/fig.yaml',
      'root_severe: { value: -7, unit: C, standing: ours, source: Test figure }',
      'root_severe: { value: -7, unit: C, standing: practice, source: Common practice }',
    ],
    ['fig, root severe: same value, other standing and source'],
  ],
  [
    'a caution',
    ['species/fig.yaml', 'burns skin in the sun', 'can burn skin in the sun'],
    [
      'fig, hazards, people-and-pets, caution: reworded: "The sap can burn skin in the sun; wear gloves and long sl..."',
    ],
  ],
  [
    'the text of a guide',
    ['guides/first-winter.md', 'Keep it cool', 'Keep it very cool'],
    ['The first winter of a fig, text: reworded: "Keep it very cool and just moist."'],
  ],
  [
    'the title of a guide',
    ['guides/first-winter.md', 'title: The first winter of a fig', 'title: A first winter'],
    ['A first winter, title: "The first winter of a fig" to "A first winter"'],
  ],
  [
    'the text of a cultivar',
    [bellwether, '- Ripens first.', '- Ripens early.'],
    ['Bellwether, text: reworded, 1 paragraph: "- Ripens early. - 5\' tall in a pot."'],
  ],
  [
    'a chapter of a video',
    ['videos/layering.yaml', 'title: The cut', 'title: Making the cut'],
    ['Layering a fig, chapters, 245, title: "The cut" to "Making the cut"'],
  ],
  [
    'the mean lows of a place',
    ['places/lexington-ky.yaml', 'tmin_c: [-3.9,', 'tmin_c: [-4.9,'],
    ['Lexington, mean lows: 1 month, January 25 F (-4 C) to 23 F (-5 C)'],
  ],
  [
    'the height of a place',
    ['places/lexington-ky.yaml', 'elevation_m: 298.7', 'elevation_m: 310'],
    ['Lexington, elevation: 298.7 to 310'],
  ],
  [
    'a form of sale',
    [layers, '  raised: 12\n  forms: [leafed-pot]', '  raised: 12\n  forms: [leafed-pot, bare-root]'],
    ['bellwether-2602 Bellwether, forms: bare-root added'],
  ],
  [
    'the order link of a lot',
    [layers, '  raised: 12\n', '  raised: 12\n  buy: https://tinwhistle.example/b\n'],
    ['bellwether-2602 Bellwether, order link: none to https://tinwhistle.example/b'],
  ],
  [
    'a height seen on a walk',
    ['walks/2026-10-17.csv', '12,,,20,none', '12,,,22,none'],
    ['bellwether-2602 Bellwether, seen, height: 8 in (20 cm) to 9 in (22 cm)'],
  ],
  [
    'the picture of a lot',
    [layers, 'alt: Figs on a branch', 'alt: Ripe figs'],
    ['bellwether-2601 Bellwether, photo, alt: "Figs on a branch" to "Ripe figs"'],
  ],
  [
    'the words about a price of its own',
    [layers, 'why: Small lot.', 'why: Few of them.'],
    ['bellwether-2602 Bellwether, price, why: "Small lot." to "Few of them."'],
  ],
];

describe('npm run changes names an edit of', () => {
  it.each(rows)('%s', async (_name, [file, find, put], lines) => {
    edit(content, file, find, put);
    const said = await report();
    for (const line of lines) expect(said).toContain(`  ${line}\n`);
    expect(said).toContain(`changed: ${file}`);
    expect(said).not.toContain('The site shows the same');
  });

  it('a photograph exchanged under its name', async () => {
    writeFileSync(join(content, 'photos/bellwether.jpg'), await picture(200, '38/1 2/1 0/1'));
    const said = await report();
    expect(said).toContain(
      'Photographs exchanged (1):\n  bellwether.jpg: shown by Bellwether and bellwether-2601\n',
    );
    expect(said).toContain('changed: photos/bellwether.jpg');
    expect(said).not.toContain('New warnings');
  });

  it('a private note, by saying that the site shows the same', async () => {
    edit(
      content,
      layers,
      'note: Struck in sand.',
      'note: Struck in sand.\n  private_note: Sold to a friend.',
    );
    const said = await report();
    expect(said).toContain('The site shows the same as before.');
    expect(said).toContain('Files (1):');
  });
});

describe('a warning', () => {
  it('about a photograph that was there before is not new', async () => {
    const photo = join(content, 'photos/bellwether.jpg');
    const said = await report();
    expect(said).toContain('No file differs.');
    expect(said).not.toContain('arning');
    writeFileSync(photo, await picture(120));
    expect(await report()).toContain('Warnings that are gone (1):');
    commitAll(scratch, 'Without its place');
    writeFileSync(photo, await picture(120, '38/1 2/1 0/1'));
    expect(await report()).toContain('New warnings (1):');
    git(scratch, 'reset', '--quiet', '--hard', 'HEAD~1');
  });

  it('about a file that git ignores, which is in no version, is not new', async () => {
    writeFileSync(
      join(content, 'videos/unlisted.yaml'),
      'title: Unlisted\ndate: 2026-06-02\nchapters:\n  - { time: "0:00", title: All of it, links: [cultivar:bellwether] }\n',
    );
    expect(await report()).toContain('No file differs.');
  });
});
