/** A file of the site: where it lies, what it depends on, and the function that makes it. */

import type { Redirect } from '../core/addresses/publication.ts';
import type { Page } from './page.ts';

/** A page, one that sends readers on, the text or the bytes of any other file; null for a file that is not to be. */
export type Made = Page | Redirect | string | Uint8Array | null;

export interface Route {
  /** Below the output folder: `lots/26-layer-01/index.html`. */
  file: string;
  /**
   * Plain data that differs whenever the file does, beyond the global inputs: program, day, address, base path, and the catalogue without what
   * changes with stock. Cheap to come by; what is costly is made once for a catalogue.
   */
  inputs: () => unknown;
  make: () => Made | Promise<Made>;
  /** Made of nothing of the yard, so nothing private can be in it; the name of a town in it may well be the words of a note. */
  ofNothingWritten?: true;
}

/** File of the page at a path: `lots/26-layer-01/index.html`. */
export function pageFile(path: string): string {
  return `${path.slice(1)}index.html`;
}

/** A page at its path. */
export function pageRoute(path: string, inputs: Route['inputs'], make: Route['make']): Route {
  return { file: pageFile(path), inputs, make };
}

/** JSON as other programs read it. */
export function jsonRoute(file: string, inputs: Route['inputs'], make: () => unknown): Route {
  return { file, inputs, make: async () => JSON.stringify(await make()) };
}

/** What depends on nothing beyond the global inputs. */
export const noInputs = () => null;
