/** The words the site uses for what the records say in codes. Nothing here decides anything. */

import type { GateName, ScarcityClass } from '../../core/lots/answers.ts';
import type {
  AirClass,
  Crop,
  Form,
  Method,
  RipeningClass,
  SeasonClass,
  Standing,
  SummerClass,
  WinterClass,
} from '../../core/records/common.ts';
import type {
  Eye,
  Fruit,
  FruitShape,
  PollinationHabit,
  Tendency,
  Trial,
} from '../../core/records/cultivar.ts';
import type { Hazard } from '../../core/records/species.ts';
import type { HealthSign, LeafSign, RootSign, Where, WoodSign } from '../../core/records/walk.ts';

export const formWords: Record<Form, string> = {
  'leafed-pot': 'Leafed in a pot',
  'dormant-pot': 'Dormant in a pot',
  'bare-root': 'Bare-root',
};

/** What a form of sale is, in one sentence. */
export const formMeanings: Record<Form, string> = {
  'leafed-pot': 'Growing, with its leaves on, in the pot it was raised in.',
  'dormant-pot': 'Asleep and without leaves, in its pot. It can be kept asleep until your spring.',
  'bare-root':
    'Asleep and lifted from its soil, the roots in damp wrap. Light to send; plant or pot it at once.',
};

/** How a lot was raised, up to the day it was started. */
export const startedWords: Record<Method, string> = {
  'air-layer': 'air layer put on',
  cutting: 'cutting struck',
  division: 'divided',
  graft: 'grafted',
};

export const ripeningWords: Record<RipeningClass, string> = {
  'very-early': 'very early',
  early: 'early',
  mid: 'mid-season',
  late: 'late',
  'very-late': 'very late',
};

export const cropWords: Record<Crop, string> = { breba: 'breba', main: 'main crop' };

export const pollinationWords: Record<PollinationHabit, string> = {
  unaided: 'Sets fruit without pollination',
  'self-fertile': 'Pollinates itself',
  partner: 'Needs a second tree to pollinate it',
  'wasp-main': 'The main crop needs the fig wasp; breba figs set without it',
  'wasp-all': 'Every crop needs the fig wasp',
};

/** The same in a word or two, for tables. */
export const pollinationShort: Record<PollinationHabit, string> = {
  unaided: 'not needed',
  'self-fertile': 'self-fertile',
  partner: 'second tree',
  'wasp-main': 'fig wasp for main crop',
  'wasp-all': 'fig wasp',
};

export const shapeWords: Record<FruitShape, string> = {
  round: 'round',
  flattened: 'flattened',
  oval: 'oval',
  pear: 'pear-shaped',
  long: 'long',
  heart: 'heart-shaped',
  cluster: 'a cluster',
};

export const eyeWords: Record<Eye, string> = {
  closed: 'closed',
  sealed: 'sealed with a drop of honey',
  'half-open': 'half open',
  open: 'open',
  none: 'none',
};

/** Colors of skin and flesh: `Skin green with violet, flesh red`. */
export function colorsInWords({ skin, blush, flesh }: Fruit): string {
  const cheek = blush === null || blush === skin ? '' : ` with ${blush}`;
  return `Skin ${skin}${cheek}, flesh ${flesh}`;
}

export const splitWords: Record<Tendency, string> = {
  low: 'seldom splits',
  some: 'sometimes splits after rain',
  high: 'splits readily after rain',
};

export const rainWords: Record<'good' | 'fair' | 'poor', string> = {
  good: 'stands rain well',
  fair: 'stands some rain',
  poor: 'spoils in rain',
};

export const vigourWords: Record<'low' | 'medium' | 'high', string> = {
  low: 'slow and small',
  medium: 'medium',
  high: 'strong',
};

export const winterWords: Record<WinterClass, string> = {
  frozen: 'frozen',
  cold: 'cold',
  cool: 'cool',
  mild: 'mild',
  'frost-free': 'nearly frost-free',
};

export const seasonWords: Record<SeasonClass, string> = { short: 'short', middle: 'medium', long: 'long' };

export const summerWords: Record<SummerClass, string> = {
  cool: 'cool',
  moderate: 'moderate',
  warm: 'warm',
  hot: 'hot',
  'very-hot': 'very hot',
};

