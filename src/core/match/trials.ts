/**
 * What was seen of a cultivar somewhere, beside what the model makes of a place. A trial counts by its seasons and by how like the two climates
 * are; the model counts as a few seasons more. So a long trial at the place itself decides, and one in a half-like climate leans a little.
 */
import type { Crop, Reason } from '../records/common.ts';
import type { PlaceClass, ToldClass, Trial } from '../records/cultivar.ts';
import type { RipeningOdds, RipeningVerdict, WinterCare, WinterVerdict } from './answers.ts';
import { winterCares } from './answers.ts';
import { type ClimateTraits, summerLikeness, winterLikeness } from './likeness.ts';
import { SMALLEST_SHARE_FOR_A_DATE } from './tally.ts';
import { careWords } from './winter.ts';
import { cropWords, ours, ripeningWord, yearsOfTen } from './words.ts';

/** Share of seasons each word of a trial stands for: the middle of the bands the model's own words have. */
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

/** Seasons the model counts as, beside those of trials. Standing: ours. */
const MODEL_SEASONS = 4;
/** A trial counts as no more seasons than this, however long it ran: one bench is one bench. Standing: ours. */
const MOST_SEASONS = 12;
/** Below this likeness a trial says nothing about a place. Standing: ours. */
const LEAST_LIKENESS = 0.1;
/** From this weight in seasons on, winters seen move the care by a step. Standing: ours. */
const SEASONS_FOR_CARE = 3;
/** Where nobody said which climate a trial was in, a place of its class counts as this like. Standing: ours. */
const SAME_CLASS_LIKENESS = 0.3;

const winterWords: Readonly<Record<Trial['winter'], string>> = {
  unhurt: 'the winters did not hurt it',
  'died-back': 'it died back',
  killed: 'it was killed',
  stored: 'it wintered in storage',
};

const ripenedWords: Readonly<Record<Trial['ripened'], string>> = {
  all: 'ripened every season',
  most: 'ripened in most seasons',
  some: 'ripened in some seasons',
  none: 'never ripened',
};

/** Where a verdict is made: its class and traits, and those of the places trials name. */
export interface TrialGround {
  readonly class: PlaceClass;
  readonly traits: ClimateTraits;
  readonly traitsOf: (placeId: string) => ClimateTraits | null;
}

/** A trial that says something about a place, with the seasons it counts as there. */
export interface WeighedTrial {
  readonly trial: Trial;
  readonly summerSeasons: number;
  readonly winterSeasons: number;
}

/** Whether a class told of a trial is that of a place; a summer that nobody told of fits any. */
function sameClass(told: ToldClass, place: PlaceClass): boolean {
  const summer = told.summer === null || told.summer === place.summer;
  return told.winter === place.winter && told.season === place.season && summer && told.air === place.air;
}

function weighed(trial: Trial, ground: TrialGround): WeighedTrial {
  const seasons = Math.min(MOST_SEASONS, trial.to - trial.from + 1);
  const there = trial.place === null ? null : ground.traitsOf(trial.place);
  const byClass = sameClass(trial.class, ground.class) ? SAME_CLASS_LIKENESS : 0;
  const [summer, winter] =
    there === null
      ? [byClass, byClass]
      : [summerLikeness(there, ground.traits), winterLikeness(there, ground.traits)];
  const counts = (likeness: number) => (likeness < LEAST_LIKENESS ? 0 : likeness * seasons);
  return { trial, summerSeasons: counts(summer), winterSeasons: counts(winter) };
}

/**
 * Trials that say something about a place, those that count most first, then the newer. A trial whose summers were unlike says nothing at all,
 * since hardly anybody tells a winter apart from the year it belongs to.
 */
export function weighedTrials(trials: readonly Trial[], ground: TrialGround): WeighedTrial[] {
  return trials
    .map(trial => weighed(trial, ground))
    .filter(({ summerSeasons }) => summerSeasons > 0)
    .sort((a, b) => b.summerSeasons - a.summerSeasons || b.trial.to - a.trial.to);
}

