/** Finds sentences of a guide that are too long to be read with muddy hands. */

import type { Nodes } from 'mdast';
import { childrenOf, isDirective, parseGuide, plainText } from './guideTree.ts';

/** Longest sentence, words. Standing: ours; advice on plain language gives 15 to 20 as the mean. */
export const LONGEST_SENTENCE_WORDS = 35;

export interface LongSentence {
  /** Line of the block it stands in, 1-based within the body. */
  line: number;
  words: number;
  sentence: string;
}

/** Words a date or figure directive grows to when it is written out in full. */
const DIRECTIVE_WORDS = 'the day the chance of a later such night drops to 1 in 10';

/** The words a reader meets, dates at their longest. */
function writtenOut(node: Nodes): string {
  if (node.type === 'textDirective') {
    if (node.name === 'measure') return plainText(node);
    return node.name === 'figure' ? plainText(node) : `${node.name} ${DIRECTIVE_WORDS}`;
  }
  if ('value' in node) return node.value;
  return childrenOf(node).map(writtenOut).join('');
}

const blocks: readonly Nodes['type'][] = ['paragraph', 'heading', 'tableCell'];

function sentencesOf(text: string): string[] {
  return text
    .replace(/\s+/g, ' ')
    .split(/(?<=[.!?:;])\s+(?=[“"‘'(]?[A-Z0-9])/)
    .filter(sentence => sentence.trim() !== '');
}

/** Every sentence of more than 35 words, dates written out in full; measures count in one unit. */
export function sentenceOffenders(body: string): LongSentence[] {
  const found: LongSentence[] = [];
  const walk = (node: Nodes) => {
    if (blocks.includes(node.type)) {
      for (const sentence of sentencesOf(writtenOut(node))) {
        const words = sentence.split(/\s+/).filter(word => /[A-Za-z0-9]/.test(word)).length;
        if (words > LONGEST_SENTENCE_WORDS)
          found.push({ line: node.position?.start.line ?? 1, words, sentence });
      }
      return;
    }
    if (isDirective(node) && node.type !== 'containerDirective') return;
    for (const child of childrenOf(node)) walk(child);
  };
  walk(parseGuide(body));
  return found;
}