export const airWords: Record<AirClass, string> = { dry: 'dry', fair: 'fair', humid: 'humid' };

export const trialWinterWords: Record<Trial['winter'], string> = {
  unhurt: 'unhurt',
  'died-back': 'died back',
  killed: 'killed',
  stored: 'wintered in storage',
};

export const trialRipenedWords: Record<Trial['ripened'], string> = {
  all: 'every season',
  most: 'most seasons',
  some: 'some seasons',
  none: 'no season',
};

/** How sure a reason is. */
const standingWords: Record<Standing, string> = {
  seen: 'seen in the yard',
  published: 'published',
  memory: 'from memory of the source named',
  practice: 'common practice',
  fitted: 'our figure, fitted to dated observations',
  ours: 'our working figure',
  modeled: 'computed',
};

/** How sure something is, and where it comes from: `published: Author, year`. A source that says the standing itself is enough. */
export function standingInWords(standing: Standing, source?: string): string {
  const words = standingWords[standing];
  if (source === undefined) return words;
  const named = source.replace(/\.$/, '');
  return named.toLowerCase().startsWith(words)
    ? named.charAt(0).toLowerCase() + named.slice(1)
    : `${words}: ${named}`;
}

/** What each gate asks, as the heading of its reasons. */
export const gateWords: Record<GateName, string> = {
  counted: 'Are any left?',
  rooted: 'Has it rooted?',
  weaned: 'Can it live without shelter?',
  sized: 'Is it large enough?',
  sound: 'Is it sound?',
  leafed: 'Is it in leaf and hardened?',
  dormant: 'Is it truly dormant?',
  lifting: 'Can it be dug bare-root now?',
};

/** Why a form cannot be had, when that gate blocks it. */
export const blockedWords: Record<GateName, string> = {
  counted: 'None left',
  rooted: 'Not rooted',
  weaned: 'Not weaned',
  sized: 'Too small yet',
  sound: 'Held back',
  leafed: 'Not in leaf',
  dormant: 'Not dormant',
  lifting: 'Not the season to lift',
};

export const scarcityWords: Record<ScarcityClass, string> = {
  0: 'Widely offered',
  1: 'Offered by some',
  2: 'Seldom offered',
  3: 'Hard to find',
  4: 'Almost never offered',
};

export const rootWords: Record<RootSign, string> = {
  none: 'none seen yet',
  showing: 'showing',
  holding: 'hold the ball',
  full: 'fill the pot',
};

export const leafWords: Record<LeafSign, string> = {
  full: 'full',
  turning: 'turning',
  falling: 'falling',
  bare: 'all down',
};

export const woodWords: Record<WoodSign, string> = {
  green: 'still green',
  part: 'part ripened',
  brown: 'ripe and brown',
};

export const healthWords: Record<HealthSign, string> = {
  sound: 'sound',
  watch: 'being watched',
  hold: 'held back',
};

export const whereWords: Record<Where, string> = {
  outdoors: 'outdoors',
  shade: 'in the shade',
  tunnel: 'in the tunnel',
  store: 'in the cold store',
};

export const hazardWords: Record<Hazard['to'], string> = {
  people: 'For people',
  pets: 'For pets',
  'people-and-pets': 'For people and pets',
};

const weekdays = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'] as const;

/** Days of the week in words, Monday first: `Mondays and Tuesdays`. Takes ISO weekdays, 1 to 7. */
export function weekdaysInWords(days: readonly number[]): string {
  return listInWords([...days].sort((a, b) => a - b).map(day => `${weekdays[day - 1]}s`));
}

/** `a`, `a and b`, `a, b and c`. */
export function listInWords(words: readonly string[], last = 'and'): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} ${last} ${words.at(-1)}`;
}

/** First letter large, the rest as written. */
export function sentence(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** First letter small, the rest as written: for words that go on a sentence. */
export function lowerFirst(words: string): string {
  return words.charAt(0).toLowerCase() + words.slice(1);
}

/** `1 lot`, `12 lots`, `no lots`. */
export function countInWords(count: number, one: string, many = `${one}s`): string {
  if (count === 0) return `no ${many}`;
  return `${count.toLocaleString('en-US')} ${count === 1 ? one : many}`;
}
