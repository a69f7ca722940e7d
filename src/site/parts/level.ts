/** The verdict on a cultivar in a place: a mark and its word. */

import { type Level, levels } from '../../core/match/answers.ts';
import { levelWords } from '../../core/match/words.ts';
import { USUAL_POT } from '../../outlooks.ts';
import { type Html, html } from '../html.ts';
import { levelMeanings } from '../words/verdict.ts';

export function levelMark(level: Level, words = levelWords[level]): Html {
  return html`<span class="level ${level}">${words}</span>`;
}

const meanings = levels.map(
  level => html`
    <div>
      <dt>${levelMark(level)}</dt>
      <dd>${levelMeanings[level]}</dd>
    </div>
  `,
);

/** What the words of the verdict mean. */
export const levelWordsHtml: Html = html`
  <details class="level-words">
    <summary>What the words mean</summary>
    <dl class="facts">${meanings}</dl>
    <p>
      The bounds between the words are our working figures. The answers are for a tree in a ${USUAL_POT} pot where a pot is meant, in a
      spot neither warmer nor colder than the station, and without fig wasps.
    </p>
  </details>
`;
