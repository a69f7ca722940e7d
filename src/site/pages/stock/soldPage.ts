/** The list of lots that are sold out, one line each. */

import type { Catalogue } from '../../../core/catalogue.ts';
import { soldPath, stockPath } from '../../addresses/paths.ts';
import { html } from '../../html.ts';
import type { Page, PageContext } from '../../page.ts';
import { crumbs } from '../../parts/crumbs.ts';
import { groupHeading } from '../../parts/groupHeading.ts';
import { pager } from '../../parts/pager.ts';
import { type ListPage, pagePath, pageTitle } from '../../parts/paging.ts';
import { type SoldRow, soldList } from './stock.ts';

export function soldPage(all: Catalogue, page: ListPage<SoldRow>, { links }: PageContext): Page {
  const { href } = links;
  const { total, pages } = soldList(all);
  const title = pageTitle('Sold lots', page.number);
  const groups = page.groups.map(group => {
    const items = group.rows.map(
      row => html`<li><a href="${href(row.path)}"><bdi>${row.name}</bdi>, lot ${row.lot}</a></li>`,
    );
    return html`
      <section aria-labelledby="${group.id}">
        ${groupHeading(group, 'lot')}
        <ul class="columns">${items}</ul>
      </section>
    `;
  });
  return {
    title,
    description: `Lots of ${all.yard.name} that are sold out. Their pages stay.`,
    path: pagePath(soldPath, page.number),
    main: html`
      ${crumbs([{ path: stockPath, name: 'Stock list' }], title, links)}
      <h1>${title}</h1>
      ${total === 0 && html`<p>No lot is sold out today.</p>`}
      ${groups}
      ${pager({ path: soldPath, number: page.number, count: pages.length, name: 'list' }, href)}
    `,
  };
}
