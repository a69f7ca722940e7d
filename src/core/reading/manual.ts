/** The manual of the rules and of the words of a guide, as Markdown. */

import { guideManual } from '../care/guideManual.ts';
import type { Level } from './diagnostic.ts';
import { type RuleId, ruleIds, rules } from './rules.ts';

const levelWords: Record<Level, string> = {
  error: 'Error: nothing is published until it is put right.',
  warning: 'Warning: the site is published; have a look.',
  info: 'For information.',
};

const seeWords = 'npm run check -- --rules ends with every word a guide may use, each with an example.';

/** One page per rule, all rules in the order of the list, then the words of a guide. */
export function rulesManual(): string {
  return `${['# Rules of the check', ...ruleIds.map(ruleManual)].join('\n\n')}\n\n${guideManual()}`;
}

/** The page of one rule. */
export function ruleManual(id: RuleId): string {
  const { level, title, help } = rules[id];
  const words = id === 'guide-directive' || id === 'guide-value' ? `\n\n${seeWords}` : '';
  return `## ${id}\n\n${title}\n\n${help}${words}\n\n${levelWords[level]}`;
}
