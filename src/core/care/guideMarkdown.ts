/** Checks the body of a guide: every directive, condition, date, figure, task and measure, and that every part has a reader. */

import type { Nodes, Root } from 'mdast';
import type { ContainerDirective } from 'mdast-util-directive';
import { markupFault } from '../markdown/markup.ts';
import type { Form } from '../records/common.ts';
import type { GuideKind } from '../records/guide.ts';
import { checkAttributes, type DirectiveFault } from './guideAttributes.ts';
import { anyone, conditionOf, meet, type PartCondition } from './guideConditions.ts';
import { type GuideFault, type GuideRuleId, guideRules } from './guideRules.ts';
import {
  attributeOf,
  childrenOf,
  type DirectiveNode,
  isDirective,
  parseGuide,
  plainText,
} from './guideTree.ts';
import { containerDirectives, leafDirectives, textDirectives } from './guideVocabulary.ts';

/** What the check must know beside the body. */
export interface GuideSetting {
  /** Line of the file on which the body starts, 1-based. */
  bodyLine: number;
  kind: GuideKind;
  /** Species the guide is for; empty for all. */
  species: readonly string[];
  /** Forms it is for; empty for all. */
  forms: readonly Form[];
  /** Ids of all species of the yard. */
  yardSpecies: readonly string[];
}

const marks = { containerDirective: ':::', leafDirective: '::', textDirective: ':' } as const;
const namesOf = {
  containerDirective: containerDirectives,
  leafDirective: leafDirectives,
  textDirective: textDirectives,
} as const satisfies Record<DirectiveNode['type'], readonly string[]>;

/** Guides of these kinds speak of one way of keeping a tree only. */
const keptByKind: Partial<Record<GuideKind, readonly string[]>> = {
  'overwintering-pot': ['pot'],
  'growing-on': ['pot'],
  'overwintering-ground': ['ground'],
  establishing: ['ground'],
};

/** Who a guide of this setting is for, as a condition. */
function audienceOf({
  kind,
  species,
  forms,
}: Pick<GuideSetting, 'kind' | 'species' | 'forms'>): PartCondition {
  return {
    ...anyone,
    values: {
      ...(species.length > 0 ? { species } : {}),
      ...(forms.length > 0 ? { form: forms } : {}),
      ...(keptByKind[kind] ? { kept: keptByKind[kind] } : {}),
    },
  };
}

/** Nothing that people write is nested deeper; the renderer relies on it. */
const DEEPEST_NESTING = 60;

class GuideCheck {
  readonly faults: GuideFault[] = [];
  readonly #lines: readonly string[];
  readonly #setting: GuideSetting;
  #cautionsPlaced = false;

  constructor(body: string, setting: GuideSetting) {
    this.#lines = body.split(/\r\n|\n|\r/);
    this.#setting = setting;
  }

  report(rule: GuideRuleId, node: Nodes, fault: Omit<DirectiveFault, 'rule'>): void {
    const start = node.position?.start ?? { line: 1, column: 1 };
    this.faults.push({
      level: rule in guideRules ? guideRules[rule as keyof typeof guideRules].level : 'error',
      rule,
      line: start.line + this.#setting.bodyLine - 1,
      column: start.column,
      ...fault,
    });
  }

