/** The closed list of rules. Ids are permanent: people look them up and scripts depend on them. */

import { guideRules } from '../care/guideRules.ts';
import { addressRules } from './rules/addresses.ts';
import { fileRules } from './rules/files.ts';
import { lotRules } from './rules/lots.ts';
import { photoRules } from './rules/photos.ts';
import { recordRules } from './rules/records.ts';
import type { Rule } from './rules/rule.ts';
import { valueRules } from './rules/values.ts';

const all = {
  ...fileRules,
  ...valueRules,
  ...lotRules,
  ...recordRules,
  ...photoRules,
  ...guideRules,
  ...addressRules,
};

export type RuleId = keyof typeof all;

export const rules: Record<RuleId, Rule> = all;

/** Every rule id, in the order of the manual: files, values, lots and walks, other records, photos, guides, addresses. */
export const ruleIds = Object.keys(all) as RuleId[];
