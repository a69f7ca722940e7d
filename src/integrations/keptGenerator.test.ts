/** What is kept of the generator: nothing that is not whole is ever run. */

import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { generatorKey, keptGenerator } from './keptGenerator.ts';

const key = 'kept-for-a-test';
const folder = resolve('.cache/generator', key);
afterEach(() => rmSync(folder, { recursive: true, force: true }));

function keepCode(code: string): void {
  mkdirSync(join(folder, 'code'), { recursive: true });
  writeFileSync(join(folder, 'code/prerender-entry.x.mjs'), code);
  writeFileSync(join(folder, 'facts.json'), JSON.stringify({ entry: 'prerender-entry.x.mjs', pages: [] }));
}

describe('a kept generator', () => {
  it('is taken for the same program, address and base path only', () => {
    const keys = [
      generatorKey('program', 'https://a.example', '/'),
      generatorKey('changed', 'https://a.example', '/'),
      generatorKey('program', 'https://b.example', '/'),
      generatorKey('program', 'https://a.example', '/orchard/'),
    ];
    expect(new Set(keys).size).toBe(keys.length);
    expect(generatorKey('program', 'https://a.example', '/')).toBe(keys[0]);
  });

  it('is none where nothing is kept, or what is kept does not run', async () => {
    expect(await keptGenerator(key)).toBeNull();
    keepCode('export const app = {');
    expect(await keptGenerator(key)).toBeNull();
    rmSync(join(folder, 'facts.json'));
    expect(await keptGenerator(key)).toBeNull();
  });
});
