/** Search. Rows and index are loaded when the page is used; without scripts the plain lists stand. */

import type { Catalogue } from '../../../core/catalogue.ts';
import { forms } from '../../../core/records/common.ts';
import { guidesPath } from '../../addresses/guidePaths.ts';
import { climatesPath, cultivarsPath, formPath, searchPath, stockPath } from '../../addresses/paths.ts';
import { attribute, type Html, html } from '../../html.ts';
import type { Page, PageContext } from '../../page.ts';
import { myPlaceLine } from '../../parts/myTree.ts';
import { formWords } from '../../words/words.ts';
import { flavorLists, ripeningLists } from '../cultivars/cultivar.ts';
import { groupWords, orderWords, searchChoices } from './searchChoices.ts';
import { searchOrders } from './searchTerms.ts';

type Href = (path: string) => string;

interface PlainList {
  path: string;
  name: string;
}

function plainLists(all: Catalogue): { heading: string; lists: readonly PlainList[] }[] {
  return [
    {
      heading: 'By form of sale',
      lists: forms.map(form => ({ path: formPath(form), name: formWords[form] })),
    },
    { heading: 'By flavor', lists: flavorLists(all) },
    { heading: 'By ripening', lists: ripeningLists(all) },
    {
      heading: 'Whole',
      lists: [
        { path: stockPath, name: 'Stock list' },
        { path: cultivarsPath, name: 'Cultivars' },
        { path: climatesPath, name: 'By kind of climate' },
        { path: guidesPath, name: 'Guides' },
      ],
    },
  ];
}

function plainNav(all: Catalogue, href: Href): Html {
  const parts = plainLists(all).map(({ heading, lists }) => {
    const items = lists.map(({ path, name }) => html`<li><a href="${href(path)}">${name}</a></li>`);
    return html`<h2>${heading}</h2><ul>${items}</ul>`;
  });
  return html`<nav class="jumps" aria-label="Plain lists">${parts}</nav>`;
}

function choiceGroup({ group, choices }: ReturnType<typeof searchChoices>[number]): Html {
  const boxes = choices.map(
    ({ value, words, count }) => html`
      <label>
        <input type="${group === 'price' ? 'radio' : 'checkbox'}"${attribute('name', group === 'price' && 'price')} value="${value}">
        <span>${words}</span>
        <span class="count" data-count>${count}</span>
      </label>
    `,
  );
  return html`
    <fieldset data-group="${group}">
      <legend>${groupWords[group]}</legend>
      <div>${boxes}</div>
    </fieldset>
  `;
}

function finder(all: Catalogue, href: Href): Html {
  const orders = searchOrders.map(
    order =>
      html`<option value="${order}"${attribute('selected', order === 'name')}>${orderWords[order]}</option>`,
  );
  return html`
    <search class="finder" data-search>
      <form class="seek-page" method="get">
        <label class="unseen" for="seek">Search cultivars, lots, guides and places</label>
        <input id="seek" type="search" name="q" autocomplete="off" placeholder="Cultivar, flavor, lot, town or “rare under $50”">
        <button type="submit">Search</button>
      </form>
      <details class="search-key" data-search-key>
        <summary>Choose by kind, flavor, ripening, form, readiness, price, scarcity, size or your place</summary>
        ${searchChoices(all).map(choiceGroup)}
        ${myPlaceLine('For verdicts, say where the tree will live', href)}
      </details>
      <div class="order">
        <label for="order">In order of</label>
        <select id="order" name="sort" autocomplete="off">${orders}</select>
      </div>
      <div class="asked" data-search-asked hidden></div>
    </search>
  `;
}

export function searchPage(all: Catalogue, { links: { href } }: PageContext): Page {
  return {
    title: 'Search',
    description: `Search the cultivars, lots and guides of ${all.yard.name}.`,
    path: searchPath,
    unlisted: true,
    scripts: ['search'],
    styles: ['search'],
    main: html`
      <h1>Search</h1>
      ${finder(all, href)}
      <noscript>
        <p class="notice">Search needs scripts, and they are off in this browser. Everything is in the lists below as well.</p>
      </noscript>
      <p class="told" role="status" data-search-status></p>
      <div data-search-results></div>
      ${plainNav(all, href)}
    `,
  };
}
