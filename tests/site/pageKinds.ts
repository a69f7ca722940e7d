/** Every kind of page of the built site, and examples of each: one table for all tests that look at pages. */

import { leadsOn, pagesOf, readText } from './builtSites.ts';

interface Lot {
  lot: string;
  forms: { form: string; state: string }[];
}

interface Kind {
  name: string;
  /** Of the file below the site's folder. */
  file: RegExp;
  /** Files that stand for the kind; the first one where left out. */
  examples?: (files: readonly string[], folder: string) => (string | undefined)[];
}

const named =
  (...files: string[]) =>
  (there: readonly string[]) =>
    files.map(file => there.find(other => other === file));

function lotsInEachState(files: readonly string[], folder: string): (string | undefined)[] {
  const { lots } = JSON.parse(readText(folder, 'stock.json')) as { lots: Lot[] };
  const ready = (form: string) =>
    lots.find(lot => lot.forms.some(f => f.form === form && f.state === 'ready'));
  return [
    ...['leafed-pot', 'dormant-pot', 'bare-root'].map(form => {
      const lot = ready(form);
      return lot && `lots/${lot.lot}/index.html`;
    }),
    files.find(file => /This lot is sold/.test(readText(folder, file))),
    files.find(file => /Held back since/.test(readText(folder, file))),
  ];
}

const kinds: readonly Kind[] = [
  { name: 'home', file: /^index\.html$/ },
  { name: 'not found', file: /^404\.html$/ },
  { name: 'stock list', file: /^stock\/(?:page\/\d+\/)?index\.html$/ },
  { name: 'stock by form', file: /^stock\/form\/[^/]+\/(?:page\/\d+\/)?index\.html$/ },
  { name: 'sold lots', file: /^stock\/sold\/(?:page\/\d+\/)?index\.html$/ },
  { name: 'lot', file: /^lots\/[^/]+\/index\.html$/, examples: lotsInEachState },
  { name: 'cultivar list', file: /^cultivars\/(?:page\/\d+\/)?index\.html$/ },
  {
    name: 'cultivar',
    file: /^cultivars\/[^/]*[a-z][^/]*\/index\.html$/,
    // The first, and the one with the longest name.
    examples: files => [files[0], [...files].sort((a, b) => b.length - a.length)[0]],
  },
  { name: 'cultivars of a flavor', file: /^cultivars\/flavor\/[^/]+\/(?:page\/\d+\/)?index\.html$/ },
  {
    name: 'cultivars that ripen together',
    file: /^cultivars\/ripening\/[^/]+\/(?:page\/\d+\/)?index\.html$/,
  },
  { name: 'comparison', file: /^compare\/index\.html$/ },
  {
    name: 'fruit year',
    file: /^places\/[^/]+\/fruit-year\/index\.html$/,
    examples: named(
      'places/minneapolis-mn/fruit-year/index.html',
      'places/melbourne-au/fruit-year/index.html',
    ),
  },
  { name: 'compared kind', file: /^compare\/(?:species|flavor)\/[^/]+\/(?:page\/\d+\/)?index\.html$/ },
  { name: 'kinds of climate', file: /^climates\/index\.html$/ },
  { name: 'kind of climate', file: /^climates\/[^/]+\/index\.html$/ },
  { name: 'place list', file: /^places\/index\.html$/ },
  {
    name: 'place',
    file: /^places\/[^/]+\/index\.html$/,
    examples: named('places/minneapolis-mn/index.html', 'places/melbourne-au/index.html'),
  },
  { name: 'guide list', file: /^guides\/index\.html$/ },
  { name: 'guide', file: /^guides\/[^/]+\/index\.html$/ },
  {
    name: 'guide for a place',
    file: /^guides\/[^/]+\/[^/]+\/index\.html$/,
    examples: named('guides/overwintering-pot/minneapolis-mn/index.html'),
  },
  {
    name: 'guide for a form',
    file: /^guides\/[^/]+\/(?:leafed-pot|dormant-pot|bare-root)\/[^/]+\/index\.html$/,
  },
  { name: 'video list', file: /^videos\/index\.html$/ },
  { name: 'video', file: /^videos\/[^/]+\/index\.html$/ },
  { name: 'own place', file: /^my-place\/index\.html$/ },
  { name: 'search', file: /^search\/index\.html$/ },
  { name: 'how to order', file: /^ordering\/index\.html$/ },
  { name: 'what changed', file: /^changes\/index\.html$/ },
  { name: 'walk', file: /^walk\/index\.html$/ },
  { name: 'how we know', file: /^how-we-know\/index\.html$/ },
];

/** The kind of a page. Throws for a page of no kind. */
export function kindOf(file: string): string {
  const kind = kinds.findLast(each => each.file.test(file));
  if (kind === undefined) throw new Error(`a page of no kind in tests/site/pageKinds.ts: ${file}`);
  return kind.name;
}

export interface Example {
  kind: string;
  /** Address below the home page. */
  path: string;
}

/**
 * Examples of every kind of page. Throws when a page is of no kind, or a kind has lost its examples: a new kind of page has to be added
 * here before anything is tested.
 */
export function examplesOfEveryKind(folder: string): Example[] {
  // What only leads on to another page is never looked at.
  const files = pagesOf(folder).filter(file => !leadsOn(readText(folder, file)));
  const strays = files.filter(file => kinds.every(kind => !kind.file.test(file)));
  if (strays.length > 0) throw new Error(`pages of no kind in tests/site/pageKinds.ts: ${strays.join(' ')}`);
  return kinds.flatMap(({ name, file, examples = all => all.slice(0, 1) }) => {
    const found = examples(
      files.filter(path => file.test(path)),
      folder,
    );
    if (found.length === 0 || found.some(path => path === undefined))
      throw new Error(`no example of a page of the kind "${name}"`);
    return [...new Set(found)].map(path => ({ kind: name, path: path!.replace(/(^|\/)index\.html$/, '$1') }));
  });
}
