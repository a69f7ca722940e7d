/** Finds the place of a form with one field for a town or ZIP code, and chooses it. */

import type { WhereFile } from '../../site/data/where.ts';
import { fetchJson } from './answers.ts';
import { type Choice, choose } from './choice.ts';
import { choiceFor } from './near.ts';

/** The choice made, or what to say where there is none. */
export async function chooseWhere(written: string): Promise<{ choice: Choice } | { problem: string }> {
  let where: WhereFile;
  try {
    where = await fetchJson<WhereFile>('/my-place/where.json');
  } catch {
    return {
      problem: 'The list of places could not be loaded. Try again, or find your place in the list of places.',
    };
  }
  const found = choiceFor(where, written);
  if (!found.ok) return { problem: found.text };
  choose(found.choice);
  return { choice: found.choice };
}
