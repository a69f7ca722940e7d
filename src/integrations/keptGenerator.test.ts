/** What is kept of the generator: nothing that is not whole, and as it was compiled, is ever run. */

import { appendFileSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { generatorKey, hashOfKept, keptGenerator } from './keptGenerator.ts';

const key = 'kept-for-a-test';
const folder = resolve('.cache/generator', key);
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** Each time under another name: a module is loaded once. */
let count = 0;

async function keepCode(code: string): Promise<string> {
  count += 1;
  const facts = { entry: `prerender-entry.${count}.mjs`, pages: [] };
  mkdirSync(join(folder, 'code'), { recursive: true });
  mkdirSync(join(folder, 'same/assets'), { recursive: true });
  writeFileSync(join(folder, 'same/assets/site.css'), 'p {}');
  const entry = join(folder, 'code', facts.entry);
  writeFileSync(entry, code);
  const bytes = await hashOfKept(folder, facts);
  writeFileSync(join(folder, 'facts.json'), JSON.stringify({ ...facts, bytes }));
  return entry;
}

const running = 'export const app = { setInternals() {}, setOptions() {} };\n';

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
    await keepCode('export const app = {');
    expect(await keptGenerator(key)).toBeNull();
    rmSync(join(folder, 'facts.json'));
    expect(await keptGenerator(key)).toBeNull();
  });

  it('is run as it was compiled, and not with code, styles or facts that were altered since', async () => {
    await keepCode(running);
    expect((await keptGenerator(key))?.same).toBe(join(folder, 'same'));
    const damages = [
      (entry: string) => appendFileSync(entry, '// altered'),
      () => appendFileSync(join(folder, 'same/assets/site.css'), 'p { color: red }'),
      () => rmSync(join(folder, 'same/assets/site.css')),
      () => writeFileSync(join(folder, 'code/more.mjs'), ''),
    ];
    for (const damage of damages) {
      rmSync(folder, { recursive: true, force: true });
      damage(await keepCode(running));
      expect(await keptGenerator(key)).toBeNull();
    }
  });
});
