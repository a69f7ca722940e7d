/** Cultivars to offer in place of one that does not suit or is sold out. */
import type { Reason } from '../records/common.ts';
import { type Alternative, levels, type Match } from './answers.ts';
import type { MatchedCultivar } from './subject.ts';
import { levelWords, modeled, ripeningClassWords, ripeningOrder } from './words.ts';

/**
 * How far apart two cultivars are, in steps: another flavor class counts two, another species three, each ripening class
 * and each level below the best one. Standing: ours.
 */
const OTHER_FLAVOR = 2;
const OTHER_SPECIES = 3;
const MOST_OFFERED = 5;

export interface Candidate {
  readonly cultivar: MatchedCultivar;
  /** How it does in the place asked about; null when no place is chosen. */
  readonly match: Match | null;
}

const levelSteps = (match: Match | null) => (match === null ? 0 : levels.indexOf(match.level));

function distance(wanted: MatchedCultivar, { cultivar, match }: Candidate): number {
  const flavor = cultivar.flavor === wanted.flavor ? 0 : OTHER_FLAVOR;
  const species = cultivar.species === wanted.species ? 0 : OTHER_SPECIES;
  const ripening = Math.abs(ripeningOrder[cultivar.ripening] - ripeningOrder[wanted.ripening]);
  return flavor + species + ripening + levelSteps(match);
}

function reasons(wanted: MatchedCultivar, { cultivar, match }: Candidate): Reason[] {
  const because: Reason[] = [];
  const grower = (text: string) => because.push({ text, standing: 'seen' });
  if (cultivar.flavor === wanted.flavor) grower('It has the same kind of flavor.');
  if (cultivar.ripening === wanted.ripening) grower('It ripens at the same time.');
  else grower(`It is ${ripeningClassWords[cultivar.ripening]}.`);
  if (match) because.push(modeled(`There it is: ${levelWords[match.level].toLowerCase()}.`));
  return because;
}

/**
 * The nearest of `all` to a cultivar, nearest first, those of the same distance by id; at most `most`. Cultivars that do
 * not suit the place at all are left out.
 */
export function alternatives(
  wanted: MatchedCultivar,
  all: readonly Candidate[],
  most: number = MOST_OFFERED,
): Alternative[] {
  return all
    .filter(({ cultivar, match }) => cultivar.id !== wanted.id && match?.level !== 'not-here')
    .map(candidate => ({ candidate, steps: distance(wanted, candidate) }))
    .sort((a, b) => a.steps - b.steps || (a.candidate.cultivar.id < b.candidate.cultivar.id ? -1 : 1))
    .slice(0, most)
    .map(({ candidate }) => ({
      cultivar: candidate.cultivar.id,
      level: candidate.match?.level ?? null,
      because: reasons(wanted, candidate),
    }));
}
