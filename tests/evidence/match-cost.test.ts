/** What matching costs: bytes in the browser, processor time in the build. */
import { resolve } from 'node:path';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import { build } from 'vite';
import { describe, expect, it } from 'vitest';
import { climateSummary } from '../../src/core/climate/summary.ts';
import { weatherYears } from '../../src/core/climate/weatherYears.ts';
import { evidenceFigures } from '../../src/core/evidence/matchRipening.ts';
import { matchAll } from '../../src/core/match/match.ts';
import { placeOutlook } from '../../src/core/match/placeOutlook.ts';
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
    expect(code).toContain('At home');
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
      return { id: `${name} ${byC}`, name, figures, years, climate: climateSummary(figures, years) };
    }),
  );
  const judge = (count: number) => {
    const all = cultivars(count);
    for (const place of outlooks) matchAll(place, all, species, context);
  };
  const outlooks = inputs.map(input => placeOutlook(input, species));

  it('judges 1,000 cultivars at 60 places within its second of processor time, three allowed on a busy machine', () => {
    const perPlace = least(3, () => inputs.map(input => placeOutlook(input, species))) / inputs.length;
    const perPlaceMatches = least(3, () => judge(1000)) / inputs.length;
    expect(60 * (perPlace + perPlaceMatches)).toBeLessThan(3000);
  });

  it('takes time in proportion to the cultivars', () => {
    judge(500);
    const [some, many] = [least(5, () => judge(1000)), least(5, () => judge(4000))];
    expect(many / some).toBeLessThan(6);
  });
});
