/** `npm run climate`: points given by hand and by file, and what cannot be answered. */

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { main } from '../../scripts/climate.ts';
import { endPlainly } from '../../scripts/command.ts';

const folder = mkdtempSync(join(tmpdir(), 'leafdrop-climate-'));
afterAll(() => rmSync(folder, { recursive: true }));

async function run(...words: string[]) {
  let [out, err] = ['', ''];
  const stdout = vi.spyOn(process.stdout, 'write').mockImplementation(text => {
    out += text;
    return true;
  });
  const stderr = vi.spyOn(process.stderr, 'write').mockImplementation(text => {
    err += text;
    return true;
  });
  try {
    return { code: await endPlainly(() => main(words)), out, err };
  } finally {
    stdout.mockRestore();
    stderr.mockRestore();
  }
}

describe('one point', () => {
  it('is answered as text with its error and the period', async () => {
    const { out, code } = await run('--at', '35.43,-82.54,645');
    expect(code).toBe(0);
    expect(out).toContain('means of 2003-2021');
    expect(out).toMatch(/last of spring .* off by about \d/);
  });

  it('is answered as JSON in the words of the open file', async () => {
    const [report] = JSON.parse((await run('--at', '35.43,-82.54,645', '--json')).out);
    expect(report).toMatchObject({
      id: '35.43,-82.54,645',
      tminC: expect.any(Array),
      tmaxC: expect.any(Array),
      winterZone: { zone: expect.stringMatching(/^7b$|^8a$/) },
      nearest: { id: expect.any(String) },
      errors: { tminC: expect.any(Number) },
    });
    const { last, first } = report.freeze['32F'];
    // The early date of the last freeze comes first, the cautious one last.
    expect(last.p10 < last.p50 && last.p50 < last.p90).toBe(true);
    expect(first.p10 < first.p50 && first.p50 < first.p90).toBe(true);
    expect(report.annualMinC.p10).toBeLessThan(report.annualMinC.mean);
  });

  it.each([
    ['90,0,0', /No station/],
    ['0,180,0', /No station|away/],
    ['39.7,-105,9000', /too far from the stations around/],
    ['39.7,-105,5280', /in feet/],
  ])('%s is refused in words', async (at, words) => {
    const [report] = JSON.parse((await run('--at', at, '--json')).out);
    expect(report).toEqual({ id: at, refused: expect.stringMatching(words) });
  });

  it.each([
    [['--at', '1,2']],
    [['--at', 'here']],
    [[]],
    [['--at', '1,2,3', '--leave-out', 'x']],
    [['--at', '1,2,3', '--period', '1990']],
  ])('given as %j is a mistake that is explained', async words => {
    const { code, err } = await run(...words);
    expect(code).toBe(2);
    expect(err).toMatch(/expected|Give --at/);
  });
});

describe('a file of points', () => {
  const file = join(folder, 'points.csv');

  it('is answered in its order, without the stations left out, bad cells with their place', async () => {
    writeFileSync(
      file,
      '\uFEFFid,lat,lon,elevation_m\nairport,35.4319,-82.5375,645\nbad,35.4,,645\n"a, b",48,11,500\n',
    );
    const reports = JSON.parse((await run('--points', file, '--json', '--leave-out', '5')).out);
    expect(reports.map(({ id }: { id: string }) => id)).toEqual(['airport', 'bad', 'a, b']);
    expect(reports[0].nearest.km).toBeGreaterThanOrEqual(5);
    expect(reports[1].refused).toMatch(/points\.csv:3:\d+: lon is an empty cell; expected a number/);
  });

  it('without its columns is refused with what was expected', async () => {
    writeFileSync(file, 'name,lat\nx,1\n');
    const { code, err } = await run('--points', file);
    expect(code).toBe(2);
    expect(err).toMatch(/points\.csv:1: the header has no id, lon, elevation_m/);
  });
});
