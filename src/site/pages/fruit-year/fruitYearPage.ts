/** The fruit year of a place: twelve months by cultivars, in the order in which they ripen, made to be printed and hung up. */

import type { Catalogue } from '../../../core/catalogue.ts';
import { levels } from '../../../core/match/answers.ts';
import type { PlaceAnswers } from '../../../outlooks.ts';
import { cultivarPath, fruitYearPath, placePath, placesPath } from '../../addresses/paths.ts';
import { colorsOf } from '../../drawing/plate.ts';
import { ribbonMonths } from '../../drawing/ribbon.ts';
import { BAR_WIDTH, type CropBar } from '../../drawing/seasonBar.ts';
import { seasonGrid } from '../../drawing/seasonBarFigure.ts';
import { type Html, html } from '../../html.ts';
import type { Page, PageContext } from '../../page.ts';
import { crumbs } from '../../parts/crumbs.ts';
import { levelMark } from '../../parts/level.ts';
import { listedCultivars } from '../../parts/raised.ts';
import { bookOf, kindIn, verdictIn } from '../../parts/verdictBook.ts';
import { unitsIn } from '../../words/units.ts';
import { shortMonth } from '../../words/yearDays.ts';
import { speciesName } from '../stock/stock.ts';

interface FruitRow {
  path: string;
  name: string;
  species: string;
  colors: string;
  bars: readonly CropBar[];
  words: string;
  level: Html;
  /** Middle day of its first crop, along the axis. */
  first: number;
}

/** Cultivars that ripen a crop here, outdoors or with a head start, earliest first; those that do not ripen are counted. */
function fruitRows(all: Catalogue, answers: PlaceAnswers): { rows: FruitRow[]; without: number } {
  const book = bookOf(all, answers);
  const found = listedCultivars(all).flatMap(({ cultivar, species }): FruitRow[] => {
    const { bars, level } = kindIn(book, cultivar.id);
    if (bars.length === 0 || level === levels.at(-1)) return [];
    const { words, ripens } = verdictIn(book, cultivar.id);
    return [
      {
        path: cultivarPath(cultivar.id),
        name: cultivar.name,
        // A name that ends with the species says it already.
        species: cultivar.name.toLowerCase().endsWith(` ${speciesName(species).toLowerCase()}`)
          ? ''
          : speciesName(species),
        colors: colorsOf(cultivar.fruit),
        bars,
        words: ripens,
        level: levelMark(level, words),
        first: Math.min(...bars.map(({ middle }) => middle)),
      },
    ];
  });
  return {
    rows: found.toSorted((a, b) => a.first - b.first || a.name.localeCompare(b.name, 'en')),
    without: listedCultivars(all).length - found.length,
  };
}

/** Skin above and flesh below, as when the fruit is halved. A crop that needs a head start is hollow. */
function bar({ bars, colors, words }: FruitRow): Html {
  const shapes = bars.flatMap(({ parts, headStart }) =>
    parts.map(({ from, width }) =>
      headStart
        ? html`<rect class="started" x="${from}" y="3" width="${width}" height="10"/>`
        : html`<rect class="of-skin" x="${from}" y="2" width="${width}" height="6"/><rect class="of-flesh" x="${from}" y="8" width="${width}" height="6"/>`,
    ),
  );
  return html`
    <svg class="${colors}" viewBox="0 0 ${BAR_WIDTH} 16" preserveAspectRatio="none" role="img" aria-label="${words}">
      <use href="#season-grid"/>${shapes}
    </svg>
  `;
}

/** `answers` are those of the place the page is for. */
export function fruitYearPage(all: Catalogue, answers: PlaceAnswers, { links }: PageContext): Page {
  const { place } = answers;
  const { href } = links;
  const climate = all.climates.get(place.id)!;
  const { rows, without } = fruitRows(all, answers);
  const months = ribbonMonths(place.lat).map(month => html`<span>${shortMonth(month + 1).charAt(0)}</span>`);
  const items = rows.map(
    row => html`
      <li>
        <p><a href="${href(row.path)}"><bdi>${row.name}</bdi></a> <span>${row.species}</span></p>
        ${bar(row)}
        <p class="verdict">${row.level}</p>
      </li>
    `,
  );
  const list = html`
    <p class="fruit-months" aria-hidden="true">${months}</p>
    <ol class="fruit-rows fruit">${items}</ol>
  `;
  const title = `The fruit year at ${place.name}`;
  return {
    title,
    description: `Which cultivars of ${all.yard.name} ripen when at ${place.name}, month by month, on one sheet to print.`,
    path: fruitYearPath(place.id),
    units: unitsIn(place.country),
    styles: ['fruitYear'],
    main: html`
      ${crumbs(
        [
          { path: placesPath, name: 'Places' },
          { path: placePath(place.id), name: place.name },
        ],
        title,
        links,
      )}
      <h1>${title}</h1>
      <p>
        Each bar is the time of the first ripe fruit in eight years in ten, skin color above and flesh color below. A hollow bar needs a head
        start under cover. The tint is the usual season between freezes.
        <span class="unprinted">It prints on one sheet to hang up.</span>
      </p>
      ${seasonGrid(climate, place.lat)}
      ${rows.length > 0 ? list : html`<p>None of our cultivars is likely to ripen a crop here.</p>`}
      ${rows.length > 0 && without > 0 && html`<p class="standing">${without} more are not likely to ripen here.</p>`}
    `,
  };
}
