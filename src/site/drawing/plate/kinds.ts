/** What kind of fruit a species bears, as far as a drawing goes. */

import type { Fruit } from '../../../core/records/cultivar.ts';

/** What is drawn besides the traits; `plain` for a species none of the others fits. */
export type FruitKind =
  | 'fig'
  | 'pomegranate'
  | 'persimmon'
  | 'seeded persimmon'
  | 'cluster'
  | 'jujube'
  | 'plain';

/** By botanical name, from its beginning. */
const kinds: readonly (readonly [name: string, kind: FruitKind])[] = [
  ['Ficus', 'fig'],
  ['Punica', 'pomegranate'],
  ['Diospyros virginiana', 'seeded persimmon'],
  ['Diospyros', 'persimmon'],
  ['Morus', 'cluster'],
  ['Ziziphus', 'jujube'],
];

/** How a fruit of a species is drawn; one whose shape is a cluster always as a cluster. */
export function fruitKind(botanical: string, { shape }: Pick<Fruit, 'shape'>): FruitKind {
  if (shape === 'cluster') return 'cluster';
  return kinds.find(([name]) => botanical.startsWith(name))?.[1] ?? 'plain';
}
