/** The server for looking at a built site answers like a host of plain files. */

import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type ServedSite, serve } from '../../scripts/serve.ts';

const folder = mkdtempSync(join(tmpdir(), 'leafdrop-serve-'));
let site: ServedSite;
beforeAll(async () => {
  for (const file of ['index.html', 'lots/25-001/index.html', 'stock.json', '404.html']) {
    mkdirSync(dirname(join(folder, file)), { recursive: true });
    writeFileSync(join(folder, file), file);
  }
  site = await serve(folder, '/orchard/', 0);
});
afterAll(async () => {
  await site.stop();
  rmSync(folder, { recursive: true, force: true });
});

const answer = async (path: string) => {
  const { status, headers } = await fetch(new URL(path, site.address), { redirect: 'manual' });
  return [status, headers.get('location')];
};

// RFC 9110, 15.4.2: 301, with the address in Location.
it.each([
  ['/orchard/lots/25-001/', 200, null],
  ['/orchard/lots/25-001', 301, '/orchard/lots/25-001/'],
  ['/orchard/lots/25-001?from=label', 301, '/orchard/lots/25-001/?from=label'],
  ['/orchard/stock.json', 200, null],
  ['/orchard/lots', 404, null],
  ['/orchard/lots/25-002', 404, null],
  ['/orchard/%E0%A4%A', 404, null],
])('%s is answered with %d %s', async (path, status, location) => {
  expect(await answer(path)).toEqual([status, location]);
});
