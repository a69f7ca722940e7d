/** What each directive of a guide must and may carry. */

import { wordsOf } from './guideConditions.ts';
import { measureUnitNames, parseMeasure } from './guideMeasures.ts';
import type { GuideFault } from './guideRules.ts';
import { attributeOf, type DirectiveNode, plainText } from './guideTree.ts';
import {
  type ClosedCondition,
  chances,
  closedConditions,
  conditionNames,
  dateDirectives,
  dateNames,
  freezeConditions,
  freezeDateNames,
  freezeLevels,
  speciesFigureNames,
  taskNames,
} from './guideVocabulary.ts';

export type DirectiveFault = Omit<GuideFault, 'level' | 'line' | 'column'>;

const isOneOf = (words: readonly string[], word: string) => words.includes(word);

function unknownAttributes(node: DirectiveNode, allowed: readonly string[]): DirectiveFault[] {
  return Object.keys(node.attributes ?? {})
    .filter(name => !allowed.includes(name))
    .map(name => ({
      rule: 'guide-attribute' as const,
      got: name,
      expected: allowed.length === 0 ? 'nothing in { }' : allowed.join(', '),
      message: `${node.name} has no attribute "${name}"`,
      remedy: allowed.length === 0 ? 'take the { } out.' : `${allowed.join(', ')} may stand there.`,
      known: allowed,
    }));
}

function missing(node: DirectiveNode, what: string, example: string): DirectiveFault {
  return {
    rule: 'guide-attribute',
    got: 'nothing',
    expected: what,
    message: `${node.name} needs ${what}`,
    remedy: `write it as ${example}.`,
    known: [],
  };
}

function wrongValue(name: string, got: string, known: readonly string[]): DirectiveFault {
  return {
    rule: 'guide-value',
    got,
    expected: known.join(', '),
    message: `${name} knows no "${got}"`,
    remedy: `${known.join(', ')} may stand there.`,
    known,
  };
}

function valueFaults(name: string, written: string, known: readonly string[]): DirectiveFault[] {
  const words = wordsOf(written);
  if (words.length === 0) return [wrongValue(name, '', known)];
  return words.filter(word => !known.includes(word)).map(word => wrongValue(name, word, known));
}

function partFaults(node: DirectiveNode, yardSpecies: readonly string[]): DirectiveFault[] {
  const faults = unknownAttributes(node, conditionNames);
  const given = Object.entries(node.attributes ?? {}).filter(([name]) => conditionNames.includes(name));
  if (given.length === 0 && faults.length === 0) {
    faults.push(missing(node, 'at least one condition', ':::part{winter="frozen cold"}'));
  }
  for (const [name, written] of given) {
    const value = written ?? '';
    if (name === 'species') faults.push(...valueFaults(name, value, yardSpecies));
    else if (isOneOf(freezeConditions, name)) {
      if (!isOneOf(freezeLevels, value)) faults.push(wrongValue(name, value, freezeLevels));
    } else faults.push(...valueFaults(name, value, closedConditions[name as ClosedCondition]));
  }
  return faults;
}

function dateFaults(node: DirectiveNode): DirectiveFault[] {
  const takesChance = node.name !== 'around';
  const faults = unknownAttributes(node, takesChance ? ['date', 'at', 'chance'] : ['date', 'at']);
  const [date, at, chance] = ['date', 'at', 'chance'].map(name => attributeOf(node, name));
  if (date === undefined)
    return [...faults, missing(node, 'the name of a date', `:${node.name}{date="budbreak"}`)];
  if (!isOneOf(dateNames, date)) return [...faults, wrongValue('date', date, dateNames)];
  const isFreeze = isOneOf(freezeDateNames, date);
  if (isFreeze && at === undefined) {
    faults.push(missing(node, `a temperature beside ${date}`, `:${node.name}{date="${date}" at="24F"}`));
  }
  if (at !== undefined && !isFreeze)
    faults.push(...unknownAttributes({ ...node, attributes: { at } }, ['date']));
  if (at !== undefined && isFreeze && !isOneOf(freezeLevels, at))
    faults.push(wrongValue('at', at, freezeLevels));
  if (chance !== undefined && takesChance && !isOneOf(chances, chance)) {
    faults.push(wrongValue('chance', chance, chances));
  }
  return faults;
}

function measureFaults(node: DirectiveNode): DirectiveFault[] {
  const faults = unknownAttributes(node, []);
  const written = plainText(node);
  if (parseMeasure(written) !== null) return faults;
  return [
    ...faults,
    {
      rule: 'guide-measure',
      got: written,
      expected: `a number and one of ${measureUnitNames.join(', ')}`,
      message: `"${written}" is no measure`,
      remedy: 'write a number, or two with "to" between them, and a unit: :measure[34 to 45 F].',
      known: [],
    },
  ];
}

function namedFaults(
  node: DirectiveNode,
  attribute: string,
  known: readonly string[],
  example: string,
): DirectiveFault[] {
  const faults = unknownAttributes(node, [attribute]);
  const value = attributeOf(node, attribute);
  if (value === undefined) faults.push(missing(node, attribute, example));
  else if (!known.includes(value)) faults.push(wrongValue(`${node.name} ${attribute}`, value, known));
  return faults;
}

/** Everything wrong with the attributes of a directive whose name is known. */
export function checkAttributes(node: DirectiveNode, yardSpecies: readonly string[]): DirectiveFault[] {
  if (node.name === 'part') return partFaults(node, yardSpecies);
  if (isOneOf(dateDirectives, node.name)) return dateFaults(node);
  if (node.name === 'measure') return measureFaults(node);
  if (node.name === 'task') return namedFaults(node, 'name', taskNames, '::task{name="move-in"}');
  if (node.name === 'figure') {
    const faults = namedFaults(node, 'of', speciesFigureNames, ':figure[its own limit]{of="leaf-damage"}');
    if (plainText(node).trim() === '') {
      faults.push(
        missing(node, 'words for a species without that figure', ':figure[its own limit]{of="leaf-damage"}'),
      );
    }
    return faults;
  }
  return unknownAttributes(node, []);
}
