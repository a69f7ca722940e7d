/** Content folders as an attacker, a careless copy or a broken disk leaves them, on a real file system. */

import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { createServer, type Server } from 'node:net';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import sharp from 'sharp';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { loadContent } from '../src/content.ts';
import { formatDiagnostic } from '../src/core/reading/report.ts';
import { yardsFolder } from './yards/loadYard.ts';

let folder: string;
let content: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'leafdrop-folder-'));
  content = join(folder, 'content');
  cpSync(join(yardsFolder, 'base/content'), content, { recursive: true });
  writeFileSync(join(folder, 'secret.yaml'), 'password: open-sesame\n');
});
afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

const at = (path: string) => join(content, path);

async function report(dir = content): Promise<string[]> {
  const { reading } = await loadContent({ dir, asOf: '2026-11-25' });
  return reading.diagnostics
    .filter(({ level }) => level === 'error')
    .map(each => formatDiagnostic(each, 'content'));
}

/** Whatever stands here is taken away just before it is opened. */
const vanishing = vi.hoisted(() => new Set<string>());
vi.mock('node:fs/promises', async importOriginal => {
  const files = await importOriginal<typeof import('node:fs/promises')>();
  type Call = (path: unknown, ...rest: unknown[]) => unknown;
  const after =
    (own: Call): Call =>
    async (path, ...rest) => {
      if (vanishing.delete(String(path))) await files.rm(String(path), { recursive: true });
      return own(path, ...rest);
    };
  return { ...files, open: after(files.open as Call), readdir: after(files.readdir as Call) };
});

const fifo = (path: string) => expect(spawnSync('mkfifo', [path]).status).toBe(0);

