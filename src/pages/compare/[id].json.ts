/** What the comparison shows of one cultivar. Made for the script of this site; the documented file is cultivars.json. */

import type { APIContext } from 'astro';
import { catalogue } from '../../content.ts';
import type { CultivarEntry } from '../../core/catalogue.ts';
import { href } from '../../href.ts';
import { outlooksFor } from '../../outlooks.ts';
import { changedOnly } from '../../pageReuse.ts';
import { comparedFile } from '../../site/data/comparedFile.ts';
import { comparedFilePath } from '../../views/printed.ts';
import { shownOfCultivar } from '../../views/shown.ts';

export async function getStaticPaths() {
  const all = await catalogue();
  const pages = all.cultivars.map(entry => ({ params: { id: entry.cultivar.id }, props: { entry } }));
  return changedOnly(pages, ({ params, props }) => ({
    file: comparedFilePath(params.id),
    shows: () => shownOfCultivar(all, props.entry),
  }));
}

export async function GET({ props }: APIContext<{ entry: CultivarEntry }>): Promise<Response> {
  const all = await catalogue();
  const here = (await outlooksFor(all)).get(all.home.id)!;
  return Response.json(comparedFile(all, here, props.entry, href));
}
