/** The layers of the architecture: a file may import only from its own layer and those below it. */

import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = resolve(import.meta.dirname, '..');

/**
 * Layers from the bottom up; the first pattern that matches a path decides. Folders that share a number may not import
 * from each other, except within the same folder.
 */
const layers: readonly { name: string; level: number; pattern: RegExp }[] = [
  { name: 'core measures', level: 0, pattern: /^src\/core\/(?:units|unitOrder|days|money|random)\.ts$/ },
  { name: 'core/records', level: 1, pattern: /^src\/core\/records\// },
  { name: 'core/markdown', level: 2, pattern: /^src\/core\/markdown\// },
  { name: 'core/addresses', level: 2, pattern: /^src\/core\/addresses\// },
  { name: 'core/climate', level: 2, pattern: /^src\/core\/climate\// },
  { name: 'core/phenology', level: 2.5, pattern: /^src\/core\/phenology\// },
  { name: 'core/lots', level: 3, pattern: /^src\/core\/lots\// },
  { name: 'core/places', level: 3, pattern: /^src\/core\/places\// },
  { name: 'core/match', level: 3, pattern: /^src\/core\/match\// },
  { name: 'core/care', level: 3, pattern: /^src\/core\/care\// },
  { name: 'core/videos', level: 3.5, pattern: /^src\/core\/videos\// },
  { name: 'core/towns', level: 4.1, pattern: /^src\/core\/towns\// },
  { name: 'core/reading', level: 4, pattern: /^src\/core\/reading\// },
  { name: 'core/walking', level: 4.5, pattern: /^src\/core\/walking\// },
  { name: 'core/editing', level: 4.5, pattern: /^src\/core\/editing\// },
  { name: 'core/evidence', level: 4, pattern: /^src\/core\/evidence\// },
  { name: 'core/history', level: 5, pattern: /^src\/core\/history\// },
  { name: 'core/renaming', level: 5, pattern: /^src\/core\/renaming\// },
  { name: 'core/recording', level: 5, pattern: /^src\/core\/recording\// },
  { name: 'core/catalogue', level: 5, pattern: /^src\/core\/(?:catalogue|listed)\.ts$/ },
  { name: 'core/comparison', level: 5.5, pattern: /^src\/core\/comparison\// },
  { name: 'outputs', level: 6, pattern: /^src\/outputs\// },
  { name: 'markdown', level: 6, pattern: /^src\/markdown\// },
  { name: 'result store', level: 6, pattern: /^src\/(?:files|resultStore)\.ts$/ },
  { name: 'hash', level: 5.6, pattern: /^src\/hash\.ts$/ },
  { name: 'station tables', level: 6, pattern: /^src\/stations\// },
  { name: 'town files', level: 6.5, pattern: /^src\/towns\// },
  { name: 'HEIC', level: 6, pattern: /^src\/photos\/heic/ },
  { name: 'turns', level: 6, pattern: /^src\/turns\.ts$/ },
  { name: 'content folder', level: 6.5, pattern: /^src\/(?:contentFolder|keptReadings|wholePhotos)\.ts$/ },
  { name: 'content', level: 7, pattern: /^src\/content(?:\.config)?\.ts$/ },
  {
    name: 'site helpers',
    level: 8,
    pattern: /^src\/(?:photos\/.*|(?:careYears|href|outlooks|photos|zipAreas)\.ts)$/,
  },
  { name: 'listing', level: 10.5, pattern: /^src\/(?:listing|book)\// },
  { name: 'labels', level: 8.5, pattern: /^src\/labels\// },
  { name: 'views', level: 9, pattern: /^src\/(?:views|site)\// },
  { name: 'site', level: 10, pattern: /^src\/(?:pages|layouts|components|islands|styles|icons)\// },
  { name: 'bundled files', level: 10.4, pattern: /^src\/assets\.ts$/ },
  { name: 'build', level: 10.5, pattern: /^src\/build\// },
  { name: 'scripts', level: 11, pattern: /^scripts\// },
];

function layerOf(path: string) {
  return layers.find(({ pattern }) => pattern.test(path));
}

function sourceFiles(folder: string): string[] {
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter(
      entry => entry.isFile() && /\.(?:ts|mjs|astro)$/.test(entry.name) && !entry.name.includes('.test.'),
    )
    .map(entry => relative(root, join(entry.parentPath, entry.name)).replaceAll('\\', '/'));
}

/** Paths a file imports from the project, as they stand in its source. */
function projectImports(path: string): string[] {
  const source = readFileSync(join(root, path), 'utf8');
  const found = source.matchAll(/(?:from|import)\s*\(?\s*['"](\.{1,2}\/[^'"]+)['"]/g);
  return [...found].map(([, target]) =>
    relative(root, resolve(root, dirname(path), target!)).replaceAll('\\', '/'),
  );
}

const files = [...sourceFiles('src'), ...sourceFiles('scripts')];

describe('layers', () => {
  it('finds the files it is about', () => {
    expect(files.length).toBeGreaterThan(40);
  });

  it.each(files)('%s belongs to a layer and imports only from below', path => {
    const own = layerOf(path);
    expect(own, `${path} is in no layer`).toBeDefined();
    const wrong = projectImports(path).filter(target => {
      const other = layerOf(target);
      if (!other || !own || other.name === own.name) return false;
      return other.level >= own.level;
    });
    expect(wrong).toEqual([]);
  });
});

describe('the core is pure', () => {
  const core = files.filter(path => path.startsWith('src/core/'));
  const impure =
    /['"]node:|from 'astro|Date\.now\(|new Date\(\)|Math\.random\(|\bprocess\.|Temporal\.Now|performance\.now\(|console\./;

  it.each(core)('%s reads no clock, no chance, no file and no framework', path => {
    expect(impure.exec(readFileSync(join(root, path), 'utf8'))?.[0] ?? null).toBeNull();
  });

  // A place with too short a season once kept such a loop going for ever.
  it.each(core)('%s has no loop without a condition', path => {
    const endless = /for \([^;()]*;\s*;|for \(let \[[^;]*;\s*;|while \((?:true|1)\)/;
    expect(endless.exec(readFileSync(join(root, path), 'utf8'))?.[0] ?? null).toBeNull();
  });
});
