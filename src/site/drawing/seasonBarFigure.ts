/** When a cultivar ripens, drawn as bars on one axis of months that all bars of a page share. */

import type { ClimateSummary } from '../../core/climate/summary.ts';
import { type Html, html } from '../html.ts';
import type { Season } from '../pages/compare/compare.ts';
import { ribbonDrawing } from './ribbon.ts';
import { BAR_WIDTH, type CropBar, freezeFreeParts } from './seasonBar.ts';

/** The shapes inside of a bar of `BAR_WIDTH` by 16: the axis, and the time and middle day of each crop. */
export function barShapes(bars: readonly CropBar[]): Html {
  const crops = bars.map(({ parts, middle, headStart }) => {
    const times = parts.map(
      ({ from, width }) =>
        html`<rect class="${headStart ? 'early' : 'ripe'}" x="${from}" y="4" width="${width}" height="8"/>`,
    );
    return html`${times}<path class="middle" d="M${middle} 2v12"/>`;
  });
  return html`<use href="#season-grid"/>${crops}`;
}

/** The bar of a cultivar; its words are read in its place. A page with it needs `seasonGrid` before. */
export function seasonBar({ bars, words }: Season): Html {
  return html`
    <svg class="season-bar" viewBox="0 0 ${BAR_WIDTH} 16" preserveAspectRatio="none" role="img" aria-label="${words}">
      ${barShapes(bars)}
    </svg>
  `;
}

/** The axis that the season bars of a page share: months, and the usual season between freezes. Stands once on a page, before them. */
export function seasonGrid(climate: ClimateSummary, lat: number): Html {
  const { months } = ribbonDrawing(climate.ribbon, lat);
  const seasons = freezeFreeParts(climate, lat).map(
    ({ from, width }) => html`<rect class="season" x="${from}" y="0" width="${width}" height="16"/>`,
  );
  const lines = months
    .slice(1)
    .map(({ from }) => html`<path d="M${((from * BAR_WIDTH) / 100).toFixed(1)} 0v16"/>`);
  return html`
    <svg class="unseen" width="0" height="0" aria-hidden="true">
      <defs>
        <g id="season-grid">${seasons}${lines}</g>
      </defs>
    </svg>
  `;
}
