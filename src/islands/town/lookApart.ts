/** Looking up a town and saying what is known of it, loaded when somebody does. Bundled the way workers are, so it hands itself over here. */

import { fetchJson } from '../myPlace/answers.ts';
import type { Choice } from '../myPlace/choice.ts';
import { tellsNoPlace } from '../myPlace/near.ts';
import { searchTowns } from '../myPlace/townForm.ts';
import { townNodes } from '../myPlace/townNodes.ts';
import { choiceOfTown, plainGarden } from './chosen.ts';
import { findTown, isZip } from './find.ts';

type Looked =
  | { readonly ok: true; readonly choice: Choice }
  | { readonly ok: false; readonly text: string; readonly several: boolean };

/** The town of a name that only one has, or the one nearest to a ZIP code; `several` where the visitor has to say which is meant. */
async function lookUp(written: string): Promise<Looked> {
  const towns = await findTown(written, fetchJson, tellsNoPlace);
  if (!towns.ok) return { ...towns, several: false };
  const [first] = towns.rows;
  if (first === undefined || (towns.note !== '' && !isZip(written))) {
    return { ok: false, text: towns.note, several: true };
  }
  const chosen = await choiceOfTown(first, plainGarden);
  if (!chosen.ok) return { ...chosen, several: false };
  const near = isZip(written) ? [`The town nearest to the middle of ZIP ${written.trim()}.`] : [];
  return { ok: true, choice: { ...chosen.choice, notes: [...near, ...chosen.choice.notes] } };
}

declare global {
  var leafdropLook: {
    lookUp: typeof lookUp;
    searchTowns: typeof searchTowns;
    townNodes: typeof townNodes;
  };
}

globalThis.leafdropLook = { lookUp, searchTowns, townNodes };
