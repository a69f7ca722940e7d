/** What the directives of a guide say: to a reader with a place a date, to any reader the rule, and where the place has no such day a sentence that still reads. */

import type { CareYear } from '../core/care/careYear.ts';
import type { PartCondition } from '../core/care/guideConditions.ts';
import { dayAtChance, freezeDays, type GuideDays, speciesDays } from '../core/care/guideDates.ts';
import { temperatureText, type UnitChoice } from '../core/care/guideMeasures.ts';
import {
  type Chance,
  type DateDirective,
  type DateName,
  type FreezeDateName,
  freezeDateNames,
  type SpeciesDateName,
  usualChance,
} from '../core/care/guideVocabulary.ts';
import { monthInWords } from '../core/days.ts';
import type { FreezeThreshold } from '../core/records/place.ts';
import { fahrenheitToCelsius } from '../core/units.ts';

/** `April 9` */
function dayWords(monthDay: string): string {
  const [month, date] = monthDay.split('-').map(Number) as [number, number];
  return `${monthInWords(month)} ${date}`;
}

/** `between October 3 and 24`, `between March 28 and April 4`; one day is `about October 3`. */
export function rangeWords(from: string, to: string): string {
  if (from === to) return `about ${dayWords(from)}`;
  const [a, b] = [dayWords(from), dayWords(to)];
  const sameMonth = from.slice(0, 2) === to.slice(0, 2);
  return `between ${a} and ${sameMonth ? Number(to.slice(3)) : b}`;
}

function levelC(level: FreezeThreshold): number {
  return fahrenheitToCelsius(Number.parseInt(level, 10));
}

export interface DateAsked {
  how: DateDirective;
  date: DateName;
  at: FreezeThreshold | null;
  chance: Chance;
  /** The author's own words for a place without such a day. */
  otherwise: string;
}

function isFreezeDate(name: DateName): name is FreezeDateName {
  return (freezeDateNames as readonly string[]).includes(name);
}

const chanceWords = { '1-in-10': '1 in 10', '5-in-10': '5 in 10', '9-in-10': '9 in 10' } as const;

/** The rule behind a date, as words that follow before, after or around. */
function ruleWords({ date, at, chance }: DateAsked, units: UnitChoice): string {
  if (isFreezeDate(date)) {
    const night = at === null ? 'freezing night' : `${temperatureText(levelC(at), levelC(at), units)} night`;
    const odds = chanceWords[chance];
    return date === 'first-freeze'
      ? `the day the chance of a ${night} passes ${odds}`
      : `the day the chance of a later ${night} drops to ${odds}`;
  }
  return speciesRules[date];
}

const speciesRules: Record<SpeciesDateName, string> = {
  'leaf-fall': 'the first hard freeze or two cool weeks',
  dormant: 'the end of the first cold weeks past leaf fall',
  budbreak: 'the weeks when days first stay warm',
  'safe-out': 'the day the chance of a later freeze drops to 1 in 10',
  'stop-feeding': 'the day ten weeks ahead of the usual first freeze',
};

/** What is said where there is no such day, when the author gave no words. */
function absentWords({ how, date, at }: DateAsked, units: UnitChoice): string {
  if (isFreezeDate(date)) {
    const night =
      at === null ? 'freezing nights' : `nights of ${temperatureText(levelC(at), levelC(at), units)}`;
    return how === 'around'
      ? `when ${night} threaten, which is rare here`
      : `${how} ${night}, which are rare here`;
  }
  return absentBySpecies[date](how);
}

const absentBySpecies: Record<SpeciesDateName, (how: DateDirective) => string> = {
  'leaf-fall': how => `${how} the coolest weeks, since leaves need not fall here`,
  dormant: how => `${how} the coolest weeks, since a deep sleep is not to be relied on here`,
  budbreak: how => `${how} the first growth after the coolest weeks`,
  'safe-out': () => 'at any time of year, since freezes are rare here',
  'stop-feeding': how => `${how} growth slows for the coolest weeks`,
};

function daysOf(year: CareYear, { date, at }: DateAsked): GuideDays {
  return isFreezeDate(date) ? freezeDays(year, date, at ?? '32F') : speciesDays(year, date);
}

function chosenDay(days: GuideDays, { how, date, chance }: DateAsked): string | null {
  if (isFreezeDate(date)) return dayAtChance(days, date, chance);
  return how === 'after' ? (days.late ?? days.middle) : days.early;
}

/**
 * The words of a date directive. `year` is null for the general guide. `unsaid` names the species whose dates they are, where the guide
 * is read without one.
 */
