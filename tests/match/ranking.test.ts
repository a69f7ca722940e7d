/** Orders of matches. */
import { describe, expect, it } from 'vitest';
import { cropChance, levelRange, ranked, readyAndSuits } from '../../src/core/match/ranking.ts';
import { context, cultivar, fig, matchPlace, placeNamed } from './places.ts';

const at = (name: Parameters<typeof placeNamed>[0], over = {}) =>
  matchPlace(placeNamed(name), cultivar(over), fig, context);

describe('ranking', () => {
  it('puts the better level first, then the likelier crop, then what was given first', () => {
    const matches = [
      at('bonn', { id: 'late', ripening: 'late' }),
      at('bonn', { id: 'a', ripening: 'very-early' }),
      at('bonn', { id: 'b', ripening: 'very-early' }),
      at('bonn', { id: 'early', ripening: 'early' }),
      at('davis', { id: 'home' }),
    ];
    const given = [...matches];
    const inOrder = ranked(matches, match => ({ level: match.level, chance: cropChance(match) }));
    expect(inOrder.map(each => each.cultivar)).toEqual(['home', 'a', 'b', 'early', 'late']);
    expect(matches).toEqual(given);
  });

  it('tells the range of levels over places', () => {
    expect(levelRange(['not-here', 'at-home', 'a-gamble'])).toEqual({
      best: 'at-home',
      middle: 'a-gamble',
      worst: 'not-here',
    });
    expect(levelRange(['with-care', 'not-here'])).toMatchObject({ middle: 'with-care' });
    expect(levelRange([])).toBeNull();
  });

  it('finds a ready form that suits, or none', () => {
    const kansas = at('johnson');
    expect(readyAndSuits(kansas, ['leafed-pot', 'dormant-pot'])).toMatchObject({
      form: 'dormant-pot',
      fit: 'best',
    });
    expect(readyAndSuits(kansas, ['leafed-pot'])).toBeNull();
    expect(readyAndSuits(kansas, [])).toBeNull();
    expect(readyAndSuits({ ...kansas, level: 'not-here' }, ['dormant-pot'])).toBeNull();
  });
});
