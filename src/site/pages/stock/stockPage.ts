/** The pages of the stock list: everything that can be had or is coming, by species; and of each form of sale, ready first. */

import type { Catalogue } from '../../../core/catalogue.ts';
import { type Form, forms } from '../../../core/records/common.ts';
import { changesPath, formPath, lotPath, soldPath, stockPath } from '../../addresses/paths.ts';
import { attribute, type Html, html } from '../../html.ts';
import type { Page, PageContext } from '../../page.ts';
import { compareForm } from '../../parts/compareForm.ts';
import { crumbs } from '../../parts/crumbs.ts';
import { groupHeading } from '../../parts/groupHeading.ts';
import { lotBlocks } from '../../parts/lotBlocks.ts';
import { pager } from '../../parts/pager.ts';
import { type ListPage, type PagedList, pagePath, pageTitle } from '../../parts/paging.ts';
import { seasonNotice } from '../../parts/seasonNotice.ts';
import { formMeanings, formWords } from '../../words/words.ts';
import { changesTitle } from '../changes/changes.ts';
import { stockSentence } from '../home/home.ts';
import { formLists, type StockRow, sold, stockList } from './stock.ts';

type Href = (path: string) => string;

/** Sold lots named below the list; the others are on their own list. */
const soldNamed = 24;

/** One page of a list of lots. */
interface Shown {
  list: PagedList<StockRow>;
  page: ListPage<StockRow>;
  /** Address of the first page. */
  path: string;
  /** The form this list is about; null: all. */
  form: Form | null;
}

function formLinks(form: Form | null, href: Href): Html {
  const links = forms.map(
    name => html`
      <li><a href="${href(formPath(name))}"${attribute('aria-current', form === name && 'true')}>${formWords[name]}</a></li>
    `,
  );
  return html`
    <h2>By form</h2>
    <ul>
      <li><a href="${href(stockPath)}"${attribute('aria-current', form === null && 'true')}>All forms</a></li>
      ${links}
    </ul>
  `;
}

function groupLinks({ list, page, path, form }: Shown, href: Href): Html | null {
  if (list.contents.length <= 1) return null;
  const links = list.contents.map(({ id, heading, count, page: at }) => {
    const link = at === page.number ? `#${id}` : `${href(pagePath(path, at))}#${id}`;
    return html`<li><a href="${link}">${heading} (${count})</a></li>`;
  });
  return html`
    <h2>${form === null ? 'By species' : 'By readiness'}</h2>
    <ul>${links}</ul>
  `;
}

/** Contents, groups of lots and the way to the other pages. */
function lotGroups(shown: Shown, href: Href): Html {
  const { list, page, path, form } = shown;
  const look = { forms: form === null ? forms : [form], href };
  const groups = page.groups.map(
    group => html`
      <section aria-labelledby="${group.id}">
        ${groupHeading(group, 'lot')}
        ${lotBlocks(group.rows, look)}
      </section>
    `,
  );
  return html`
    <nav class="jumps" aria-label="Parts of the list">
      ${formLinks(form, href)}
      ${groupLinks(shown, href)}
    </nav>
    ${list.total === 0 && html`<p>No lot is on this list today.</p>`}
    ${list.total > 0 && compareForm(html`${groups}`, href)}
    ${pager({ path, number: page.number, count: list.pages.length, name: 'list' }, href)}
  `;
}

function soldSection(all: Catalogue, href: Href): Html | null {
  const lots = sold(all);
  if (lots.length === 0) return null;
  const items = lots.slice(0, soldNamed).map(
    ({ lot, cultivar }) => html`
      <li><a href="${href(lotPath(lot.id))}"><bdi>${cultivar.name}</bdi>, lot ${lot.id}</a></li>
    `,
  );
  const whole = lots.length > soldNamed && html`<a href="${href(soldPath)}">All ${lots.length} sold lots</a>`;
  return html`
    <section aria-labelledby="sold">
      <h2 id="sold">Sold</h2>
      <p>These lots are gone. Their pages stay, and say when the cultivar comes again. ${whole}</p>
      <ul class="columns">${items}</ul>
    </section>
  `;
}

function standfirst(all: Catalogue, href: Href): Html {
  return html`
    <p class="standfirst">
      ${stockSentence(all)} Prices are in ${all.yard.currency}, for one tree. <a href="${href(changesPath)}">${changesTitle}</a>
    </p>
  `;
}

/** A page of the whole list. */
export function stockPage(all: Catalogue, page: ListPage<StockRow>, { links: { href } }: PageContext): Page {
  const list = stockList(all);
  const title = pageTitle('Stock list', page.number);
  const isFirst = page.number === 1;
  const isLast = page.number === list.pages.length;
  return {
    title,
    description: `What ${all.yard.name} has ready and what is coming, with size, form, readiness and price. ${stockSentence(all)}`,
    path: pagePath(stockPath, page.number),
    feeds: isFirst,
    main: html`
      <h1>${title}</h1>
      ${seasonNotice(all)}
      ${isFirst && standfirst(all, href)}
      ${lotGroups({ list, page, path: stockPath, form: null }, href)}
      ${isLast && soldSection(all, href)}
    `,
  };
}

/** A page of the list of one form: ready first, then what is coming in order of day. */
export function formPage(all: Catalogue, form: Form, page: ListPage<StockRow>, { links }: PageContext): Page {
  const list = formLists(all)[form];
  const path = formPath(form);
  const title = pageTitle(formWords[form], page.number);
  return {
    title,
    description: `Fruit trees sold ${formWords[form].toLowerCase()} by ${all.yard.name}: what is ready, what is coming and when. ${formMeanings[form]}`,
    path: pagePath(path, page.number),
    main: html`
      ${crumbs([{ path: stockPath, name: 'Stock list' }], title, links)}
      <h1>${title}</h1>
      <p class="standfirst">${formMeanings[form]}</p>
      ${seasonNotice(all)}
      ${lotGroups({ list, page, path, form }, links.href)}
    `,
  };
}
