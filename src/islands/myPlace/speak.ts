/** Makes a page speak for the visitor's place: the line that names it, and every slot that waits for it. */

import { answersFor, DatesProblem } from './answers.ts';
import { type Choice, currentChoice, forgetful, onChange } from './choice.ts';
import { fillSlots, hasSlots } from './slots.ts';

const line = document.querySelector<HTMLElement>('[data-mine-line]');
const words = line?.querySelector<HTMLElement>('[data-mine-words]');
const status = line?.querySelector<HTMLElement>('[data-mine-status]');
const asks = words?.textContent ?? '';

function say(text: string): void {
  if (status) status.textContent = text;
}

/** What went wrong, where the page has no line of its own for it: at the top, where it says how trees travel. */
function sayProblem(text: string): void {
  const place = status ?? document.querySelector('[data-season]');
  if (place) place.textContent = text;
}

/** Warnings in full where the place was just chosen; on later pages, where no room is kept for them, that there are some. */
function warned({ warnings }: Choice, justChosen: boolean): string {
  if (warnings.length === 0) return '';
  return justChosen ? warnings.join(' ') : 'Only a rough guide for you: “Your place” says why.';
}

/** Counts attempts, so that a slow answer never replaces a newer one. */
let latest = 0;

async function speak(justChosen: boolean): Promise<void> {
  latest += 1;
  const mine = latest;
  const choice = currentChoice();
  if (words) {
    const found = choice?.found ? `, ${choice.found}` : '';
    const dates = choice?.own ? ', with your own freeze dates' : '';
    words.textContent = choice === null ? asks : `Your place: ${choice.name}${found}${dates}.`;
  }
  for (const button of document.querySelectorAll<HTMLButtonElement>('[data-mine-set]')) {
    const isIt =
      choice !== null &&
      choice.own === null &&
      choice.town === null &&
      choice.place === button.dataset.mineSet;
    button.textContent = isIt ? 'This is your place' : 'Make this my place';
    button.setAttribute('aria-pressed', String(isIt));
  }
  if (choice === null) {
    fillSlots(null);
    return;
  }
  if (!hasSlots()) return;
  try {
    const answers = await answersFor(choice);
    if (mine !== latest) return;
    fillSlots(answers, choice.name.split(',')[0]);
    say([forgetful() ?? '', warned(choice, justChosen)].join(' ').trim());
  } catch (problem) {
    if (mine !== latest) return;
    fillSlots(null);
    sayProblem(
      problem instanceof DatesProblem
        ? problem.message
        : `What we know of ${choice.name} could not be loaded, so this page stands as it was made. Press Show, or load the page again.`,
    );
  }
}

onChange(() => void speak(true));
void speak(false);