describe('one line each, with all other problems', () => {
  test('links out of the content, to folders, round in circles and to nothing', async () => {
    symlinkSync('../../secret.yaml', at('lots/secret.yaml'));
    symlinkSync('/dev/zero', at('walks/2026-11-01.csv'));
    symlinkSync(folder, at('videos/all'));
    symlinkSync('../lots', at('lots/again'));
    symlinkSync('round.yaml', at('species/round.yaml'));
    symlinkSync('nothing.md', at('guides/other.md'));
    symlinkSync('../../secret.yaml', at('photos/secret.jpg'));
    writeFileSync(at('cultivars/inkpot.md'), 'no front matter\n');
    const lines = await report();
    expect(lines).toEqual([
      'content/cultivars/inkpot.md:1:1 front-matter: the first line is not ---; start the file with a line ---, then the keys, then another line ---, then the text.',
      'content/guides/other.md file-unreadable: the file is not there: a link to nothing, or a file that was taken away just now; put the file itself here, or take the link out, and try again.',
      'content/lots/again file-unreadable: this is a link to a folder, and links to folders are not followed; put the files themselves here.',
      'content/lots/secret.yaml file-unreadable: this is a link to something outside the content folder, and nothing out there is read or published; put the file itself here.',
      'content/photos/secret.jpg file-unreadable: this is a link to something outside the content folder, and nothing out there is read or published; put the file itself here.',
      'content/species/round.yaml file-unreadable: this is a link that leads round in a circle; put the file itself here, or take the link out.',
      'content/videos/all file-unreadable: this is a link to something outside the content folder, and nothing out there is read or published; put the file itself here.',
      'content/walks/2026-11-01.csv file-unreadable: this is a link to something outside the content folder, and nothing out there is read or published; put the file itself here.',
    ]);
    expect(lines.join()).not.toContain('open-sesame');
  });

  test('pipes, sockets and devices', async () => {
    fifo(at('lots/pipe.yaml'));
    fifo(at('photos/pipe.jpg'));
    fifo(at('notes'));
    symlinkSync('../lots/pipe.yaml', at('walks/2026-11-02.csv'));
    const server: Server = createServer();
    await new Promise<void>(ready => server.listen(at('places/socket.yaml'), ready));
    const device = spawnSync('mknod', [at('species/zero.yaml'), 'c', '1', '5']).status === 0;
    const lines = await report();
    server.close();
    const special =
      'file-unreadable: this is a pipe, a socket or a device, which is never read since it may have no end';
    const names = [
      'lots/pipe.yaml',
      'notes',
      'photos/pipe.jpg',
      'places/socket.yaml',
      'walks/2026-11-02.csv',
    ];
    if (device) names.splice(4, 0, 'species/zero.yaml');
    expect(lines).toEqual(
      names.map(name => `content/${name} ${special}; take it out of the content folder.`),
    );
  });

  test('files and folders that go between the moment they are listed and the moment they are opened', async () => {
    const lots = at('lots/2025-grafts.yaml');
    writeFileSync(at('walks/2026-11-01.csv'), 'lot,left\nbellwether-2601,9\n');
    const gone = [lots, at('walks/2026-11-01.csv'), at('photos/bellwether.jpg'), at('species')];
    for (const path of gone) {
      expect(existsSync(path)).toBe(true);
      vanishing.add(path);
    }
    const lines = (await report()).filter(line => line.includes('file-unreadable'));
    expect(gone.filter(existsSync)).toEqual([]);
    const told =
      'file-unreadable: the file is not there: a link to nothing, or a file that was taken away just now';
    const names = ['lots/2025-grafts.yaml', 'photos/bellwether.jpg', 'species', 'walks/2026-11-01.csv'];
    expect(lines.map(line => line.split(';')[0])).toEqual(names.map(name => `content/${name} ${told}`));
  });

  test('folders where files are expected, and files where folders are', async () => {
    rmSync(at('yard.yaml'));
    mkdirSync(at('yard.yaml/inside'), { recursive: true });
    mkdirSync(at('lots/2027.yaml'));
    rmSync(at('videos'), { recursive: true });
    writeFileSync(at('videos'), 'x');
    rmSync(at('species'), { recursive: true });
    writeFileSync(at('species'), 'x');
    const found = (await report()).filter(line => line.includes('file-') && !line.includes('file-missing'));
    expect(found.map(line => line.split(';')[0])).toEqual([
      'content/lots/2027.yaml file-unreadable: this is a folder where a file is needed',
      'content/species file-unreadable: this is a file where the folder content/species/ is needed',
      'content/videos file-unreadable: this is a file where the folder content/videos/ is needed',
      'content/yard.yaml file-unreadable: this is a folder where a file is needed',
    ]);
    expect((await report()).join()).not.toContain('file-missing');
  });

  test('a file in the place of the whole folder, and no folder at all', async () => {
    const one = (lines: string[]) => lines.map(line => line.split(': ')[0]);
    expect(one(await report(join(folder, 'secret.yaml')))).toEqual(['content file-unreadable']);
    expect(one(await report(join(folder, 'nowhere')))).toEqual(['content content-missing']);
  });

  test('a file larger than any record', async () => {
    spawnSync('truncate', ['-s', '3G', at('walks/2026-11-03.csv')]);
    expect(await report()).toEqual([
      'content/walks/2026-11-03.csv file-unreadable: the file is far larger than any record (3072 MiB); take it out of the content folder; photographs belong in content/photos/.',
    ]);
  });

  test('names with line breaks and signs that turn the direction of writing', async () => {
    writeFileSync(at('lots/a\nb.yaml'), 'x: [\n');
    writeFileSync(at('species/a\u202egpj.yaml'), 'x\n');
    const lines = await report();
    expect(lines.length).toBeGreaterThan(2);
    for (const line of lines) expect(line).not.toMatch(/[\n\u202e]/);
    expect(lines.join()).toContain('content/lots/a\\nb.yaml');
    expect(lines.join()).toContain('content/species/a\\u202egpj.yaml');
  });

  test('files and folders that may not be read', () => {
    chmodSync(folder, 0o755);
    chmodSync(at('lots/2026-layers.yaml'), 0);
    chmodSync(at('walks'), 0);
    const script = `import(${JSON.stringify(resolve('src/contentFolder.ts'))}).then(async ({ readContentFiles }) => {
      const { files } = await readContentFiles(${JSON.stringify(content)});
      console.log(JSON.stringify(files.flatMap(({ path, unread }) => (unread ? [[path, unread.why]] : []))));
    })`;
    // The superuser may read everything, so another user looks.
    const other = process.getuid?.() === 0 ? { uid: 65_534, gid: 65_534 } : {};
    const ran = spawnSync(process.execPath, ['-e', script], { encoding: 'utf8', ...other });
    expect(ran.stderr.replace(/\(node:.*\n|\(Use.*\n|.*Warning.*\n/g, '')).toBe('');
    expect(JSON.parse(ran.stdout)).toEqual([
      ['lots/2026-layers.yaml', 'not-permitted'],
      ['walks', 'not-permitted'],
    ]);
    chmodSync(at('walks'), 0o755);
  });
});

test('a photograph that is shown and damaged in its middle is told by the check', async () => {
  const size = { width: 640, height: 480 };
  // Noise, so that a flipped byte meets picture data (ITU-T T.81, annex B).
  const noise = Buffer.from(Array.from({ length: size.width * size.height * 3 }, (_, i) => (i * 7919) % 251));
  const jpeg = await sharp(noise, { raw: { ...size, channels: 3 } })
    .jpeg()
    .toBuffer();
  writeFileSync(at('photos/bellwether.jpg'), jpeg);
  expect(await report()).toEqual([]);
  jpeg.fill(0xff, jpeg.length / 2, jpeg.length / 2 + 3000);
  writeFileSync(at('photos/bellwether.jpg'), jpeg);
  writeFileSync(at('photos/nobody-shows-it.jpg'), jpeg);
  const lines = await report();
  expect(lines).toHaveLength(1);
  expect(lines[0]).toMatch(
    /^content\/photos\/bellwether\.jpg photo-unreadable: the picture is damaged \(.+\); copy it from the camera/,
  );
});

test('links inside the content are followed, and the folder itself may be one', async () => {
  cpSync(at('walks/2026-10-17.csv'), at('photos/walk.csv'));
  rmSync(at('walks/2026-10-17.csv'));
  symlinkSync('../photos/walk.csv', at('walks/2026-10-17.csv'));
  symlinkSync(content, join(folder, 'elsewhere'));
  expect(await report(join(folder, 'elsewhere'))).toEqual([]);
});

describe('the private folder', () => {
  const costs = { find: /^costs:\n(?: .*\n)+/m };
  const move = (dir: string) => {
    const yard = readFileSync(at('yard.yaml'), 'utf8');
    const [written = ''] = costs.find.exec(yard) ?? [];
    mkdirSync(dir, { recursive: true });
    writeFileSync(at('yard.yaml'), yard.replace(written, ''));
    writeFileSync(join(dir, 'yard.yaml'), `${written}private_note: The well is behind the shed.\n`);
    mkdirSync(join(dir, 'walks'), { recursive: true });
    writeFileSync(join(dir, 'walks/2026-10-17.csv'), 'lot,note\ninkpot-2501,Ask the neighbor first.\n');
  };
  const load = () => loadContent({ dir: content, asOf: '2026-11-25' });

  test('below the content folder or where PRIVATE_DIR says, its keys are read as if they stood with the rest', async () => {
    const before = (await load()).reading.records?.yard;
    const elsewhere = join(folder, 'kept at home');
    for (const dir of [at('private'), elsewhere]) {
      rmSync(content, { recursive: true });
      cpSync(join(yardsFolder, 'base/content'), content, { recursive: true });
      move(dir);
      if (dir === elsewhere) vi.stubEnv('PRIVATE_DIR', dir);
      const { records, privateNotes } = (await load()).reading;
      expect(records?.yard).toEqual(before);
      const inPrivate = dir === elsewhere ? '../kept at home' : 'private';
      expect(privateNotes).toEqual([
        { text: 'The well is behind the shed.', file: `${inPrivate}/yard.yaml` },
        { text: 'Ask the neighbor first.', file: `${inPrivate}/walks/2026-10-17.csv`, line: 2 },
        { text: 'strong, even', file: 'walks/2026-09-05.csv', line: 2 },
      ]);
    }
    writeFileSync(join(elsewhere, 'yard.yaml'), 'cost: 1\n');
    expect(await report()).toEqual([
      'kept at home/yard.yaml:1:1 unknown-key: unknown key "cost"; did you mean "costs"?',
    ]);
    vi.stubEnv('PRIVATE_DIR', join(folder, 'nowhere'));
    expect((await report()).map(line => line.split(':')[0])).toEqual(['nowhere file-unreadable']);
    vi.unstubAllEnvs();
  });

  test('a yard reads without it, and says that no price is held above costs', async () => {
    move(at('private'));
    rmSync(at('private'), { recursive: true });
    const { records, diagnostics } = (await load()).reading;
    expect(records?.yard.costs).toBeNull();
    expect(diagnostics.map(({ rule }) => rule)).toContain('costs-missing');
  });
});
