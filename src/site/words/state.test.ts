import { describe, expect, it } from 'vitest';
import { day } from '../../core/days.ts';
import type { FormAnswer, Gate } from '../../core/lots/answers.ts';
import type { SentNow } from '../parts/sentNow.ts';
import { openingInWords, stateView } from './state.ts';

const asOf = day('2026-11-25');
const opening = (from: string, to: string) => openingInWords({ from: day(from), to: day(to) }, asOf);

const gate = (name: Gate['name'], state: Gate['state']): Gate => ({
  name,
  state,
  range: null,
  closes: null,
  because: [],
});
const answer = (differs: Partial<FormAnswer>): FormAnswer => ({
  form: 'bare-root',
  state: 'ready',
  range: null,
  gates: [],
  because: [],
  ...differs,
});

describe('when a form opens, in words', () => {
  it.each([
    ['2026-12-01', '2026-12-14', 'Between December 1 and 14'],
    ['2026-11-28', '2026-12-14', 'Between November 28 and December 14'],
    ['2026-12-20', '2027-01-08', 'Between December 20, 2026 and January 8, 2027'],
    ['2027-04-09', '2027-04-24', 'Between April 9 and 24, 2027'],
    ['2026-12-03', '2026-12-03', 'About December 3'],
    ['2026-11-20', '2026-12-04', 'Any day, by December 4'],
    ['2026-11-25', '2027-01-04', 'Any day, by January 4, 2027'],
    ['2026-11-20', '2026-11-24', 'Any day now'],
  ])('%s to %s: %s', (from, to, words) => {
    expect(opening(from, to)).toBe(words);
  });
});

describe('how a form stands', () => {
  const open: SentNow = { state: 'open', share: 0.95, from: null };

  it('is told in words for every state', () => {
    const words = (...asked: Parameters<typeof stateView>) => stateView(...asked).words;
    expect(stateView(answer({ state: 'ready' }), asOf, open)).toEqual({ state: 'ready', words: 'Ready now' });
    expect(words(answer({ state: 'look' }), asOf, open)).toBe('Awaiting a check');
    const range = { from: day('2026-12-01'), to: day('2026-12-14') };
    expect(words(answer({ state: 'opens', range }), asOf, open)).toBe('Between December 1 and 14');
  });

  it('never calls a form ready without saying how it leaves where it cannot leave at once', () => {
    const ready = answer({ state: 'ready' });
    const said = (sent: Partial<SentNow>) => stateView(ready, asOf, { ...open, ...sent }).words;
    expect(said({ state: 'by-forecast' })).toBe('Ready, sent by forecast');
    const spring = { state: 'by-forecast', monday: day('2027-04-12') } as const;
    expect(said({ state: 'closed', from: spring })).toBe('Ready, sent by forecast from April 12, 2027');
    expect(said({ state: 'closed', from: { ...spring, state: 'open' } })).toBe(
      'Ready, sent from April 12, 2027',
    );
    expect(said({ state: 'closed' })).toBe('Ready, but not sent in the coming year');
  });

  it('names what blocks it: the first gate that does', () => {
    const gates = [gate('counted', 'passed'), gate('sized', 'blocked'), gate('sound', 'blocked')];
    expect(stateView(answer({ state: 'blocked', gates }), asOf, open).words).toBe('Too small yet');
  });
});
