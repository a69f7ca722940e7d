import { describe, expect, it } from 'vitest';
import { fig } from '../../../tests/match/places.ts';
import { day } from '../days.ts';
import { containerOf } from '../records/container.ts';
import type { Lot } from '../records/lot.ts';
import type { WoodSign } from '../records/walk.ts';
import type { LotSigns } from './answers.ts';
import { puttingAwayOfLot } from './puttingAwayOfLot.ts';

const asOf = day('2026-11-25');

interface Told {
  since?: string;
  pot?: string | null;
  lifted?: string;
  wood?: [WoodSign, string];
}

function told({ since = '2024-05-01', pot = '#3', lifted, wood }: Told, south = false) {
  const lot = {
    method: 'cutting',
    started: day(since),
    severed: null,
    lifted: lifted === undefined ? null : day(lifted),
    pottings: pot === null ? [] : [{ date: day(since), container: containerOf(pot) }],
  } as unknown as Lot;
  const signs = { wood: wood ? { value: wood[0], on: day(wood[1]) } : null } as LotSigns;
  return puttingAwayOfLot({ lot, species: fig, signs }, asOf, south);
}

describe('a lot that is put away', () => {
  // By age, pot and wood as `phenology/puttingAway.ts` has it; the limits are our working figures.
  it.each<[Told, string]>([
    [{}, 'half-ripe'],
    [{ pot: '#7', wood: ['brown', '2026-11-18'] }, 'ripe'],
    [{ pot: '#7', wood: ['part', '2026-11-18'] }, 'half-ripe'],
    [{ pot: '#7', wood: ['green', '2026-11-18'] }, 'soft'],
    [{ pot: '#1', wood: ['brown', '2026-11-18'] }, 'soft'],
    // A cutting needs a whole summer before the last midsummer, July 24, 2026, to count as past its first winter.
    [{ since: '2025-07-23' }, 'half-ripe'],
    [{ since: '2025-07-24' }, 'soft'],
    [{ since: '2026-05-01', pot: '#7', wood: ['brown', '2026-11-18'] }, 'soft'],
    // Green in June was this year's shoots, and says nothing of November.
    [{ pot: '#7', wood: ['green', '2026-06-20'] }, 'ripe'],
  ])('%o: %s', (lot, expected) => {
    expect(told(lot)!.answer.ripeness).toBe(expected);
  });

  it('is told by the walk it rests on', () => {
    const { answer, because } = told({ pot: '#7', wood: ['brown', '2026-11-18'] })!;
    expect(answer.when).toContain('25 to 20 F');
    expect(because[0]!.text).toBe(
      'Older than a year, on its own roots since May 1, 2024, in a #7 pot, wood brown on the walk of November 18, 2026.',
    );
  });

  it('stands in a pot', () => {
    expect(told({ pot: null })).toBeNull();
    expect(told({ lifted: '2026-11-20' })).toBeNull();
    expect(told({ lifted: '2026-12-20' })).not.toBeNull();
  });

  it('counts from January 24 south of the equator', () => {
    expect(told({ since: '2025-01-23' }, true)!.answer.ripeness).toBe('half-ripe');
    expect(told({ since: '2025-01-24' }, true)!.answer.ripeness).toBe('soft');
  });
});
