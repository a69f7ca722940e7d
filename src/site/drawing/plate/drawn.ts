/** Plates as the pages take them, each drawn once: drawing costs more than writing the page around it. */

import type { Fruit } from '../../../core/records/cultivar.ts';
import { memoize } from '../../memo.ts';
import { type Canvas, plate, plateAttributes, plateMarkup } from '../plate.ts';
import type { FruitKind } from './kinds.ts';

export interface DrawnPlate {
  attributes: ReturnType<typeof plateAttributes>;
  markup: string;
}

const platesOf = memoize((_: Fruit) => new Map<string, DrawnPlate>());

/** Plate of a cultivar's fruit, which all its lots share. `scale` is px to the millimeter. */
export function drawnPlate(
  id: string,
  fruit: Fruit,
  kind: FruitKind,
  scale: number,
  canvas: Canvas,
): DrawnPlate {
  const plates = platesOf(fruit);
  const key = JSON.stringify([id, kind, scale, canvas]);
  let drawn = plates.get(key);
  if (!drawn) {
    const made = plate(fruit, kind, { seed: id, pxPerMm: scale, canvas });
    drawn = { attributes: plateAttributes(made, id), markup: plateMarkup(made, id) };
    plates.set(key, drawn);
  }
  return drawn;
}
