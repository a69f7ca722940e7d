/** Which figures of species a guide quotes. */

import { attributeOf, childrenOf, treeOf } from '../../../core/care/guideTree.ts';
import { type SpeciesFigureName, speciesFigureNames } from '../../../core/care/guideVocabulary.ts';
import type { Guide } from '../../../core/records/guide.ts';
import { memoize } from '../../memo.ts';

type Node = Parameters<typeof childrenOf>[0];

/** Figures the body of a guide quotes, each once, in the order of the vocabulary. */
export const quotedFigures = memoize((guide: Guide): SpeciesFigureName[] => {
  const quoted = new Set<string | undefined>();
  const waiting: Node[] = [treeOf(guide)];
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    if (node.type === 'textDirective' && node.name === 'figure') quoted.add(attributeOf(node, 'of'));
    waiting.push(...childrenOf(node));
  }
  return speciesFigureNames.filter(name => quoted.has(name));
});
