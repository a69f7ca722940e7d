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
 * unless plants came back, and only plants that were sold can come back. Lots that share an id are left out: their counts cannot be told apart. `sold` is never written: it is what is missing, and must not be less than none.
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

/** What is known from the newest count on. */
export interface Known {
  raised: number;
  /** Plants at the newest count; those raised before there was one. */
  plants: number;
  /** Day of that count; null before there was one. */
  countedOn: string | null;
  /** Lost and returned since that count. */
  lost: number;
  returned: number;
  lostInAll: number;
}

function lotProblems({ value: { raised } }: LotEntry, sights: readonly Sight[]): Problem[] {
  let known: Known = { raised, plants: raised, countedOn: null, lost: 0, returned: 0, lostInAll: 0 };
  return sights.flatMap(({ walk, row }) => {
    const lost = row.lost ?? 0;
    known = {
      ...known,
      lost: known.lost + lost,
      lostInAll: known.lostInAll + lost,
      returned: known.returned + (row.returned ?? 0),
    };
    const words = row.left === null ? lossWords(known) : countWords(known, row.left);
    if (row.left !== null) known = { ...known, plants: row.left, countedOn: walk.day, lost: 0, returned: 0 };
    if (!words) return [];
    return [{ ...words, file: walk.file, spot: atCell(row.line, row.left === null ? 'lost' : 'left') }];
  });
}

export type Words = Omit<Problem, 'file' | 'spot'>;

/** `6 were left on 2026-09-05 and 1 returned` */
function before({ plants, countedOn, returned }: Known): string {
  const had = countedOn === null ? `${plants} were raised` : `${plants} were left on ${countedOn}`;
  return returned > 0 ? `${had} and ${returned} returned` : had;
}

function lossWords(known: Known): Words | null {
  const most = known.plants + known.returned;
  if (known.lost <= most) return null;
  return {
    rule: 'counts-balance',
    got: String(known.lost),
    expected: `at most ${most}`,
    message: `${plural(known.lost, 'plant')} lost, but only ${before(known)}`,
    remedy: remedyFor(known),
  };
}

/** What is wrong with a count; null for one that fits what was known before. */
export function countWords(known: Known, left: number): Words | null {
  const { raised, plants, countedOn, lost, returned, lostInAll } = known;
  const most = plants + returned - lost;
  if (countedOn !== null && left > plants + returned) {
    return {
      rule: 'left-rises',
      got: String(left),
      expected: `at most ${most}`,
      message: `${plural(left, 'plant')} left, but ${before(known)}`,
      remedy: 'count again; plants that came back go in the column returned.',
    };
  }
  if (left > most) {
    return {
      rule: 'counts-balance',
      got: String(left + lost),
      expected: `at most ${most}`,
      message: `${sum(left, lost)}, but only ${before(known)}`,
      remedy: remedyFor(known),
    };
  }
  if (left + lostInAll <= raised) return null;
  return {
    rule: 'counts-balance',
    got: String(left + lostInAll),
    expected: `at most ${raised - lostInAll}`,
    message: `${sum(left, lostInAll)}, but only ${raised} were raised`,
    remedy: 'count again; only plants that were sold can come back.',
  };
}

function sum(left: number, lost: number): string {
  return lost > 0 ? `${left} left and ${lost} lost make ${left + lost}` : `${plural(left, 'plant')} left`;
}

function remedyFor({ countedOn }: Known): string {
  return countedOn === null
    ? 'count again, or mend "raised" of the lot.'
    : 'one of the counts is wrong; count again.';
}
