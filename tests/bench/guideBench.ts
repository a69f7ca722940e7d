/** What the pages of guides cost, against the generator alone writing as many pages of the same sizes. */

import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { writeBareSite } from './bareSite.ts';
import { makeYard } from './makeYard.ts';
import { measured, median, ratioInWords, type Usage } from './measure.ts';

export interface GuideBench {
  /** Folder of the project. */
  root: string;
  /** An empty folder below it. */
  scratch: string;
  /** `YYYY-MM-DD` */
  asOf: string;
  places: number;
  repeats: number;
  print: (line: string) => void;
}

/** A yard of one lot, the guides of the demonstration yard where asked for, and so many of its places, home among them. */
function makeGuideYard(folder: string, demo: string, places: number, withGuides: boolean): void {
  mkdirSync(folder, { recursive: true });
  makeYard(folder, demo, { lots: 1, cultivars: 1 }, 1);
  const { home } = parse(readFileSync(join(folder, 'yard.yaml'), 'utf8')) as { home: string };
  const written = readdirSync(join(folder, 'places')).filter(name => name.endsWith('.yaml'));
  const others = written.filter(name => name !== `${home}.yaml`);
  for (const name of others.slice(places - 1)) rmSync(join(folder, 'places', name));
  if (withGuides) cpSync(join(demo, 'guides'), join(folder, 'guides'), { recursive: true });
}

function pageSizes(folder: string): number[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter(entry => entry.isFile() && entry.name.endsWith('.html'))
    .map(entry => statSync(join(entry.parentPath, entry.name)).size);
}

type Time = 'cpuSeconds' | 'wallSeconds';

/**
 * Builds four sites in turn: a yard with guides, the same yard without, and the generator alone with the pages of each. What both
 * with and without have (starting, bundling, reading, the other pages) falls out of the differences, and so what is left is what
 * guide pages cost. Everything is rendered afresh; climates are kept from the first run, which is not counted.
 */
export function benchGuides({ root, scratch, asOf, places, repeats, print }: GuideBench): void {
  const yards = { with: join(scratch, 'yard-with'), without: join(scratch, 'yard-without') };
  makeGuideYard(yards.with, join(root, 'content'), places, true);
  makeGuideYard(yards.without, join(root, 'content'), places, false);
  const out = (which: keyof typeof yards) => join(scratch, `guides-${which}`);
  const bare = (which: keyof typeof yards) => join(scratch, `bare-${which}`);
  const ours = (which: keyof typeof yards): Usage =>
    measured(join(root, 'scripts/build.ts'), ['--afresh'], root, {
      CONTENT_DIR: yards[which],
      OUT_DIR: out(which),
      AS_OF: asOf,
    });
  const plain = (which: keyof typeof yards): Usage =>
    measured(join(root, 'node_modules/astro/bin/astro.mjs'), ['build'], bare(which), {});
  for (const which of ['with', 'without'] as const) {
    ours(which);
    writeBareSite(bare(which), pageSizes(out(which)));
    plain(which);
  }
  const guidePages = pageSizes(join(out('with'), 'guides'));
  const bytes = guidePages.reduce((sum, size) => sum + size, 0);
  print(`${guidePages.length} pages of guides at ${places} places, ${(bytes / 1e6).toFixed(1)} MB of HTML`);
  const runs = Array.from({ length: repeats }, () => ({
    ours: { with: ours('with'), without: ours('without') },
    plain: { with: plain('with'), without: plain('without') },
  }));
  for (const [name, time] of [
    ['CPU', 'cpuSeconds'],
    ['wall', 'wallSeconds'],
  ] as const satisfies [string, Time][]) {
    const cost = (of: { with: Usage; without: Usage }) => of.with[time] - of.without[time];
    const pairs = runs.map(run => ({ ours: cost(run.ours), plain: cost(run.plain) }));
    const whole = runs.map(run => ({ ours: run.ours.with[time], plain: run.plain.with[time] }));
    const each = (median(pairs.map(pair => pair.ours)) / guidePages.length) * 1000;
    print(`guide pages / bare pages, ${name}: ${ratioInWords(pairs)}; ${each.toFixed(2)} ms a page`);
    print(`whole build / bare generator, ${name}: ${ratioInWords(whole)}`);
  }
}
