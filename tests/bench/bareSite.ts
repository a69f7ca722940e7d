/** A site made by the generator alone, with as many pages of the same sizes as ours: what a build has to be compared with. */

import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const page = `---
import sizes from '../sizes.json';
export function getStaticPaths() {
  return sizes.map((size, index) => ({ params: { id: String(index) }, props: { size } }));
}
const { size } = Astro.props;
const rows = Array.from({ length: Math.max(1, Math.round((size - 200) / 80)) }, (_, row) => ({
  label: 'Row ' + row,
  text: 'words that fill one row of a page & more',
}));
---
<!doctype html>
<html lang="en">
  <head><meta charset="utf-8" /><title>{size}</title></head>
  <body><main><h1>{size}</h1><ul>{rows.map(row => <li><b>{row.label}</b> <span>{row.text}</span></li>)}</ul></main></body>
</html>
`;

/** Writes the project of the bare site; it must lie below the folder whose node_modules holds the generator. */
export function writeBareSite(folder: string, pageSizes: readonly number[]): void {
  mkdirSync(join(folder, 'src/pages'), { recursive: true });
  writeFileSync(join(folder, 'src/sizes.json'), JSON.stringify(pageSizes));
  writeFileSync(join(folder, 'src/pages/[id].astro'), page);
  writeFileSync(join(folder, 'astro.config.mjs'), 'export default { devToolbar: { enabled: false } };\n');
  writeFileSync(join(folder, 'package.json'), '{ "name": "bare-site", "private": true, "type": "module" }\n');
}
