/** The United States with a mark for each place, by the verdict on a cultivar there. The outlines are one file that all pages share. */

import { type Level, levels } from '../../core/match/answers.ts';
import { levelWords } from '../../core/match/words.ts';
import { type Html, html } from '../html.ts';
import { MAP_HEIGHT, MAP_WIDTH } from './usMap.ts';

export interface UsMapOptions {
  title: string;
  words: string;
  dots: readonly { x: number; y: number; level: Level }[];
}

const radiusOf = (level: Level) => (level === 'not-here' ? 7 : 12);

/** Nothing where no place is on the map. */
export function usMap({ title, words, dots }: UsMapOptions, href: (path: string) => string): Html {
  if (dots.length === 0) return html``;
  // The worst first, so that the best lie on top.
  const circles = [...dots]
    .sort((a, b) => levels.indexOf(b.level) - levels.indexOf(a.level))
    .map(({ x, y, level }) => html`<circle class="${level}" cx="${x}" cy="${y}" r="${radiusOf(level)}"/>`);
  const keys = levels
    .filter(level => dots.some(dot => dot.level === level))
    .map(
      level =>
        html`
          <li>
            <svg viewBox="0 0 32 32" aria-hidden="true"><circle class="${level}" cx="16" cy="16" r="${radiusOf(level)}"/></svg>
            ${levelWords[level]}
          </li>
        `,
    );
  return html`
    <figure class="us-map">
      <svg viewBox="0 0 ${MAP_WIDTH} ${MAP_HEIGHT}" role="img" aria-labelledby="map-title map-words">
        <title id="map-title">${title}</title>
        <desc id="map-words">${words}</desc>
        <use href="${href('/map/states.svg')}#states"/>
        ${circles}
      </svg>
      <figcaption>
        <ul class="keys">${keys}</ul>
      </figcaption>
    </figure>
  `;
}
