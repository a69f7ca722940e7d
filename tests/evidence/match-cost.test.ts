/** What matching costs: bytes in the browser, processor time in the build, as shares: seconds would be those of one machine. */
import { resolve } from 'node:path';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import { build } from 'vite';
import { describe, expect, it } from 'vitest';
import { climateSummary } from '../../src/core/climate/summary.ts';
import { weatherYears } from '../../src/core/climate/weatherYears.ts';
import { evidenceFigures } from '../../src/core/evidence/matchRipening.ts';
import { matchAll } from '../../src/core/match/match.ts';
import { placeOutlook } from '../../src/core/match/placeOutlook.ts';
import { heatStarts } from '../../src/core/phenology/heatStart.ts';
import type { Species } from '../../src/core/records/species.ts';
import { context, cultivar, fig, figure, movedBy } from '../match/places.ts';

/** Budget of the island, compressed. */
const LARGEST_ISLAND_BYTES = 23_000;

describe('the island for own dates', () => {
  it('stays within its budget, without a schema library in it', async () => {
    const built = await build({
      configFile: false,
      logLevel: 'silent',
      build: {
        write: false,
        minify: true,
        target: 'es2022',
        lib: { entry: resolve('src/islands/ownPlace/answer.ts'), formats: ['es'] },
      },
    });
    const [bundle] = [built].flat();
    if (!bundle || !('output' in bundle)) throw new Error('nothing was built');
    const code = bundle.output.map(chunk => ('code' in chunk ? chunk.code : '')).join('');
    // The sentence of the verdict's first reason: the judging is in it, not only its types.
    expect(code).toContain('One winter in ten gets down to');
    expect(code).not.toContain('ZodError');
    expect(gzipSync(code, { level: 9 }).length).toBeLessThanOrEqual(LARGEST_ISLAND_BYTES);
    expect(brotliCompressSync(code).length).toBeLessThan(gzipSync(code, { level: 9 }).length);
  });
});

/** Six species of three heat bases, as in the demonstration yard. */
const species: Species[] = [8, 10, 10, 10, 10, 11].map((baseC, i) => ({
  ...fig,
  id: `species-${i}`,
  heatBaseC: figure(baseC),
}));

const classes = ['very-early', 'early', 'mid', 'late'] as const;
const eyes = ['closed', 'sealed', 'half-open', 'open'] as const;

/** Cultivars that differ in all a verdict looks at. */
function cultivars(count: number) {
  return Array.from({ length: count }, (_, i) =>
    cultivar({
      id: `cultivar-${i}`,
      species: `species-${i % 6}`,
      ripening: classes[i % 4]!,
      hardinessOffsetC: ((i * 7) % 9) * 0.5 - 2,
      crops: i % 3 === 0 ? ['breba', 'main'] : ['main'],
      fruit: { ...cultivar().fruit, eye: eyes[(i >> 2) % 4]!, splits: i % 2 === 0 ? 'low' : 'high' },
    }),
  );
}

function cpuMs(work: () => unknown): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

const least = (times: number, work: () => unknown) =>
  Math.min(...Array.from({ length: times }, () => cpuMs(work)));

describe('the build', () => {
  const inputs = [3, 0, -3].flatMap(byC =>
    (['johnson', 'bonn'] as const).map(name => {
      const figures = movedBy(evidenceFigures(name), byC);
      const years = weatherYears(figures);
      const climate = climateSummary(figures, years);
      const starts = heatStarts(years, species, climate.chill.answer);
      return { id: `${name} ${byC}`, name, figures, years, climate, heatStarts: starts };
    }),
  );
  const judge = (count: number) => {
    const all = cultivars(count);
    for (const place of outlooks) matchAll(place, all, species, context);
  };
  const outlooks = inputs.map(input => placeOutlook(input, species));

  it('costs no more than a few times drawing the weather of the places', () => {
    const draw = () => inputs.map(({ figures }) => weatherYears(figures));
    const costs = () => ({
      drawing: cpuMs(draw),
      outlook: cpuMs(() => inputs.map(input => placeOutlook(input, species))),
      judging: cpuMs(() => judge(1000)),
    });
    // Each time one after the other, so that a busy machine slows them alike.
    const all = Array.from({ length: 4 }, costs);
    const shares = all.map(({ drawing, outlook, judging }) => (outlook + judging) / drawing);
    // About two on a quiet machine; our working figure.
    expect(Math.min(...shares)).toBeLessThan(4);
  });

  it('takes time in proportion to the cultivars', () => {
    judge(500);
    const [some, many] = [least(5, () => judge(1000)), least(5, () => judge(4000))];
    expect(many / some).toBeLessThan(6);
  });
});
