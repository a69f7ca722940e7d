/** Packages stand under `dependencies` when building needs them, under `devDependencies` when only the tests do: `npm start` installs no more. */

import { readdirSync, readFileSync } from 'node:fs';
import { isBuiltin } from 'node:module';
import { join, relative, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = resolve(import.meta.dirname, '..');
const { dependencies, devDependencies } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
/** These run tests or use what stands below `tests/`; the launcher installs everything for them. */
const needTestPackages = ['scripts/bench.ts', 'scripts/test.ts'];

const sources = ['src', 'scripts']
  .flatMap(folder => readdirSync(join(root, folder), { recursive: true, withFileTypes: true }))
  .filter(
    entry => entry.isFile() && /\.(?:ts|mjs|astro|css)$/.test(entry.name) && !entry.name.includes('.test.'),
  )
  .map(entry => relative(root, join(entry.parentPath, entry.name)).replaceAll('\\', '/'))
  .filter(path => !needTestPackages.includes(path))
  .concat('astro.config.mjs');

/** Packages that a file loads when it runs. What is imported as a type is dropped before that. */
function packagesOf(path: string): string[] {
  const source = readFileSync(join(root, path), 'utf8');
  const loads =
    /^\s*(?:import|export)\s(?!type\s)[^;'"]*?from\s*['"]([^'"]+)['"]|\bimport\(\s*['"]([^'"]+)['"]|^\s*import\s*['"]([^'"]+)['"]|\burl\("(@[^"]+)"|\bresolve\('(@[^']+)'\)|'node_modules\/([^'/]+)\/[^']+'/gm;
  return [...source.matchAll(loads)]
    .map(found => found.slice(1).find(name => name !== undefined)!)
    .filter(name => /^@?[a-z]/.test(name) && !isBuiltin(name) && !name.startsWith('astro:'))
    .map(name => name.split('/', name.startsWith('@') ? 2 : 1).join('/'));
}

const used = new Map<string, string[]>();
for (const path of sources) {
  for (const name of packagesOf(path)) used.set(name, [...(used.get(name) ?? []), path]);
}

describe('packages', () => {
  it('that building loads are installed for it', () => {
    const missing = [...used].filter(([name]) => !(name in dependencies));
    expect(missing).toEqual([]);
    expect(used.size).toBeGreaterThan(10);
  });

  it('that building never loads are installed for the tests alone', () => {
    expect(Object.keys(dependencies).filter(name => !used.has(name))).toEqual([]);
  });

  it('stand in one list only', () => {
    expect(Object.keys(devDependencies).filter(name => name in dependencies)).toEqual([]);
  });
});
