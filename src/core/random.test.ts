import { describe, expect, it } from 'vitest';
import { hashText, normalQuantile, randomFromState, randomFromText, splitMix64 } from './random.ts';

describe('hashText', () => {
  // Source: test vectors of the FNV reference code (IETF RFC 9923, FNV-1a 64 bit).
  it.each([
    ['', 0xcbf29ce484222325n],
    ['a', 0xaf63dc4c8601ec8cn],
    ['foobar', 0x85944171f73967e8n],
  ])('gives the reference hash of "%s"', (text, expected) => {
    expect(hashText(text)).toBe(expected);
  });
});

describe('splitMix64', () => {
  // Source: output of the reference splitmix64.c, as kept in the tests of the rand_xoshiro library.
  it('matches the reference stream', () => {
    const next = splitMix64(1477776061723855037n);
    expect([next(), next(), next(), next(), next()]).toEqual([
      1985237415132408290n,
      2979275885539914483n,
      13511426838097143398n,
      8488337342461049707n,
      15141737807933549159n,
    ]);
  });
});

describe('randomFromState', () => {
  // Source: output of the reference xoshiro128starstar.c 1.1 for state {1, 2, 3, 4}, as kept in several libraries' tests.
  it('matches the reference stream', () => {
    const random = randomFromState([1, 2, 3, 4]);
    expect(Array.from({ length: 10 }, () => random.bits())).toEqual([
      11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804,
    ]);
  });

  it('refuses the one state from which nothing moves', () => {
    expect(() => randomFromState([0, 0, 0, 0])).toThrow(RangeError);
  });
});

describe('normalQuantile', () => {
  // Source: check values printed with algorithm AS 241 (Wichura 1988), and the usual table values of the normal curve.
  it.each([
    [0.25, -0.6744897501960817],
    [0.001, -3.090232306167814],
    [1e-20, -9.26234008979841],
    [0.975, 1.959963984540054],
    [0.5, 0],
  ])('at %d', (p, expected) => {
    expect(normalQuantile(p)).toBeCloseTo(expected, 12);
  });
});

describe('randomFromText', () => {
  it('repeats itself for the same text and differs for another', () => {
    const draw = (text: string) => {
      const random = randomFromText(text);
      const normals = new Float64Array(2);
      random.fillNormal(normals);
      return [random.bits(), ...normals, random.uniform()];
    };
    expect(draw('Storrs')).toEqual(draw('Storrs'));
    expect(draw('Storrs')).not.toEqual(draw('storrs'));
  });

  it('keeps the stream of one text for ever: a change here changes every modeled figure', () => {
    const random = randomFromText('leafdrop');
    const normals = new Float64Array(2);
    random.fillNormal(normals);
    expect([random.bits(), random.bits(), random.uniform(), ...normals]).toMatchInlineSnapshot(`
      [
        213349775,
        3531020885,
        0.7850616215728223,
        -1.0972416149804638,
        0.9694766579007982,
      ]
    `);
  });

  it('has the moments and tails of a standard normal', () => {
    const random = randomFromText('moments');
    const count = 2_000_000;
    const normals = new Float64Array(count);
    random.fillNormal(normals);
    let [sum, square, cube, fourth, beyond2, beyond4] = [0, 0, 0, 0, 0, 0];
    for (const z of normals) {
      sum += z;
      square += z * z;
      cube += z ** 3;
      fourth += z ** 4;
      if (z < -2) beyond2 += 1;
      if (Math.abs(z) > 4) beyond4 += 1;
    }
    // Four standard errors of each sample moment of 2,000,000 draws.
    expect(Math.abs(sum / count)).toBeLessThan(0.0029);
    expect(Math.abs(square / count - 1)).toBeLessThan(0.004);
    expect(Math.abs(cube / count)).toBeLessThan(0.011);
    expect(Math.abs(fourth / count - 3)).toBeLessThan(0.028);
    expect(Math.abs(beyond2 / count - 0.02275013)).toBeLessThan(0.00043);
    expect(beyond4).toBeGreaterThan(80);
    expect(beyond4).toBeLessThan(175);
  });

  it('is uniform over its range', () => {
    const random = randomFromText('uniform');
    const counts = new Array<number>(20).fill(0);
    for (let i = 0; i < 200_000; i += 1) {
      const cell = Math.floor(random.uniform() * 20);
      counts[cell] = (counts[cell] ?? 0) + 1;
    }
    const chiSquare = counts.reduce((total, count) => total + (count - 10_000) ** 2 / 10_000, 0);
    // 99.99 % point of chi-square with 19 degrees of freedom.
    expect(chiSquare).toBeLessThan(50.8);
  });
});
