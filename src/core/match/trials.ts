/** What the grower saw in places of the same class. It outranks the model there. */
import type { PlaceClass, ToldClass, Trial } from '../records/cultivar.ts';
import type { Level, TrialSeen, WinterCare } from './answers.ts';
import { type LevelParts, levelOf } from './level.ts';
import { levelWords } from './words.ts';

/** Share of years each word of a trial stands for: the middle of the model's own bands. */
const ripenedShare: Readonly<Record<Trial['ripened'], number>> = {
  all: 0.9,
  most: 0.65,
  some: 0.35,
  none: 0,
};

/** What the winters of a trial say about the care a tree in the ground needs; stored trees say nothing about it. */
const careSeen: Readonly<Record<Exclude<Trial['winter'], 'stored'>, WinterCare>> = {
  unhurt: 'mulch',
  'died-back': 'wrap',
  killed: 'bury',
};

const winterWords: Readonly<Record<Trial['winter'], string>> = {
  unhurt: 'the winters did not hurt it',
  'died-back': 'it died back',
  killed: 'it was killed',
  stored: 'it wintered in a store',
};

const ripenedWords: Readonly<Record<Trial['ripened'], string>> = {
  all: 'the main crop ripened every season',
  most: 'the main crop ripened in most seasons',
  some: 'the main crop ripened in some seasons',
  none: 'the main crop never ripened',
};

/** Whether a class told of a trial is that of a place; a summer that nobody told of fits any. */
export function sameClass(a: ToldClass, b: PlaceClass): boolean {
  const summer = a.summer === null || a.summer === b.summer;
  return a.winter === b.winter && a.season === b.season && summer && a.air === b.air;
}

/** Trials in places of a class, the longest first, the newer of two as long. */
export function trialsIn(trials: readonly Trial[], placeClass: PlaceClass): Trial[] {
  if (trials.length === 0) return [];
  const seasons = ({ from, to }: Trial) => to - from;
  return trials
    .filter(trial => sameClass(trial.class, placeClass))
    .sort((a, b) => seasons(b) - seasons(a) || b.to - a.to);
}

/** The model's parts with what a trial saw put in their place. A head start keeps only what the model says it gains. */
function partsSeen(trial: Trial, model: LevelParts): LevelParts {
  const seen = ripenedShare[trial.ripened];
  const parts = { ...model, chill: 'met', fruitless: false } as const;
  if (trial.winter === 'stored') return { ...parts, outdoors: 0, headStart: seen };
  const gain = Math.max(0, model.headStart - model.outdoors);
  return {
    ...parts,
    care: careSeen[trial.winter],
    outdoors: seen,
    headStart: Math.min(1, seen + gain),
  };
}

export function levelSeen(trial: Trial, model: LevelParts): Level {
  return levelOf(partsSeen(trial, model));
}

/** A trial in words, with what the model makes of the place. */
export function trialSeen(trial: Trial, model: LevelParts): TrialSeen {
  const byModel = levelOf(model);
  const disagrees = levelSeen(trial, model) !== byModel;
  const years = trial.from === trial.to ? `in ${trial.from}` : `from ${trial.from} to ${trial.to}`;
  const against = disagrees ? ` The model alone would say "${levelWords[byModel]}".` : '';
  const text = `Grown at ${trial.where} ${years}, a place of this kind: ${winterWords[trial.winter]}, and ${ripenedWords[trial.ripened]}.${against}`;
  return { trial, disagrees, text };
}
