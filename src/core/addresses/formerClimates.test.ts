import { describe, expect, it } from 'vitest';
import type { Day } from '../days.ts';
import { formerClimates } from './formerClimates.ts';
import { ledgerOf } from './ledger.ts';

const row = (address: string, leadsTo: string | null = null) => ({
  address,
  since: '2026-11-25' as Day,
  leadsTo,
  line: 1,
});

describe('kinds of climate that once had a page', () => {
  it('are those in the list that no place has, in order; what leads on, parts and other pages are left alone', () => {
    const ledger = ledgerOf([
      row('/climates/'),
      row('/climates/mild-hot-dry/'),
      row('/climates/cold-warm-fair/'),
      row('/climates/cool-moderate-humid/'),
      row('/climates/cold-long-humid/'),
      row('/climates/cold-long-humid/', '/climates/#winter-cold'),
      row('/climates/frozen-cool-dry/#means'),
      row('/places/mild-hot-dry/'),
    ]);
    expect(formerClimates(ledger, new Set(['cool-moderate-humid']))).toEqual([
      'cold-warm-fair',
      'mild-hot-dry',
    ]);
  });
});
