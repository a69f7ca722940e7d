/**
 * The words a guide may use in its directives, in one place: the check, the renderer and the manual all read them from here.
 * Kept below the reading of records, which calls the check.
 */

import { airClasses, forms, seasonClasses, winterClasses } from '../records/common.ts';
import { freezeThresholds } from '../records/place.ts';

/** First winter after it was bought, or rooted in where it stands. */
export const stages = ['first-winter', 'established'] as const;
export type Stage = (typeof stages)[number];

/** Where the tree lives. */
export const keepings = ['pot', 'ground'] as const;
export type Keeping = (typeof keepings)[number];

/** Conditions of a part with a closed list of values. `species` is open: the ids of the yard's species. */
export const closedConditions = {
  winter: winterClasses,
  season: seasonClasses,
  air: airClasses,
  form: forms,
  stage: stages,
  kept: keepings,
} as const satisfies Record<string, readonly string[]>;
export type ClosedCondition = keyof typeof closedConditions;

/**
 * Conditions on the cold of a place: `freeze="24F"` where such a night comes in at least one year of ten,
 * `no-freeze="24F"` everywhere else.
 */
export const freezeConditions = ['freeze', 'no-freeze'] as const;
export type FreezeCondition = (typeof freezeConditions)[number];

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
  'water-new',
  'stop-feeding',
  'ease-water',
  'leaf-fall',
  'mulch',
  'protect',
  'move-in',
  'shelter-nights',
  'rest',
  'water-stored',
  'inspect-stored',
  'inspect-protection',
  'prune',
  'uncover',
  'wake',
  'pot-on',
  'cover-new-leaves',
  'harden',
  'move-out',
  'feed',
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
