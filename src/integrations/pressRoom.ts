/**
 * The press: a program of its own that prints the pages of which a yard has thousands, while the generator renders all others. It is handed
 * the catalogue, works out what every page shows, takes the unchanged ones from the site before, and pours the rest into their moulds.
 */

import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { shortAddress } from '../core/addresses/paths.ts';
import { outlooksFor } from '../outlooks.ts';
import { siteLinks } from '../outputs/siteLinks.ts';
import { pageKey } from '../pageReuse.ts';
import { comparedFile } from '../views/comparedFile.ts';
import { cultivarPage } from '../views/cultivarPage.ts';
import { lotPage } from '../views/lotPage.ts';
import { mouldFrom, mouldKinds, type PouredKind } from '../views/mould.ts';
import type { PageText, PageTools } from '../views/pageText.ts';
import { type PrintedFile, printedFiles } from '../views/printed.ts';
import { shownOfCultivar } from '../views/shown.ts';
import { writeRedirect } from './addressList.ts';
import { type FinishedFile, finishedFile, pathOfFile } from './finishedSite.ts';
import type { FromPress, PressOrder, PrintRun, ToPress } from './press.ts';
import { privacyScan, refusePrivate } from './privacyScan.ts';
import { publishedPages, takeOver, untouchedBytes } from './publishedPages.ts';

/** A file ready to print: that of the site before, a page to pour, or a text that needs no mould. */
type MadeUp = { file: string; key: string } & (
  | { before: FinishedFile }
  | { kind: PouredKind; page: PageText }
  | { text: string }
);

const noPhotos: PageTools['photo'] = async file => {
  throw new Error(`the press has no photographs, and was asked for ${file}`);
};

async function contentOf(job: PrintedFile, { all }: PressOrder, tools: PageTools) {
  const places = await outlooksFor(all);
  switch (job.kind) {
    case 'lots':
      return { kind: job.kind, page: await lotPage(all, job.entry, tools) };
    case 'cultivars':
      return { kind: job.kind, page: await cultivarPage(all, job.entry, places, tools) };
    case 'compare':
      return {
        text: JSON.stringify(comparedFile(all, places.get(all.home.id)!, job.entry, tools.links.href)),
      };
  }
}

/** Everything that can be done before the moulds are there. */
async function makeUp(order: PressOrder, tools: PageTools): Promise<MadeUp[]> {
  const { all, out, ground, afresh, privateNotes } = order;
  const scan = privacyScan(privateNotes);
  const published = afresh ? new Map<string, never>() : await publishedPages(out, ground);
  const ready: MadeUp[] = [];
  for (const job of printedFiles(all, 1)) {
    const { file } = job;
    const key = pageKey(ground, file, shownOfCultivar(all, job.entry));
    const bytes = published.get(file)?.[0] === key ? untouchedBytes(out, file, published) : null;
    if (bytes === null) {
      ready.push({ file, key, ...(await contentOf(job, order, tools)) });
    } else {
      refusePrivate(scan, file, bytes);
      ready.push({ file, key, before: finishedFile(file, bytes) });
    }
  }
  return ready;
}

function print(
  ready: readonly MadeUp[],
  moulds: Record<PouredKind, string>,
  order: PressOrder,
  { links }: PageTools,
): PrintRun {
  const { all, out, built, privateNotes } = order;
  const scan = privacyScan(privateNotes);
  const redirects: string[] = [];
  const pour = Object.fromEntries(mouldKinds.map(kind => [kind, mouldFrom(moulds[kind], kind, links)]));
  const files = ready.map(made => {
    const { file, key } = made;
    const path = pathOfFile(file);
    const code = path === null ? undefined : all.codes.get(path);
    if (path !== null && code !== undefined)
      redirects.push(writeRedirect(built, { from: shortAddress(code), to: path }, links));
    if ('before' in made) {
      takeOver(out, built, file);
      return { ...made.before, key };
    }
    const bytes = Buffer.from('page' in made ? pour[made.kind]!(made.page) : made.text);
    refusePrivate(scan, file, bytes);
    mkdirSync(dirname(join(built, file)), { recursive: true });
    writeFileSync(join(built, file), bytes);
    return { ...finishedFile(file, bytes), key };
  });
  return { files, redirects, reused: ready.filter(made => 'before' in made).length };
}

async function work(order: PressOrder, moulds: Promise<Record<PouredKind, string>>): Promise<PrintRun> {
  const tools = { links: siteLinks(order.all.yard.address, order.base), photo: noPhotos };
  const ready = await makeUp(order, tools);
  return print(ready, await moulds, order, tools);
}

function answer(message: FromPress): void {
  process.send?.(message, () => process.disconnect());
}

const moulds = Promise.withResolvers<Record<PouredKind, string>>();
process.on('message', (message: ToPress) => {
  if ('moulds' in message) moulds.resolve(message.moulds);
  else
    work(message.order, moulds.promise).then(
      run => answer({ run }),
      problem => answer({ problem: problem instanceof Error ? problem.message : String(problem) }),
    );
});
// A build that is killed takes its press with it.
process.on('disconnect', () => process.exit());
