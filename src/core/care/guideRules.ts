/** Rules of the check of guides, with their help for the manual. Ids are permanent. */

import type { MarkupFault } from '../markdown/markup.ts';

export const guideRules = {
  'guide-directive': {
    level: 'error',
    title: 'A guide uses only directives that exist.',
    help: 'Blocks are :::part and :::caution, single lines ::cautions and ::task, and inside a sentence :before, :after, :around, :measure and :figure. Any other word straight behind a colon would make its text vanish. Put a backslash before a colon that is only a colon.',
  },
  'guide-attribute': {
    level: 'error',
    title: 'A directive has the attributes it needs and no others.',
    help: 'A part asks for at least one condition: winter, season, air, form, stage, kept, species, freeze or no-freeze. A date needs its name, a freeze date its temperature, a task its name, a figure the words that stand in where there is none.',
  },
  'guide-value': {
    level: 'error',
    title: 'Conditions, dates, figures and tasks in a guide exist.',
    help: 'The message lists the words that may stand there. Several values of one condition are written with a space between them; a reader who meets any of them sees the part.',
  },
  'guide-measure': {
    level: 'error',
    title: 'A measure is a number and a unit.',
    help: 'Write :measure[24 F], :measure[34 to 45 F], :measure[8 cm]. A difference of temperatures is written with degrees: :measure[5 degrees C].',
  },
  'guide-unclosed': {
    level: 'error',
    title: 'Every block of a guide is closed.',
    help: 'A block that starts with ::: ends with ::: on a line of its own. A block that holds another one starts and ends with one colon more: :::: outside, ::: inside.',
  },
  'guide-contradiction': {
    level: 'error',
    title: 'A part inside another part can be seen by someone.',
    help: 'The inner part is only shown where the outer one is. When the two ask for different values of one condition, nobody meets both.',
  },
  'guide-unseen': {
    level: 'warning',
    title: 'Every part can be seen by a reader of its guide.',
    help: 'The guide is for other species or forms, or its kind speaks of pots only or of the ground only, so the part never shows. Take it out, or widen what the guide is for.',
  },
  'guide-empty': {
    level: 'error',
    title: 'A guide has a body.',
    help: 'Below the front matter stands the guide itself. A guide whose every word hangs on a condition still needs a few words for all.',
  },
} as const satisfies Record<string, { level: 'error' | 'warning'; title: string; help: string }>;

/** Rules of guides, and those shared with other Markdown of the yard, whose help stands with the rules of records. */
export type GuideRuleId = keyof typeof guideRules | MarkupFault['rule'];

/** A problem in the body of a guide; the reading turns it into a diagnostic by adding the file. */
export interface GuideFault {
  level: 'error' | 'warning';
  rule: GuideRuleId;
  /** 1-based, of the whole file. */
  line: number;
  /** 1-based. */
  column: number;
  got: string;
  expected: string;
  message: string;
  remedy: string;
  /** Words that may stand there, for a guess at the one that was meant; empty when there is no list. */
  known: readonly string[];
}
