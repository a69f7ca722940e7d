import type { Walk, WalkRow } from '../../records/walk.ts';
import type { LotEntry } from '../draft.ts';
import { atCell, type Problem, plural } from '../problem.ts';
import type { Check } from './check.ts';

interface Sight {
  walk: Walk;
  row: WalkRow;
}

/**
 * Plants raised and returned are as many as those left, sold and lost, from count to count; and what is left does not rise
 * unless plants came back. Lots that share an id are left out: their counts cannot be told apart. `sold` is never written: it is what is missing, and must not be less than none.
 */
export const counts: Check = ({ lots, lotPlaces, walks }) => {
  const sights = new Map<string, Sight[]>();
  for (const walk of walks) {
    for (const row of walk.rows) {
      const seen = sights.get(row.lot);
      if (seen) seen.push({ walk, row });
      else sights.set(row.lot, [{ walk, row }]);
    }
  }
  const times = Map.groupBy(lotPlaces, ({ id }) => id);
  const told = lots.filter(({ id }) => times.get(id)?.length === 1);
  return told.flatMap(lot => lotProblems(lot, sights.get(lot.id) ?? []));
};

/** What is known at the newest count. */
interface Known {
  /** Plants there were. */
  plants: number;
  /** `were raised`, or `were left on 2026-03-01`. */
  words: string;
  counted: boolean;
  /** Since that count. */
  lost: number;
  returned: number;
}

function lotProblems({ value }: LotEntry, sights: readonly Sight[]): Problem[] {
  let known: Known = { plants: value.raised, words: 'were raised', counted: false, lost: 0, returned: 0 };
  return sights.flatMap(({ walk, row }) => {
    known = { ...known, lost: known.lost + (row.lost ?? 0), returned: known.returned + (row.returned ?? 0) };
    const problem = balance(known, walk, row);
    if (row.left !== null) {
      known = { plants: row.left, words: `were left on ${walk.day}`, counted: true, lost: 0, returned: 0 };
    }
    return problem ? [problem] : [];
  });
}

function balance(known: Known, { file }: Walk, row: WalkRow): Problem | null {
  const { plants, words, counted, lost, returned } = known;
  const there = plants + returned;
  const left = row.left ?? 0;
  if (left + lost <= there) return null;
  const before = returned > 0 ? `${plants} ${words} and ${returned} returned` : `${plants} ${words}`;
  if (counted && left > there) {
    return {
      rule: 'left-rises',
      file,
      spot: atCell(row.line, 'left'),
      got: String(left),
      expected: `at most ${there - lost}`,
      message: `${plural(left, 'plant')} left, but ${before}`,
      remedy: 'count again; plants that came back go in the column returned.',
    };
  }
  const now = lost > 0 && row.left !== null ? `${left} left and ${lost} lost make ${left + lost}` : '';
  return {
    rule: 'counts-balance',
    file,
    spot: atCell(row.line, row.left === null ? 'lost' : 'left'),
    got: String(left + lost),
    expected: `at most ${there}`,
    message: `${now || `${plural(left + lost, 'plant')} ${row.left === null ? 'lost' : 'left'}`}, but only ${before}`,
    remedy: counted
      ? 'one of the counts is wrong; count again.'
      : 'count again, or mend "raised" of the lot.',
  };
}