export function dateWords(
  asked: DateAsked,
  year: CareYear | null,
  units: UnitChoice,
  unsaid: string | null,
): string {
  if (year === null) {
    // The sentence around it has named the night, so the rule would only say it again.
    if (asked.how === 'around' && isFreezeDate(asked.date))
      return 'in the weeks that your place page gives for it';
    return `${asked.how} ${ruleWords(asked, units)}`;
  }
  const days = daysOf(year, asked);
  const note = unsaid === null || isFreezeDate(asked.date) || asked.date === 'safe-out' ? '' : ` (${unsaid})`;
  if (asked.how === 'around') {
    const { early, middle, late } = days;
    if (early !== null && late !== null) return `${rangeWords(early, late)}${note}`;
    const some = isFreezeDate(asked.date) ? 'that have one' : 'when that happens';
    if (middle !== null) return `about ${dayWords(middle)}, in the years ${some}${note}`;
    const only = early ?? late;
    if (only !== null) return `about ${dayWords(only)}, in the few years ${some}${note}`;
  } else {
    const day = chosenDay(days, asked);
    if (day !== null) return `${asked.how} ${dayWords(day)}${note}`;
  }
  return asked.otherwise === '' ? absentWords(asked, units) : asked.otherwise;
}

/** A date directive as it was written, its check passed. */
export function askedDate(
  how: DateDirective,
  attributes: Record<string, string | null | undefined>,
  otherwise: string,
): DateAsked {
  return {
    how,
    date: attributes.date as DateName,
    at: (attributes.at ?? null) as FreezeThreshold | null,
    chance: (attributes.chance ?? usualChance) as Chance,
    otherwise: otherwise.trim(),
  };
}

const winterWords: Record<string, string> = {
  frozen: 'frozen',
  cold: 'cold',
  cool: 'cool',
  mild: 'mild',
  'frost-free': 'nearly frost-free',
};
const formWords: Record<string, string> = {
  'leafed-pot': 'a tree in leaf',
  'dormant-pot': 'a dormant tree in its pot',
  'bare-root': 'a bare-root tree',
};
const stageWords: Record<string, string> = {
  'first-winter': 'a tree in its first winter',
  established: 'an established tree',
};
const seasonWords: Record<string, string> = { short: 'short', middle: 'medium', long: 'long' };
const summerWords: Record<string, string> = {
  cool: 'cool',
  moderate: 'moderate',
  warm: 'warm',
  hot: 'hot',
  'very-hot': 'very hot',
};
const potWords: Record<string, string> = {
  store: 'pots are stored for the winter',
  shelter: 'pots are sheltered on hard nights',
  'stand-out': 'pots stand out all winter',
};
const lateLeafWords: Record<string, string> = {
  grow: 'a tree grows on late in the year',
  drop: 'a tree in leaf has to sleep soon',
};
const plantingWords: Record<string, string> = {
  winter: 'a leafless tree is planted through the winter',
  spring: 'a leafless tree is planted as the winter ends',
  none: 'a tree is not planted before it is in leaf',
};
const coverWords: Record<string, string> = {
  none: 'no cover is needed',
  mulch: 'mulch is cover enough',
  wrap: 'a young tree needs a cage of leaves',
  bury: 'a young tree has to be bent down and buried',
  pot: 'no cover brings a young tree through',
};
const keptWords: Record<string, string> = { pot: 'a tree kept in a pot', ground: 'a tree in the ground' };

function either(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;
}

/** Whom a part is for, as a line above it: `For a fig in a pot, where winters are frozen or cold`. */
export function audienceWords(
  { values, freeze, noFreeze }: PartCondition,
  units: UnitChoice,
  speciesName: (id: string) => string,
): string {
  const in_ = (words: Record<string, string>) => (value: string) => words[value] ?? value;
  const what = [
    values.species ? either(values.species.map(speciesName)) : null,
    values.form ? either(values.form.map(in_(formWords))) : null,
    values.stage ? either(values.stage.map(in_(stageWords))) : null,
    values.kept ? either(values.kept.map(in_(keptWords))) : null,
  ].filter(words => words !== null);
  const night = (level: FreezeThreshold) => temperatureText(levelC(level), levelC(level), units);
  const where = [
    values.winter ? `winters are ${either(values.winter.map(in_(winterWords)))}` : null,
    values.season ? `the season is ${either(values.season.map(in_(seasonWords)))}` : null,
    values.summer ? `summers are ${either(values.summer.map(in_(summerWords)))}` : null,
    values.air ? `the air of late summer is ${either(values.air)}` : null,
    values.pots ? either(values.pots.map(in_(potWords))) : null,
    values['late-leaves'] ? either(values['late-leaves'].map(in_(lateLeafWords))) : null,
    values['dormant-planting'] ? either(values['dormant-planting'].map(in_(plantingWords))) : null,
    values.cover ? either(values.cover.map(in_(coverWords))) : null,
    freeze ? `nights reach ${night(freeze)}` : null,
    noFreeze ? `nights hardly ever reach ${night(noFreeze)}` : null,
  ].filter(words => words !== null);
  const subject = what.length > 0 ? `For ${what.join(', ')}` : '';
  const places = where.length > 0 ? `${subject === '' ? 'Where' : ', where'} ${where.join(' and ')}` : '';
  return subject + places;
}
