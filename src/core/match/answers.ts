/**
 * What is computed about a cultivar in a place: values that always carry their reasons. Types only, so that pages can be
 * written against them. Temperatures C, shares 0 to 1. A `doy` is a day of a 365-day year, 1 to 365 (`monthDay` in
 * `days.ts` turns it into a date).
 */

import type { Day, DayRange } from '../days.ts';
import type { Crop, Form, Reason } from '../records/common.ts';
import type { Trial } from '../records/cultivar.ts';
import type { RainLoss } from '../records/rainLoss.ts';
import type { Lining } from '../records/sending.ts';
import type { ClimateTraits } from './likeness.ts';
import type { Receiving } from './receiving.ts';

/** The one verdict, from best to worst. `levelWords` in `words.ts` has the words people read. */
export const levels = ['at-home', 'with-care', 'in-a-pot', 'a-gamble', 'not-here'] as const;
export type Level = (typeof levels)[number];

/** What the winter asks for, from least to most. */
export const winterCares = ['nothing', 'mulch', 'wrap', 'bury', 'store'] as const;
/**
 * `nothing`; `mulch` the crown and break the wind; `wrap` with dry filling; `bury` or bring a potted tree under cover;
 * `store` only a tree that spends the winter in a store lives.
 */
export type WinterCare = (typeof winterCares)[number];

/** How old the tree is in the ground. */
export type TreeAge = 'first-winter' | 'second-winter' | 'established';

export interface WinterVerdict {
  care: WinterCare;
  /** Design low less what the wood stands, C: 0 or more is enough in nine winters in ten. */
  marginC: number;
  /** What the wood stands at this age, C. */
  limitC: number;
  /** Low of one winter in ten here, shelter counted, C. */
  designLowC: number;
  because: Reason[];
}

/** What a potted tree left outside needs: nothing; its pot insulated; or a store. */
export const potCares = ['stays-out', 'insulate', 'store'] as const;
export type PotCare = (typeof potCares)[number];

export interface PotVerdict {
  care: PotCare;
  /** Container class the figure is for, such as `#3`. */
  container: string;
  /** Coldest the mix gets in one winter in ten, C, never above 0 in this estimate unless the air stays above it. */
  mixLowC: number;
  because: Reason[];
}

/** >= 80 % of years reliable; 50 to 80 most years; 20 to 50 some years; below that not outdoors. */
const ripeningWords = ['reliable', 'most-years', 'some-years', 'not-outdoors'] as const;
export type RipeningWord = (typeof ripeningWords)[number];

/** Days of the year in the order of the growing season: a later one may have the smaller number when the year turns. */
export interface DoySpread {
  /** Early (warm) year: one in ten is earlier. */
  p10: number;
  p50: number;
  /** Late (cool) year: one in ten is later. */
  p90: number;
}

export interface RipeningOdds {
  /** Share of years with ripe fruit before the season ends; how little is known of the need is counted. */
  share: number;
  word: RipeningWord;
  /** First ripe fruit, in the years that get there; null below one year in ten. */
  dates: DoySpread | null;
}

export interface RipeningVerdict extends RipeningOdds {
  crop: Crop;
  /** `needs-wasp`: sets no fruit without the fig wasp; `no-figure`: the species gives no heat need for this class. */
  blocked: 'needs-wasp' | 'no-figure' | null;
  /** The same for a stored pot woken four weeks early under cover. Never worse than outdoors. */
  headStart: RipeningOdds;
  because: Reason[];
}

/** How much of the crop rain and damp air spoil. */
export type WetLevel = RainLoss;

export interface WetVerdict {
  level: WetLevel;
  /** Rain a month in the ripening window, mm; null when unknown. */
  rainMm: number | null;
  /** Mean vapor pressure deficit there, kPa. */
  deficitKpa: number;
  because: Reason[];
}

/** How well a form of sale suits a buyer here on this day. */
const formFits = ['best', 'fine', 'poor'] as const;
export type FormFit = (typeof formFits)[number];

export interface FormAdvice {
  form: Form;
  fit: FormFit;
  because: Reason[];
}

export interface Match {
  cultivar: string;
  place: string;
  level: Level;
  /** Why, most important first. */
  because: Reason[];
  /** What would make it better, in words; empty when nothing needs to. */
  whatWouldChangeIt: Reason[];
  winter: Record<TreeAge, WinterVerdict>;
  pot: PotVerdict;
  /** One per crop of the cultivar, in the order it lists them. */
  ripening: RipeningVerdict[];
  wet: WetVerdict;
  /** Best first. */
  forms: FormAdvice[];
  /** Trials in climates like this one, counted in all of the above, those that count most first. */
  trials: Trial[];
  /** What the model alone says; equal to `level` where there is no trial. */
  modeled: Level;
}

/** What the reader's own circumstances change. */
export interface MatchContext {
  asOf: Day;
  /** Pot the tree would stand in, liters. */
  potLiters: number;
  /** How much warmer the planting spot is on cold nights than the station, C: a wall +1 to +3, a hollow -2 to -5. */
  shelterC: number;
  /** Whether fig wasps live there. */
  waspsNear: boolean;
  /** The climates that trials name, by the id of the place. */
  trialClimates: Readonly<Record<string, ClimateTraits>>;
}

export interface Alternative {
  cultivar: string;
  /** How it does in the place asked about; null when no place is chosen. */
  level: Level | null;
  /** Why it is close: flavor, ripening, how well it does here. */
  because: Reason[];
}

/** `open`: nine trips in ten pass; `by-forecast`: three of ten or more do, so a mild spell is waited for; `closed`. */
export type SendingState = 'open' | 'by-forecast' | 'closed';

/** One week of parcels of one form, Monday to Sunday (ISO 8601). */
export interface SendingWeek {
  isoYear: number;
  isoWeek: number;
  monday: Day;
  /** Share of years in which a trip that starts on a sending day of the week keeps to the limits at both ends. */
  share: number;
  state: SendingState;
  /** The carton that the share is for. */
  lining: Lining;
  /**
   * What closes the week: the weather; the grower's hand; the way being too long; trees of the yard being awake; or freezes at
   * the far end. Null where it is not closed.
   */
  closedBy: 'weather' | 'hand' | 'long-way' | 'awake' | 'freezes-there' | null;
  /** The grower's reason where the week was opened or closed by hand. */
  byHand: string | null;
  /** What the receiver can do with the tree. */
  receiving: Receiving;
}

/** Weeks in a row of one state. */
export interface SendingRun extends DayRange {
  state: SendingState;
  /** The tree can be taken only by somebody who has a store at 33 to 40 F. */
  needsStore: boolean;
  /** Of each week. */
  shares: number[];
}

/** How one form stands today for one destination. */
export interface FormTravel {
  form: Form;
  /** Of the week of the next sending day. */
  state: SendingState;
  /** Next sending day. */
  leaving: Day;
  week: SendingWeek;
  /** Days until a sending day whose trip passes, in the middle year and in nine of ten; null: not in sight. */
  wait: { middle: number | null; late: number | null };
  /** First week to come that is better than today: by forecast where today is closed, else open. Null where none is. */
  from: { state: SendingState; monday: Day } | null;
  /** First week in which no cold store is needed; null where today's needs none. */
  withoutStore: Day | null;
  because: Reason[];
}

/** `no-route`: the yard does not send there. */
export type TravelAnswer = { route: true; forms: FormTravel[] } | { route: false; because: Reason[] };
