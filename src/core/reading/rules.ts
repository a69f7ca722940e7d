/** The closed list of rules. Ids are permanent: people look them up and scripts depend on them. */

import { guideRules } from '../care/guideRules.ts';
import { addressRules } from './rules/addresses.ts';
import { cultivarRules } from './rules/cultivars.ts';
import { fileRules } from './rules/files.ts';
import { lotRules } from './rules/lots.ts';
import { photoRules } from './rules/photos.ts';
import { placeRules } from './rules/places.ts';
import type { Rule } from './rules/rule.ts';
import { textRules } from './rules/texts.ts';
import { valueRules } from './rules/values.ts';
import { yardRules } from './rules/yard.ts';

const all = {
  ...fileRules,
  ...valueRules,
  ...lotRules,
  ...cultivarRules,
  ...yardRules,
  ...placeRules,
  ...textRules,
  ...photoRules,
  ...guideRules,
  ...addressRules,
};

export type RuleId = keyof typeof all;

export const rules: Record<RuleId, Rule> = all;

/** Every rule id, in the order of the manual: files, values, lots and walks, other records, photos, guides, addresses. */
export const ruleIds = Object.keys(all) as RuleId[];
