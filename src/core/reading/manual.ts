/** The manual of the rules, as Markdown. */

import type { Level } from './diagnostic.ts';
import { type RuleId, ruleIds, rules } from './rules.ts';

const levelWords: Record<Level, string> = {
  error: 'Error: nothing is published until it is put right.',
  warning: 'Warning: the site is published; have a look.',
  info: 'For information.',
};

/** One page per rule, all rules in the order of the list. */
export function rulesManual(): string {
  return `${['# Rules of the check', ...ruleIds.map(ruleManual)].join('\n\n')}\n`;
}

/** The page of one rule. */
export function ruleManual(id: RuleId): string {
  const { level, title, help } = rules[id];
  return `## ${id}\n\n${title}\n\n${help}\n\n${levelWords[level]}`;
}