/** A trial in words. */
export function trialReason({ trial, summerSeasons }: WeighedTrial): Reason {
  const years = trial.from === trial.to ? `in ${trial.from}` : `from ${trial.from} to ${trial.to}`;
  const seasons = Math.min(MOST_SEASONS, trial.to - trial.from + 1);
  const like =
    summerSeasons > 0.85 * seasons ? 'a climate like this one' : 'a climate somewhat like this one';
  return {
    text: `Trial at ${trial.where} ${years}, in ${like}: ${winterWords[trial.winter]}, and the ${cropWords[trial.crop]} ${ripenedWords[trial.ripened]}.`,
    standing: 'seen',
  };
}

/** The mean of the model's share and what trials saw, each by its seasons; the model's own where there is no trial. */
function blended(model: number, trials: readonly WeighedTrial[]): number {
  let seasons = MODEL_SEASONS;
  let sum = MODEL_SEASONS * model;
  for (const { trial, summerSeasons } of trials) {
    seasons += summerSeasons;
    sum += summerSeasons * ripenedShare[trial.ripened];
  }
  return sum / seasons;
}

function withShare(odds: RipeningOdds, share: number): RipeningOdds {
  return {
    share,
    word: ripeningWord(share),
    dates: share < SMALLEST_SHARE_FOR_A_DATE ? null : odds.dates,
  };
}

/**
 * A crop's odds with trials counted. Trials of trees outdoors speak for outdoors, and a head start keeps what the model says it gains; trials of
 * stored trees speak for the head start only. A crop that sets no fruit here stays as it is: what wasps or partners did elsewhere proves nothing.
 */
export function cropWithTrials(verdict: RipeningVerdict, trials: readonly WeighedTrial[]): RipeningVerdict {
  const ofCrop = trials.filter(({ trial }) => trial.crop === verdict.crop);
  if (verdict.blocked !== null || ofCrop.length === 0) return verdict;
  const outdoor = ofCrop.filter(({ trial }) => trial.winter !== 'stored');
  const stored = ofCrop.filter(({ trial }) => trial.winter === 'stored');
  const share = blended(verdict.share, outdoor);
  const gain = Math.max(0, verdict.headStart.share - verdict.share);
  const started = Math.max(share, blended(Math.min(1, share + gain), stored));
  return {
    ...verdict,
    ...withShare(verdict, share),
    headStart: withShare(verdict.headStart, started),
    because: [
      ours(
        `Counting these trials along with the model, its ${cropWords[verdict.crop]} ripens outdoors ${yearsOfTen(share)}. By the model alone: ${yearsOfTen(verdict.share)}.`,
      ),
      ...verdict.because.slice(1),
    ],
  };
}

/** The winter of an established tree with trials counted: what they saw moves the care by one step at most. */
export function winterWithTrials(winter: WinterVerdict, trials: readonly WeighedTrial[]): WinterVerdict {
  const told = trials.filter(({ trial }) => trial.winter !== 'stored');
  const seasons = told.reduce((sum, { winterSeasons }) => sum + winterSeasons, 0);
  if (seasons < SEASONS_FOR_CARE) return winter;
  const step = (care: WinterCare) => winterCares.indexOf(care);
  const seen =
    told.reduce(
      (sum, { trial, winterSeasons }) =>
        sum + winterSeasons * step(careSeen[trial.winter as Exclude<Trial['winter'], 'stored'>]),
      0,
    ) / seasons;
  const own = step(winter.care);
  // "Unhurt" is all a trial can say: it never asks for mulch where the model asks for nothing.
  const moved = seen > own + 0.5 && seen > step('mulch') + 0.5 ? own + 1 : seen < own - 0.5 ? own - 1 : own;
  const care = winterCares[moved] as WinterCare;
  if (care === winter.care) return winter;
  return {
    ...winter,
    care,
    because: [
      ...winter.because.slice(0, -1),
      ours(`These trials move the advice one step. ${careWords[care]}`),
    ],
  };
}

/** Whether a crop that ripened in a climate like this one shows that the winter rest is enough. */
export function ripenedHere(trials: readonly WeighedTrial[], crops: readonly Crop[]): boolean {
  return trials.some(
    ({ trial, summerSeasons, winterSeasons }) =>
      crops.includes(trial.crop) &&
      trial.ripened !== 'none' &&
      Math.min(summerSeasons, winterSeasons) >= SEASONS_FOR_CARE,
  );
}
