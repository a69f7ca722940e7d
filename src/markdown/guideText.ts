/**
 * The text of a guide before it is written for a reader: plain data, so that the build and a browser write the same from it. In most blocks
 * nothing differs between readers but the words of their date, measure and figure directives.
 */

import type { Heading, RootContent } from 'mdast';

/** A date, measure or figure directive inside of a sentence. */
export interface AskedWords {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string | null | undefined>>;
  /** The author's own words. */
  readonly label: string;
}

/** HTML with places for words. */
export interface BlockTemplate {
  /** HTML before, between and behind the words that are put in. */
  readonly html: readonly string[];
  /** Whose words they are. */
  readonly words: readonly AskedWords[];
}

export type GuideNode =
  | ({ readonly kind: 'block' } & BlockTemplate)
  /** `template` is without the tags of the heading itself. */
  | {
      readonly kind: 'heading';
      readonly depth: 2 | 3;
      readonly text: string;
      readonly template: BlockTemplate;
    }
  | {
      readonly kind: 'part';
      readonly attributes: Readonly<Record<string, string | null | undefined>>;
      readonly nodes: readonly GuideNode[];
      /** Where links and footnotes lead is known in the whole text, also outside the part that a reader does not see. */
      readonly definitions: readonly GuideNode[];
    }
  | { readonly kind: 'caution'; readonly nodes: readonly GuideNode[] }
  | { readonly kind: 'cautions' }
  | { readonly kind: 'task'; readonly name: string }
  /** A block that speaks of others, such as a link and where it leads, or has parts inside: made from its tree for each reader. */
  | { readonly kind: 'tree'; readonly node: RootContent }
  | { readonly kind: 'treeHeading'; readonly depth: 2 | 3; readonly text: string; readonly node: Heading };

export type GuideText = readonly GuideNode[];

/** Whether a text can be written without the trees of its blocks. */
export function hasNoTrees(text: GuideText): boolean {
  return text.every(node => {
    if (node.kind === 'tree' || node.kind === 'treeHeading') return false;
    if (node.kind === 'part') return hasNoTrees(node.nodes) && hasNoTrees(node.definitions);
    return node.kind !== 'caution' || hasNoTrees(node.nodes);
  });
}

/** Words as text of HTML, escaped as the rest of the page is. */
export function escaped(words: string): string {
  return words
    .replace(/[ \t]*\n[ \t]*/g, '\n')
    .replace(/[<&]/g, sign => (sign === '<' ? '&#x3C;' : '&#x26;'));
}

/** The block with a reader's words. */
export function filled({ html, words }: BlockTemplate, wordsOf: (asked: AskedWords) => string): string {
  let text = html[0] as string;
  for (const [index, asked] of words.entries()) {
    text += escaped(wordsOf(asked)) + html[index + 1];
  }
  return text;
}
