/**
 * The year of a place as a ribbon. Shapes are stretched to the room there is; words keep their size, so that the picture can be read on a
 * narrow screen. Colors come from classes: the content policy allows no inline styles.
 */

import { type Html, html } from '../html.ts';
import { RIBBON_HEIGHT, RIBBON_WIDTH, type RibbonDrawing } from './ribbon.ts';

/** The name of a month, of which narrow screens show the first letter alone. */
export function monthName(name: string): Html {
  return html`<tspan>${name.slice(0, 1)}</tspan><tspan class="rest">${name.slice(1)}</tspan>`;
}

function shapes({ spread, usual, high, low, freezes }: RibbonDrawing): Html {
  return html`
    <svg viewBox="0 0 ${RIBBON_WIDTH} ${RIBBON_HEIGHT}" preserveAspectRatio="none" width="100%" height="100%" aria-hidden="true">
      <path class="spread" d="${spread}"/>
      <path class="usual" d="${usual}"/>
      <path class="curve" d="${high}"/>
      <path class="curve" d="${low}"/>
      <path class="freezes" d="${freezes}"/>
    </svg>
  `;
}

function gridLines({ months, lines, strip }: RibbonDrawing): Html {
  const monthLines = months
    .slice(1)
    .map(({ from }) => html`<line class="month" x1="${from}%" x2="${from}%" y1="0" y2="100%"/>`);
  const levels = lines.map(
    ({ y, freezing }) =>
      html`<line class="level${freezing && ' freezing'}" x1="0" x2="100%" y1="${y}%" y2="${y}%"/>`,
  );
  return html`
    ${[...monthLines, ...levels]}
    <line class="base" x1="0" x2="100%" y1="100%" y2="100%"/>
    <line class="level" x1="0" x2="100%" y1="${strip.from}%" y2="${strip.from}%"/>
  `;
}

function labels({ months, lines, strip }: RibbonDrawing): Html {
  const degrees = lines.map(
    ({ y, fahrenheit, celsius, freezing }) => html`
      <text class="left${freezing && ' freezing'}" x="0" dx="-8" y="${y}%" dy="0.35em">${fahrenheit}</text>
      <text${freezing && html` class="freezing"`} x="100%" dx="8" y="${y}%" dy="0.35em">${celsius}</text>
    `,
  );
  const names = months.map(
    ({ middle, name }) =>
      html`<text class="middle" x="${middle}%" y="100%" dy="1.4em">${monthName(name)}</text>`,
  );
  return html`
    ${degrees}
    <text class="left" x="0" dx="-8" y="${strip.from}%" dy="0.7em">100 %</text>
    <text class="left" x="0" dx="-8" y="100%">0</text>
    ${names}
  `;
}

/** `name` is that of the place. */
export function yearRibbon(drawing: RibbonDrawing, name: string): Html {
  return html`
    <figure class="ribbon">
      <div class="plot">
        <svg role="img" aria-labelledby="ribbon-title ribbon-words" width="100%" height="100%">
          <title id="ribbon-title">The year at ${name}</title>
          <desc id="ribbon-words">${drawing.description}</desc>
          ${[shapes(drawing), gridLines(drawing), labels(drawing)]}
        </svg>
      </div>
      <figcaption>
        <ul class="keys">
          <li><span class="key usual"></span>From the usual low to the usual high of the day</li>
          <li><span class="key spread"></span>One night in ten is colder, one day in ten hotter</li>
          <li><span class="key freezing"></span>32 F (0 C)</li>
          <li><span class="key freezes"></span>Along the base: share of years in which that night freezes</li>
        </ul>
      </figcaption>
    </figure>
  `;
}
