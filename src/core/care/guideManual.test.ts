import { describe, expect, it } from 'vitest';
import { guideManual } from './guideManual.ts';
import { checkGuideMarkdown } from './guideMarkdown.ts';
import { measureUnitNames } from './guideMeasures.ts';
import { childrenOf, isDirective, parseGuide, plainText } from './guideTree.ts';
import {
  chances,
  closedConditions,
  conditionNames,
  containerDirectives,
  dateNames,
  freezeLevels,
  leafDirectives,
  speciesFigureNames,
  taskNames,
  textDirectives,
} from './guideVocabulary.ts';

const examples = [...guideManual().matchAll(/^```\n(.*?)\n```$/gms)].map(([, text]) => text!);

/** Every directive of the examples, with its attributes as `name=value`. */
function written() {
  const names = new Set<string>();
  const attributes = new Set<string>();
  const measures: string[] = [];
  for (const text of examples) {
    const waiting = [...childrenOf(parseGuide(text))];
    for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
      if (isDirective(node)) {
        names.add(node.name);
        if (node.name === 'measure') measures.push(plainText(node));
        for (const [name, value] of Object.entries(node.attributes ?? {})) {
          for (const word of (value ?? '').split(' ')) attributes.add(`${name}=${word}`);
        }
      }
      waiting.push(...childrenOf(node));
    }
  }
  return { names, attributes, measures };
}

describe('the manual of guides', () => {
  it.each(examples)('has an example that passes the check: %s', text => {
    const setting = { bodyLine: 1, kind: 'waking', species: [], forms: [], yardSpecies: ['fig'] } as const;
    const faults = checkGuideMarkdown(`Words for all.\n\n${text}\n`, setting);
    expect(faults.filter(({ level }) => level === 'error')).toEqual([]);
  });

  it('has an example of every directive', () => {
    expect([...written().names].toSorted()).toEqual(
      [...containerDirectives, ...leafDirectives, ...textDirectives].toSorted(),
    );
  });

  it('has an example of every value that has a list, and names every condition', () => {
    const { attributes } = written();
    const lists: Record<string, readonly string[]> = {
      ...closedConditions,
      freeze: freezeLevels,
      'no-freeze': freezeLevels,
      date: dateNames,
      at: freezeLevels,
      chance: chances,
      of: speciesFigureNames,
      name: taskNames,
    };
    const wanted = Object.entries(lists).flatMap(([name, values]) => values.map(value => `${name}=${value}`));
    expect(wanted.filter(each => !attributes.has(each))).toEqual([]);
    for (const name of conditionNames) expect(guideManual()).toMatch(new RegExp(`^###.*\\b${name}\\b`, 'm'));
  });

  it('has an example of every unit', () => {
    const { measures } = written();
    expect(measureUnitNames.filter(unit => !measures.includes(`2 to 4 ${unit}`))).toEqual([]);
  });
});
