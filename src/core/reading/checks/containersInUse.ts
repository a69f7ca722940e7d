import { containerClasses } from '../../records/container.ts';
import type { Draft } from '../draft.ts';

/** Container classes that lots stand in, in the order of size. */
export function containersInUse({ lots }: Draft): string[] {
  const used = new Set(
    lots.flatMap(({ value }) => {
      const last = value.pottings.at(-1);
      return last ? [last.container.classIndex] : [];
    }),
  );
  return containerClasses.map(({ name }) => name).filter((_, index) => used.has(index));
}
