/** What the comparison shows of each cultivar. Made for the script of this site; the documented file is cultivars.json. */

import { outlooksFor } from '../../../outlooks.ts';
import { comparedFile } from '../../data/comparedFile.ts';
import { cultivarInputs } from '../../inputs.ts';
import { jsonRoute, type Route } from '../../route.ts';
import { linksOf, type Site } from '../../site.ts';

export function compareRoutes(site: Site): Route[] {
  const { all } = site;
  const { href } = linksOf(site);
  return all.cultivars.map(entry =>
    jsonRoute(
      `compare/${entry.cultivar.id}.json`,
      () => cultivarInputs(all, entry),
      async () => comparedFile(all, (await outlooksFor(all)).get(all.home.id)!, entry, href),
    ),
  );
}
