/** Cultivars ranked for a place, their ripening drawn on the axis of its year. */

import type { ClimateSummary } from '../../../core/climate/summary.ts';
import type { Level } from '../../../core/match/answers.ts';
import type { Place } from '../../../core/records/place.ts';
import { cultivarsPath, fruitYearPath } from '../../addresses/paths.ts';
import { fruitMarkHtml } from '../../drawing/fruitMark.ts';
import { ribbonDrawing } from '../../drawing/ribbon.ts';
import { monthName } from '../../drawing/ribbonFigure.ts';
import { BAR_WIDTH } from '../../drawing/seasonBar.ts';
import { barShapes, seasonGrid } from '../../drawing/seasonBarFigure.ts';
import { type Html, html } from '../../html.ts';
import { levelMark, levelWordsHtml } from '../../parts/level.ts';
import { countInWords, listInWords, lowerFirst } from '../../words/words.ts';
import type { RankedCultivars, RankedGroup, RankedRow } from './placeTrees.ts';

type Href = (path: string) => string;

function monthAxis(climate: ClimateSummary, lat: number): Html {
  const names = ribbonDrawing(climate.ribbon, lat).months.map(
    ({ middle, name }) => html`<text x="${middle}%" y="1em">${monthName(name)}</text>`,
  );
  return html`
    <div class="ranked-axis" aria-hidden="true">
      <svg width="100%" height="1.25rem" aria-hidden="true">${names}</svg>
    </div>
  `;
}

function treeItem({ path, name, species, mark, bars, ripens, best }: RankedRow, href: Href): Html {
  const lot = best && html`<p class="best"><a href="${href(best.path)}">${best.words}</a></p>`;
  return html`
    <li>
      <span class="mark">${fruitMarkHtml(mark, href)}</span>
      <p class="of-tree"><a href="${href(path)}"><bdi>${name}</bdi></a> <span>${species}</span></p>
      <div class="when">
        <svg class="bars" viewBox="0 0 ${BAR_WIDTH} 16" preserveAspectRatio="none" aria-hidden="true">${barShapes(bars)}</svg>
        <p class="ripens">${ripens}</p>
      </div>
      ${lot}
    </li>
  `;
}

/** Verdicts worth growing a tree for stand open; a gamble and what hardly ever ripens are folded, and whatever comes below so many cultivars. */
const folded: readonly Level[] = ['a-gamble', 'not-here'];
const openAtMost = 12;

function groupHtml({ level, words, rows }: RankedGroup, above: number, href: Href): Html {
  const list = html`<ol class="ranked">${rows.map(row => treeItem(row, href))}</ol>`;
  const heading = html`${levelMark(level, words)} <span class="count">${countInWords(rows.length, 'cultivar')}</span>`;
  return folded.includes(level) || above >= openAtMost
    ? html`<details class="ranked-group"><summary>${heading}</summary>${list}</details>`
    : html`<h3 class="counted">${heading}</h3>${list}`;
}

const shownAbove = (groups: readonly RankedGroup[], at: number) =>
  groups.slice(0, at).reduce((sum, { rows }) => sum + rows.length, 0);

function restLine(rest: RankedCultivars['rest'], name: string, href: Href): Html {
  const counts = listInWords(rest.map(({ words, count }) => `${count} ${lowerFirst(words)}`));
  return html`
    <p>
      Further down: ${counts}. The page of each <a href="${href(cultivarsPath)}">cultivar</a> says how it does at ${name}.
    </p>
  `;
}

export function rankedTrees(
  { groups, rest }: RankedCultivars,
  { id, name, lat }: Pick<Place, 'id' | 'name' | 'lat'>,
  climate: ClimateSummary,
  href: Href,
): Html {
  return html`
    <section aria-labelledby="trees">
      <h2 id="trees">What does well here</h2>
      <p>
        The bar is the first ripe fruit in 8 years in 10, an outlined one with a head start under cover; the tint is the usual season between
        freezes. Below it, the lot to take today.
        <a class="unprinted" href="${href(fruitYearPath(id))}">The fruit year on one sheet, to print</a>
      </p>
      ${levelWordsHtml}
      ${seasonGrid(climate, lat)}
      ${monthAxis(climate, lat)}
      ${groups.map((group, at) => groupHtml(group, shownAbove(groups, at), href))}
      ${rest.length > 0 && restLine(rest, name, href)}
    </section>
  `;
}
