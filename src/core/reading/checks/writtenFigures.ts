import type { WrittenFigure } from '../../records/common.ts';
import type { KeyPath } from '../problem.ts';

export interface PlacedFigure {
  path: KeyPath;
  figure: WrittenFigure;
}

/** Every figure in a record, with the keys that lead to it. */
export function writtenFigures(value: unknown, path: KeyPath = []): PlacedFigure[] {
  if (value === null || typeof value !== 'object') return [];
  if ('unit' in value && 'value' in value) return [{ path, figure: value as WrittenFigure }];
  return Object.entries(value).flatMap(([key, held]) => writtenFigures(held, [...path, key]));
}
