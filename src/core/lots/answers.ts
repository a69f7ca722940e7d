/** What is computed about one lot: values that always carry their reasons. */

import type { Day, DayRange } from '../days.ts';
import type { Money } from '../money.ts';
import type { Answer, Form, Reason } from '../records/common.ts';
import type { HealthSign, LeafSign, RootSign, Where, WoodSign } from '../records/walk.ts';

/** A value seen on a walk, and when. */
export interface Seen<T> {
  value: T;
  on: Day;
}

/** The newest observation of each kind on or before `asOf`; null where nobody looked. */
export interface LotSigns {
  heightCm: Seen<number> | null;
  caliperMm: Seen<number> | null;
  roots: Seen<RootSign> | null;
  leaves: Seen<LeafSign> | null;
  wood: Seen<WoodSign> | null;
  health: Seen<HealthSign> | null;
  where: Seen<Where> | null;
  /** First of the unbroken run of sightings outside (outdoors or shade) that holds today; null: it stands under cover, or nobody said. */
  outsideSince: Day | null;
  /** First and last sighting of the newest unbroken run outside, whether or not it holds today; null: never seen outside. */
  lastOutside: DayRange | null;
  /** First of the unbroken run of sightings with leaves falling or bare that holds today; null when in leaf or not seen. */
  leavesDownSince: Day | null;
  /** Day of the newest walk that has a line for the lot. */
  lastLooked: Day | null;
}

/** How many plants there are. `raised + returned = left + sold + lost` and `left = reserved + free` always hold. */
export interface StockCount {
  raised: number;
  returned: number;
  left: number;
  sold: number;
  lost: number;
  /** Of those left: set aside for buyers on this day, and what can be bought. */
  reserved: number;
  free: number;
  /** Day `left` was last counted; null: never, so `left` is what was raised. */
  countedOn: Day | null;
  because: Reason[];
}

export const gateNames = [
  'counted',
  'rooted',
  'weaned',
  'sized',
  'sound',
  'leafed',
  'dormant',
  'lifting',
] as const;
/**
 * `counted` plants are left; `rooted` roots hold; `weaned` stands without shelter; `sized` large enough to sell; `sound` healthy and not held;
 * `leafed` in leaf and hardened; `dormant` truly dormant; `lifting` the soil and season let roots be bared.
 */
export type GateName = (typeof gateNames)[number];

/** passed; opens in a range of days; blocked with no day in sight; look: somebody has to look at the lot. */
type GateState = 'passed' | 'opens' | 'blocked' | 'look';

/** A span of days with its middle: 10 %, 50 % and 90 % day. */
export interface Span extends DayRange {
  likely: Day;
}

export interface Gate {
  name: GateName;
  state: GateState;
  /** Set only when the state is `opens`. */
  range: Span | null;
  /** For a gate that passes in a season only: the day from which that season may be over (10 % day). */
  closes: Day | null;
  /** What somebody has to do with the lot, where that is more than to look. */
  asks?: string;
  because: Reason[];
}

/**
 * ready: every gate passed. Otherwise blocked when a gate is; else look when nobody knows whether the lot is in leaf or asleep,
 * since no day can rest on that; else opens when a gate opens later, since nobody can make that day come sooner by looking; else
 * look. What must be looked at before an opening day is told with its reasons.
 */
export type FormState = 'ready' | 'opens' | 'blocked' | 'look';

export interface FormAnswer {
  form: Form;
  state: FormState;
  /** When `opens`: latest of the gates' early days and of their late days. */
  range: DayRange | null;
  gates: Gate[];
  /** The reasons of the gates that decide the state, in the gates' order; after them those of gates that want a look. */
  because: Reason[];
}

export interface SizeClass {
  /** Container class name the plant is graded as, such as `#1`; caliper and height move it one step at most from its pot. */
  name: string;
  /** Place in `containerClasses`. */
  classIndex: number;
  /** Graded under (-1), true to (0) or over (1) its pot; null: it stands in none. */
  againstPot: -1 | 0 | 1 | null;
  /** The pot as written. */
  container: string | null;
  heightCm: number | null;
  caliperMm: number | null;
  measuredOn: Day | null;
}

/** 0 widely to be had, to 4 hardly anywhere. */
export type ScarcityClass = 0 | 1 | 2 | 3 | 4;

export interface PriceTier {
  /** Rung of the ladder: 0 is the species' base price. */
  rung: number;
  price: Money;
  /** Rungs between an own price and the computed one; null when the price is computed. */
  overrideRungs: number | null;
}

export interface CartonFit {
  /** Name of the carton; null when none is large enough. */
  carton: string | null;
  /** How many such plants the carton takes. */
  plants: number;
  /** Height above the rim (or the roots) that the tree is cut back to; null when it travels as it is. */
  cutBackToCm: number | null;
  /** Weight of the carton with one plant in it; of the plant alone when no carton fits. */
  weightLb: number;
  /** Billable weight per rule row of the yard. */
  billable: { rule: string; billableLb: number; over: string[] }[];
}

/** A lot with everything computed for one day. */
export interface LotAnswers {
  signs: LotSigns;
  stock: StockCount;
  forms: FormAnswer[];
  size: Answer<SizeClass>;
  scarcity: Answer<ScarcityClass>;
  /** One price per form the lot may be sold in; none where the yard gives the species no base price. */
  tiers: Partial<Record<Form, Answer<PriceTier>>>;
  cartons: Partial<Record<Form, Answer<CartonFit>>>;
  /** What to look at on the next walk, in words; null when nothing. */
  lookNext: string | null;
}