  /** Looks at every node below the tree, without recursion. */
  walk(tree: Nodes): void {
    const waiting: { node: Nodes; scope: PartCondition; depth: number }[] = [
      { node: tree, scope: anyone, depth: 0 },
    ];
    for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
      const { node, scope, depth } = next;
      if (depth > DEEPEST_NESTING) {
        this.#tooDeep(node);
        return;
      }
      this.#markup(node);
      if (node.type === 'paragraph') this.#strayFence(node);
      const inner = isDirective(node) ? this.#directive(node, scope) : scope;
      const children = childrenOf(node);
      children.forEach((child, index) => {
        this.#looseBrackets(child, children[index + 1]);
      });
      waiting.push(...children.toReversed().map(child => ({ node: child, scope: inner, depth: depth + 1 })));
    }
  }

  #tooDeep(node: Nodes): void {
    this.report('guide-unclosed', node, {
      got: `more than ${DEEPEST_NESTING} levels`,
      expected: 'text that can be read',
      message: 'brackets, stars, lists or quotes are opened here without an end',
      remedy: 'close them, or put a backslash before each that is only a sign.',
      known: [],
    });
  }

  /** Markup that is never published. */
  #markup(node: Nodes): void {
    const fault = markupFault(node);
    if (fault === null) return;
    const { rule, ...words } = fault;
    this.report(rule, node, { ...words, known: [] });
  }

  /** A text directive whose brackets were not understood leaves them behind as text. */
  #looseBrackets(node: Nodes, next: Nodes | undefined): void {
    if (node.type !== 'textDirective' || next?.type !== 'text' || !/^[{[]/.test(next.value)) return;
    this.report('guide-unclosed', next, {
      got: next.value.slice(0, 40),
      expected: 'closed brackets, such as {date="budbreak"}',
      message: `the brackets behind :${node.name} do not close or hold something that is no attribute`,
      remedy: 'write the words in [ ] first and then name="value" pairs in { }.',
      known: [],
    });
  }

  #strayFence(node: Nodes): void {
    const fence = plainText(node)
      .split('\n')
      .find(line => /^\s*:{2,}/.test(line));
    if (fence === undefined) return;
    this.report('guide-unclosed', node, {
      got: fence.slice(0, 40),
      expected: 'a block that opens with :::name{...} and closes with :::',
      message: 'these colons open or close no block',
      remedy:
        'check the name and the { } behind an opening, and give a block that holds another one more colons than the inner one.',
      known: [],
    });
  }

  /** Reports what is wrong with a directive; gives back the condition its content stands under. */
  #directive(node: DirectiveNode, scope: PartCondition): PartCondition {
    const names: readonly string[] = namesOf[node.type];
    if (!names.includes(node.name)) {
      const mark = marks[node.type];
      this.report('guide-directive', node, {
        got: `${mark}${node.name}`,
        expected: names.map(name => mark + name).join(', '),
        message: `there is no ${mark}${node.name}`,
        remedy: `${names.map(name => mark + name).join(', ')} may stand here; put a backslash before a colon that is only a colon.`,
        known: names,
      });
      return scope;
    }
    if (node.type === 'containerDirective' && !this.#isClosed(node)) {
      this.report('guide-unclosed', node, {
        got: `:::${node.name}`,
        expected: ':::',
        message: `the block :::${node.name} is never closed`,
        remedy:
          'end it with ::: on a line of its own, and give a block that holds another one more colons than the inner one.',
        known: [],
      });
    }
    if (node.name === 'cautions') this.#placedOnce(node);
    const before = this.faults.length;
    for (const { rule, ...fault } of checkAttributes(node, this.#setting.yardSpecies))
      this.report(rule, node, fault);
    if (node.name !== 'part' || this.faults.length > before) return scope;
    return this.#part(node, scope);
  }

  #isClosed(node: ContainerDirective): boolean {
    const end = node.position?.end;
    return end !== undefined && /:{3,}\s*$/.test((this.#lines[end.line - 1] ?? '').slice(0, end.column - 1));
  }

  #placedOnce(node: DirectiveNode): void {
    if (this.#cautionsPlaced) {
      this.report('guide-value', node, {
        got: '::cautions',
        expected: 'once',
        message: 'the cautions are placed a second time',
        remedy: 'keep one ::cautions and take the other out.',
        known: [],
      });
    }
    this.#cautionsPlaced = true;
  }

  #part(node: DirectiveNode, scope: PartCondition): PartCondition {
    const own = conditionOf(node.attributes ?? {});
    const { both, conflicts } = meet(scope, own);
    const written = (names: readonly string[]) =>
      names.map(name => `${name}="${attributeOf(node, name) ?? ''}"`).join(' ');
    if (conflicts.length > 0) {
      this.report('guide-contradiction', node, {
        got: written(conflicts),
        expected: 'a condition that the part around it leaves open',
        message: `nobody who sees the part around this one meets ${written(conflicts)}`,
        remedy: 'move the part out of the other one, or change one of the two conditions.',
        known: [],
      });
      return scope;
    }
    const unseen = meet(audienceOf(this.#setting), both).conflicts;
    if (unseen.length > 0) {
      this.report('guide-unseen', node, {
        got: written(unseen.filter(name => attributeOf(node, name) !== undefined)),
        expected: 'a reader of this guide',
        message: `no reader of this guide ever sees this part: ${unseen.join(' and ')} rule${unseen.length === 1 ? 's' : ''} them all out`,
        remedy: 'take the part out, or widen the species, forms or kind of the guide.',
        known: [],
      });
    }
    return both;
  }
}

/** Whether anything is left for a reader who meets none of the conditions. */
function saysSomethingToAll(tree: Root): boolean {
  return tree.children.some(
    node => !isDirective(node) && node.type !== 'heading' && plainText(node).trim() !== '',
  );
}

/**
 * All problems in the body of a guide, in the order of its lines. Never throws, whatever the text. An error means that the guide must
 * not be published; a warning that part of it is for nobody. `tree` is that of the body, where it was made before.
 */
export function checkGuideMarkdown(
  body: string,
  setting: GuideSetting,
  tree: Root = parseGuide(body),
): GuideFault[] {
  const check = new GuideCheck(body, setting);
  check.walk(tree);
  if (!saysSomethingToAll(tree)) {
    check.report('guide-empty', tree, {
      got: body.trim() === '' ? 'nothing' : 'only parts with conditions',
      expected: 'text for every reader',
      message: 'the guide says nothing to a reader who meets none of its conditions',
      remedy: 'write at least one paragraph outside of every part.',
      known: [],
    });
  }
  return check.faults.sort((a, b) => a.line - b.line || a.column - b.column);
}
