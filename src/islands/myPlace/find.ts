/** Finds the place of a form with one field for a town or ZIP code, and chooses it. */

import { href } from '../../href.ts';
import { myPlacePath } from '../../site/addresses/paths.ts';
import type { WhereFile } from '../../site/data/where.ts';
import { fetchJson } from './answers.ts';
import { type Choice, choose } from './choice.ts';
import { townLook } from './look.ts';
import { choiceFor, choiceOf, placeCalled } from './near.ts';

type Found = { choice: Choice } | { problem: string };

/** Five digits, or a name: three digits stand for an area too wide for one town. */
const asksForTown = /^\s*\d{5}(?:-\d{4})?\s*$|\p{Letter}/u;

/** A town, where the site has them. Where several may be meant, the page of places shows them to choose from. */
async function townFor(written: string): Promise<Found> {
  const { lookUp } = await townLook();
  const found = await lookUp(written);
  if (found.ok) return { choice: found.choice };
  if (found.several) location.assign(href(`${myPlacePath}?zip=${encodeURIComponent(written.trim())}`));
  return { problem: found.text };
}

async function found(written: string): Promise<Found> {
  const where = await fetchJson<WhereFile>('/my-place/where.json');
  const place = placeCalled(where, written);
  if (place !== null) return { choice: choiceOf(place) };
  if (where.towns && asksForTown.test(written)) return townFor(written);
  const answer = choiceFor(where, written);
  return answer.ok ? { choice: answer.choice } : { problem: answer.text };
}

/** The choice made, or what to say where there is none. */
export async function chooseWhere(written: string): Promise<Found> {
  try {
    const answer = await found(written);
    if ('choice' in answer) choose(answer.choice);
    return answer;
  } catch {
    return {
      problem: 'The list of places could not be loaded. Try again, or find your place in the list of places.',
    };
  }
}
