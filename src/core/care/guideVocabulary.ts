/**
 * The words a guide may use in its directives, in one place: the check, the renderer and the manual all read them from here.
 * Kept below the reading of records, which calls the check.
 */

import { forms } from '../records/formNames.ts';
import { freezeThresholds } from '../records/freezeNames.ts';
import { airClasses, seasonClasses, summerClasses, winterClasses } from '../records/placeClassNames.ts';

/** First winter after it was bought, or rooted in where it stands. */
const stages = ['first-winter', 'established'] as const;
export type Stage = (typeof stages)[number];

/** Where the tree lives. */
const keepings = ['pot', 'ground'] as const;
export type Keeping = (typeof keepings)[number];

/**
 * How a pot spends the winter: `store` where its roots are at risk in most winters, `shelter` where roots or wood are at risk in one
 * winter in ten, `stand-out` elsewhere.
 */
const potWinters = ['store', 'shelter', 'stand-out'] as const;
export type PotWinter = (typeof potWinters)[number];

/** What becomes of the leaves of a tree that comes late in the year: it grows on with them, or lets them go and sleeps. */
const lateLeaves = ['grow', 'drop'] as const;

/** When a leafless tree is planted in the ground: all through the winter, as the winter ends, or not before it is in leaf. */
const dormantPlantings = ['winter', 'spring', 'none'] as const;
export type DormantPlanting = (typeof dormantPlantings)[number];

/** The cover a tree in its first winter in the ground is given: the methods of protection, `pot` where none is enough. */
const coversAsked = ['none', 'mulch', 'wrap', 'bury', 'pot'] as const;
export type CoverAsked = (typeof coversAsked)[number];

/**
 * What the calendar of a species in a place does, so that a part of a guide cannot say otherwise than the calendar beside it:
 * `:::part{pots="store"}`, `:::part{late-leaves="drop"}`, `:::part{dormant-planting="winter spring"}`,
 * `:::part{cover="wrap bury"}`.
 */
export const calendarConditions = {
  pots: potWinters,
  'late-leaves': lateLeaves,
  'dormant-planting': dormantPlantings,
  cover: coversAsked,
} as const satisfies Record<string, readonly string[]>;
export type CalendarCondition = keyof typeof calendarConditions;

/** Conditions of a part with a closed list of values. `species` is open: the ids of the yard's species. */
export const closedConditions = {
  winter: winterClasses,
  season: seasonClasses,
  summer: summerClasses,
  air: airClasses,
  ...calendarConditions,
  form: forms,
  stage: stages,
  kept: keepings,
} as const satisfies Record<string, readonly string[]>;
export type ClosedCondition = keyof typeof closedConditions;

/**
 * Conditions on the cold of a place: `freeze="24F"` where such a night comes in at least one year in ten,
 * `no-freeze="24F"` everywhere else.
 */
export const freezeConditions = ['freeze', 'no-freeze'] as const;

export const conditionNames: readonly string[] = [
  ...Object.keys(closedConditions),
  'species',
  ...freezeConditions,
];

/** Dates that need a temperature beside them. */
export const freezeDateNames = ['first-freeze', 'last-freeze'] as const;
/** Dates that depend on the species as well as on the place. */
export const speciesDateNames = ['leaf-fall', 'dormant', 'budbreak', 'safe-out', 'stop-feeding'] as const;
export const dateNames = [...freezeDateNames, ...speciesDateNames] as const;
export type FreezeDateName = (typeof freezeDateNames)[number];
export type SpeciesDateName = (typeof speciesDateNames)[number];
export type DateName = (typeof dateNames)[number];

export const freezeLevels = freezeThresholds;

/**
 * Chances a freeze date may be asked for. For `first-freeze` the chance that it has already come; for `last-freeze` the chance that
 * one is still to come.
 */
export const chances = ['1-in-10', '5-in-10', '9-in-10'] as const;
export type Chance = (typeof chances)[number];
export const usualChance: Chance = '1-in-10';

/** Figures of a species a guide may quote, by their key in the species record. */
export const speciesFigures = {
  'leaf-damage': 'leafDamageC',
  'dormant-established': 'dormantEstablishedC',
  'dormant-first-winter': 'dormantFirstWinterC',
  'root-injury': 'rootInjuryC',
  'root-severe': 'rootSevereC',
  storage: 'storageC',
  'bare-root-keeps': 'bareRootKeepsDays',
  'chill-hours': 'chillHours',
} as const;
export type SpeciesFigureName = keyof typeof speciesFigures;
export const speciesFigureNames = Object.keys(speciesFigures) as SpeciesFigureName[];

/** Every task a calendar can hold, in the order in which a year usually asks for them after arrival. */
export const taskNames = [
  'unpack',
  'stand-apart',
  'soak-roots',
  'pot-up',
  'keep-wrapped',
  'settle-in',
  'hold-late-leaves',
  'store-on-arrival',
  'wake-on-arrival',
  'stand-out',
  'plant-dormant',
  'plant-out',
  'water-asleep',
  'water-new',
  'water-first-summer',
  'water-second-summer',
  'stop-feeding',
  'ease-water',
  'leaf-fall',
  'mulch',
  'protect',
  'ready-for-store',
  'move-in',
  'shelter-nights',
  'rest',
  'water-stored',
  'inspect-stored',
  'inspect-protection',
  'prune',
  'uncover',
  'wake',
  'water-waking',
  'watch-buds',
  'cover-new-leaves',
  'harden',
  'move-out',
  'feed',
  'pot-on',
  'water-growing',
  'shade-trunk',
] as const;
export type TaskName = (typeof taskNames)[number];

/** Directives by the kind of mark that starts them. */
export const containerDirectives = ['part', 'caution'] as const;
export const leafDirectives = ['cautions', 'task'] as const;
export const dateDirectives = ['before', 'after', 'around'] as const;
export const textDirectives = [...dateDirectives, 'measure', 'figure'] as const;
export type DateDirective = (typeof dateDirectives)[number];
