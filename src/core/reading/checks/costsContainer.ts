import { containerClasses } from '../../records/container.ts';
import { nearest } from '../nearest.ts';
import { atKey, atValue, either, meant, type Problem, quote, remedyOf } from '../problem.ts';
import type { Check } from './check.ts';
import { containersInUse } from './containersInUse.ts';

const names = containerClasses.map(({ name }) => name);
const tables = ['area_sqft', 'pot'] as const;

/** Costs per container class are for classes that exist, and there for every class in use. */
export const costsContainer: Check = draft => {
  if (!draft.costs) return [];
  const { file, written: costs } = draft.costs;
  const used = containersInUse(draft);
  return tables.flatMap(table => [
    ...Object.keys(costs[table])
      .filter(key => !names.includes(key))
      .map(key => unknownClass(file, table, key)),
    ...used.filter(name => !Object.hasOwn(costs[table], name)).map(name => noCost(file, table, name)),
  ]);
};

function unknownClass(file: string, table: string, key: string): Problem {
  return {
    rule: 'not-in-list',
    file,
    spot: atKey('costs', table, key),
    got: quote(key),
    expected: either(names),
    message: `${quote(key)} is not a container class`,
    remedy: remedyOf(meant(nearest(key, names)), `Write ${either(names)}.`),
  };
}

function noCost(file: string, table: string, name: string): Problem {
  return {
    rule: 'costs-container',
    file,
    spot: atValue('costs', table),
    expected: name,
    message: `lots stand in ${name} pots, but "${table}" has no line for them`,
    remedy: `add a line for '${name}'; until then no cost floor is kept for those lots.`,
  };
}
