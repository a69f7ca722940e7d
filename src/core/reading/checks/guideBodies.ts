import { checkGuideMarkdown } from '../../care/guideMarkdown.ts';
import type { GuideFault } from '../../care/guideRules.ts';
import { treeOf } from '../../care/guideTree.ts';
import { depthProblem } from '../markdownDepth.ts';
import { nearest } from '../nearest.ts';
import { atLine } from '../problem.ts';
import type { Check } from './check.ts';

/** The text of a guide and its directives, as the care core sees them. */
export const guideBodies: Check = ({ guides, ids }) => {
  const yardSpecies = [...ids.species].sort();
  return guides.flatMap(({ file, value }) => {
    const deep = depthProblem(file, value.body, value.bodyLine);
    if (deep) return [deep];
    return checkGuideMarkdown(value.body, { ...value, yardSpecies }, treeOf(value)).map(fault => ({
      rule: fault.rule,
      file,
      spot: atLine(fault.line, fault.column),
      got: fault.got,
      expected: fault.expected,
      message: fault.message,
      remedy: remedyFor(fault),
    }));
  });
};

function remedyFor({ got, known, remedy }: GuideFault): string {
  const guess = nearest(got.replace(/^:+/, ''), known);
  return guess === null ? remedy : `did you mean "${guess}"?`;
}
