/** The search for a town on the page of places: what was found, to choose from. */

import { isSpot } from '../../core/towns/gardenSpot.ts';
import type { TownRow } from '../../core/towns/townRow.ts';
import { choiceOfTown, type Garden } from '../town/chosen.ts';
import { findTown, townInWords } from '../town/find.ts';
import { fetchJson } from './answers.ts';
import { choose } from './choice.ts';
import { tellsNoPlace } from './near.ts';
import { numberIn } from './typedNumber.ts';

const problem = document.querySelector<HTMLElement>('[data-zip-problem]');
const found = document.querySelector<HTMLElement>('[data-town-found]');
const chosen = document.querySelector<HTMLElement>('[data-chosen]');

function say(text: string): void {
  if (problem) problem.textContent = text;
}

/** Chooses a town once it has been worked out, so that one of which nothing can be said never replaces another choice. */
async function take(row: TownRow, garden: Garden): Promise<void> {
  say('');
  try {
    const choice = await choiceOfTown(row, garden);
    if (!choice.ok) {
      say(choice.text);
      return;
    }
    choose(choice.choice);
    chosen?.scrollIntoView();
  } catch {
    say('The town could not be worked out: a file of this site did not load. Try again.');
  }
}

function listed(rows: readonly TownRow[], garden: Garden): Node {
  const list = document.createElement('ul');
  list.className = 'near';
  for (const row of rows) {
    const button = document.createElement('button');
    button.type = 'button';
    button.textContent = townInWords(row);
    button.addEventListener('click', () => void take(row, garden));
    const item = document.createElement('li');
    item.append(button);
    list.append(item);
  }
  return list;
}

const M_IN_A_FOOT = 0.3048;

/** The garden as the form has it; an elevation that is no number is told when a town is taken. */
function gardenTyped(): Garden {
  const box = document.querySelector<HTMLInputElement>('[data-height]');
  const inFeet = document.querySelector<HTMLSelectElement>('[data-height-unit]')?.value !== 'm';
  const typed = box && numberIn(box);
  const spot = document.querySelector<HTMLSelectElement>('[data-spot]')?.value ?? '';
  return {
    heightM: typed === null ? null : inFeet ? typed * M_IN_A_FOOT : typed,
    spot: isSpot(spot) ? spot : 'open',
  };
}

/** Looks up what was typed, a name or a ZIP code. A town that is the only one of its name is chosen; else the visitor does. */
export async function searchTowns(typed: string): Promise<void> {
  const garden = gardenTyped();
  say('');
  found?.replaceChildren();
  if (typed.trim() === '') {
    say('Give the name of a town, or a US ZIP code.');
    return;
  }
  try {
    const towns = await findTown(typed, fetchJson, tellsNoPlace);
    if (!towns.ok) {
      say(towns.text);
      return;
    }
    const [only] = towns.rows;
    if (towns.note === '' && only !== undefined) {
      await take(only, garden);
      return;
    }
    const note = document.createElement('p');
    note.textContent = towns.note;
    found?.replaceChildren(note, listed(towns.rows, garden));
    // While the visitor reads: files are there, and the code has run once, when one of the towns is taken.
    if (only !== undefined) setTimeout(() => void choiceOfTown(only, garden).catch(() => {}), 0);
  } catch {
    say('The list of towns could not be loaded. Try again, or choose from the list below.');
  }
}
