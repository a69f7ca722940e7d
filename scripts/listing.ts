/** `npm run listing`: text of a lot, or of the whole list, for pasting elsewhere. */

import { assemble } from '../src/core/catalogue.ts';
import { nearest } from '../src/core/reading/nearest.ts';
import { plural } from '../src/core/reading/problem.ts';
import { listingHtml, listingOf, listingText, wholeList, withinLimit } from '../src/listing/listing.ts';
import { readFlags, runIfMain, UsageError } from './command.ts';
import { countGiven } from './given.ts';
import { soundContent } from './soundContent.ts';

const help = `Writes the text of a lot for pasting elsewhere: condition as it was seen and when, forms and prices, sending, care, cautions.

  npm run listing -- 26-cut-03
  npm run listing -- 26-cut-03 --html
  npm run listing -- --all               every lot that is not sold
  npm run listing -- --list              one text for the whole list

  --html            simple HTML without styles
  --limit COUNT     most characters; else listing_limit of yard.yaml. Cautions and condition are never left out
  --base /orchard/  the path below which the site is published
  --as-of DAY
  --help
`;

export async function main(words: string[]): Promise<number> {
  const { values, positionals } = readFlags(words, help, {
    html: { type: 'boolean' },
    all: { type: 'boolean' },
    list: { type: 'boolean' },
    limit: { type: 'string' },
    base: { type: 'string' },
    'as-of': { type: 'string' },
  });
  if (positionals.length === 0 && !values.all && !values.list)
    throw new UsageError('say which lot, or --all or --list. Try --help.');
  const { asOf, records } = await soundContent({ asOf: values['as-of'] });
  const all = assemble(records, asOf, new Map());
  const base = values.base ?? process.env.BASE_PATH ?? '/';
  if (values.list) {
    process.stdout.write(wholeList(all, base));
    return 0;
  }
  const ids = all.lots.map(({ lot }) => lot.id);
  const wrong = positionals.find(id => !ids.includes(id));
  if (wrong !== undefined) {
    const guess = nearest(wrong, ids);
    throw new UsageError(`there is no lot "${wrong}"${guess ? `; did you mean "${guess}"?` : '.'}`);
  }
  const entries = values.all
    ? all.lots.filter(({ soldOut }) => !soldOut)
    : all.lots.filter(({ lot }) => positionals.includes(lot.id));
  const limit = values.limit === undefined ? all.yard.listingLimit : countGiven(values.limit, '--limit', 300);
  const texts = entries.map(entry => {
    const fitted = withinLimit(listingOf(all, entry, base), limit);
    if ('over' in fitted)
      throw new UsageError(
        `the text of ${entry.lot.id} is ${plural(fitted.over, 'character')} too long for the limit of ${limit}, and what is left in it may not be left out: condition, forms, sending, care and cautions. Raise the limit, or shorten condition: of the lot.`,
      );
    return values.html ? listingHtml(fitted.listing) : listingText(fitted.listing);
  });
  process.stdout.write(texts.join('\n'));
  return 0;
}

await runIfMain(import.meta, main);
