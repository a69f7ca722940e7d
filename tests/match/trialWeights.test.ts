/** How trials are weighed against the model, added up by hand. The weights are our working figures. */
import { describe, expect, it } from 'vitest';
import type { RipeningVerdict, WinterVerdict } from '../../src/core/match/answers.ts';
import {
  cropWithTrials,
  ripenedHere,
  type TrialGround,
  trialReason,
  type WeighedTrial,
  weighedTrials,
  winterWithTrials,
} from '../../src/core/match/trials.ts';
import type { Trial } from '../../src/core/records/cultivar.ts';
import { placeNamed } from './places.ts';

const johnson = placeNamed('johnson');
const hair = 1e-9;

describe('trials weighed', () => {
  const trial = (over: Partial<Trial> = {}): Trial => ({
    where: 'a bench',
    place: 'bench',
    class: johnson.class,
    crop: 'main',
    from: 2015,
    to: 2018,
    winter: 'unhurt',
    ripened: 'all',
    note: null,
    ...over,
  });
  const traits = { winterLowC: -15, heat: 2000, deficitKpa: 1 };
  const ground = (there = traits): TrialGround => ({
    class: johnson.class,
    traits,
    traitsOf: id => (id === 'bench' ? there : null),
  });
  const weigh = (over: Partial<Trial>, there = traits) => weighedTrials([trial(over)], ground(there))[0];

  it('count their seasons, at most twelve, by the likeness of summer and of winter', () => {
    expect(weigh({})).toMatchObject({ summerSeasons: 4, winterSeasons: 4 });
    expect(weigh({ from: 2000 })).toMatchObject({ summerSeasons: 12, winterSeasons: 12 });
    expect(weigh({ from: 2018 })).toMatchObject({ summerSeasons: 1 });
    // One width off in winter, none in summer: exp(-1/2).
    expect(weigh({}, { ...traits, winterLowC: -12 })!.winterSeasons).toBeCloseTo(4 * Math.exp(-0.5), 9);
    expect(weigh({ place: null })).toMatchObject({ summerSeasons: expect.closeTo(1.2, 9) });
  });

  it('count nothing below a likeness of a tenth', () => {
    // exp(-w^2 / 2) is a tenth at 2.146 widths of 3 C.
    const width = Math.sqrt(2 * Math.log(10));
    const seasons = (widths: number) => weigh({}, { ...traits, winterLowC: -15 + 3 * widths })!.winterSeasons;
    expect(seasons(width - 0.001)).toBeGreaterThan(0.4);
    expect(seasons(width + 0.001)).toBe(0);
  });

  it('say "somewhat like" below 85 % of their seasons', () => {
    const said = (summerSeasons: number, over: Partial<Trial> = {}) =>
      trialReason({ trial: trial(over), summerSeasons, winterSeasons: 4 }).text;
    expect(said(3.41)).toContain('in a climate like this one');
    expect(said(3.4)).toContain('in a climate somewhat like this one');
    expect(said(10.3, { from: 1999 })).toContain('in a climate like this one');
    expect(said(10.2, { from: 1999 })).toContain('somewhat');
    expect(said(4)).toContain('from 2015 to 2018');
    expect(said(1, { from: 2018 })).toContain('in 2018');
  });

  const verdict = (share: number, headShare: number) =>
    ({
      crop: 'main',
      blocked: null,
      share,
      word: 'most-years',
      dates: { p10: 1, p50: 2, p90: 3 },
      headStart: { share: headShare, word: 'most-years', dates: { p10: 1, p50: 2, p90: 3 } },
      because: [{ text: 'The model.', standing: 'modeled' }],
    }) as RipeningVerdict;
  const seen = (summerSeasons: number, over: Partial<Trial> = {}): WeighedTrial => ({
    trial: trial(over),
    summerSeasons,
    winterSeasons: summerSeasons,
  });

  it('are averaged with the model, which counts four seasons; all 0.9, most 0.65, some 0.35, none 0', () => {
    const share = (...trials: WeighedTrial[]) => cropWithTrials(verdict(0.5, 0.5), trials).share;
    expect(share(seen(4))).toBeCloseTo((4 * 0.5 + 4 * 0.9) / 8, 12);
    expect(share(seen(4, { ripened: 'most' }))).toBeCloseTo((4 * 0.5 + 4 * 0.65) / 8, 12);
    expect(share(seen(2, { ripened: 'some' }))).toBeCloseTo((4 * 0.5 + 2 * 0.35) / 6, 12);
    expect(share(seen(1, { ripened: 'none' }), seen(3))).toBeCloseTo((4 * 0.5 + 3 * 0.9) / 8, 12);
  });

  it('leave a head start what it gains, and trials in a store speak for it alone', () => {
    const head = (trials: WeighedTrial[], outdoors = 0.4, headStart = 0.6) =>
      cropWithTrials(verdict(outdoors, headStart), trials).headStart.share;
    // Outdoors (4 x 0.4 + 4 x 0.9) / 8 = 0.65, and the gain of 0.2.
    expect(head([seen(4)])).toBeCloseTo(0.85, 12);
    expect(head([seen(4)], 0.4, 1)).toBeCloseTo(1, 12);
    expect(head([seen(4, { winter: 'stored', ripened: 'none' })], 0.2)).toBeCloseTo((4 * 0.6) / 8, 12);
    expect(head([seen(4, { winter: 'stored', ripened: 'none' })], 0.5, 0.6)).toBe(0.5);
  });

  it('take the date away below one year in ten, and keep it there', () => {
    const dates = (share: number) =>
      cropWithTrials(verdict(share, share), [seen(4, { ripened: 'none' })]).dates;
    expect(dates(0.2)).not.toBeNull();
    expect(dates(0.199)).toBeNull();
  });

  it('move the care of winter by a step from three seasons on', () => {
    const care = (own: WinterVerdict['care'], trials: WeighedTrial[]) =>
      winterWithTrials({ care: own, because: [] as never[] } as unknown as WinterVerdict, trials).care;
    const killed = (seasons: number) => seen(seasons, { winter: 'killed' });
    const unhurt = (seasons: number) => seen(seasons, { winter: 'unhurt' });
    const diedBack = (seasons: number) => seen(seasons, { winter: 'died-back' });
    expect(care('mulch', [killed(3)])).toBe('wrap');
    expect(care('mulch', [killed(3 - hair)])).toBe('mulch');
    expect(care('nothing', [killed(3)])).toBe('mulch');
    expect(care('nothing', [unhurt(9)])).toBe('nothing');
    expect(care('wrap', [diedBack(9)])).toBe('wrap');
    expect(care('bury', [diedBack(9)])).toBe('wrap');
    expect(care('store', [unhurt(9)])).toBe('bury');
    // Half of the winters died back and half unhurt stand half a step above mulch: no step either way.
    expect(care('mulch', [unhurt(3), diedBack(3)])).toBe('mulch');
    expect(care('mulch', [unhurt(3), diedBack(3.1)])).toBe('wrap');
    expect(care('wrap', [unhurt(3), diedBack(3)])).toBe('wrap');
    expect(care('wrap', [unhurt(3.1), diedBack(3)])).toBe('mulch');
    expect(care('wrap', [seen(9, { winter: 'stored' })])).toBe('wrap');
  });

  it('show that the winter rest is enough from three seasons of fruit on', () => {
    const rested = (summerSeasons: number, winterSeasons: number, over: Partial<Trial> = {}) =>
      ripenedHere([{ trial: trial(over), summerSeasons, winterSeasons }], ['main']);
    expect(rested(3, 3)).toBe(true);
    expect(rested(3, 2.9)).toBe(false);
    expect(rested(2.9, 3)).toBe(false);
    expect(rested(9, 9, { ripened: 'none' })).toBe(false);
    expect(rested(9, 9, { crop: 'breba' })).toBe(false);
  });
});
