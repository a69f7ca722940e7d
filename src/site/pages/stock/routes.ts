/** The stock list, whole and by form, the list of what is sold, and the open stock file. */

import { forms } from '../../../core/records/common.ts';
import { stockFile, stockFileSchema } from '../../../outputs/stockFile.ts';
import { formPath, soldPath, stockPath } from '../../addresses/paths.ts';
import { listInputs, stockInputs } from '../../inputs.ts';
import { pagePath } from '../../parts/paging.ts';
import { runsFromHome } from '../../parts/sentNow.ts';
import { jsonRoute, noInputs, pageRoute, type Route } from '../../route.ts';
import { contextOf, type Site } from '../../site.ts';
import { stockSentence } from '../home/home.ts';
import { soldPage } from './soldPage.ts';
import { formLists, sold, soldList, stockList } from './stock.ts';
import { formPage, stockPage as pageOfStock } from './stockPage.ts';

export function stockRoutes(site: Site): Route[] {
  const { all } = site;
  const context = contextOf(site);
  const list = stockList(all);
  const soldLots = sold(all).map(({ lot, cultivar }) => [lot.id, cultivar.name]);
  const whole = list.pages.map(page =>
    pageRoute(
      pagePath(stockPath, page.number),
      () => listInputs(list, page, stockSentence(all), soldLots),
      () => pageOfStock(all, page, context),
    ),
  );
  const byForm = forms.flatMap(form => {
    const ofForm = formLists(all)[form];
    return ofForm.pages.map(page =>
      pageRoute(
        pagePath(formPath(form), page.number),
        () => listInputs(ofForm, page),
        () => formPage(all, form, page, context),
      ),
    );
  });
  const gone = soldList(all);
  const soldPages = gone.pages.map(page =>
    pageRoute(
      pagePath(soldPath, page.number),
      () => listInputs(gone, page),
      () => soldPage(all, page, context),
    ),
  );
  return [
    ...whole,
    ...byForm,
    ...soldPages,
    jsonRoute(
      'stock.json',
      () => stockInputs(all),
      () => stockFile(all, context.links.absolute, runsFromHome(all)),
    ),
    jsonRoute('stock.schema.json', noInputs, stockFileSchema),
  ];
}
