/** Prices that hang on the private folder, and so differ where it is not at hand: on a host that builds from the repository. */

import { assemble, type Catalogue } from '../catalogue.ts';
import type { Day } from '../days.ts';
import { currencyDecimals, type Money, priceInWords } from '../money.ts';
import { decode } from '../reading/decode.ts';
import type { Diagnostic } from '../reading/diagnostic.ts';
import { locate } from '../reading/locate.ts';
import { atValue, type Problem } from '../reading/problem.ts';
import type { PrivateParts, Reading, SourceFile } from '../reading/read.ts';
import type { Records } from '../records/records.ts';

/** The records as they are read without the private folder. */
function withoutPrivate(records: Records, { costs, requests }: PrivateParts): Records {
  const cultivars = [...records.cultivars].map(
    ([id, cultivar]) => [id, requests.has(id) ? { ...cultivar, requests: 0 } : cultivar] as const,
  );
  const yard = costs ? { ...records.yard, costs: null } : records.yard;
  return { ...records, cultivars: new Map(cultivars), yard };
}

/** Prices of what is not sold, by lot and form. */
function pricesOf({ lots }: Catalogue): Map<string, Money> {
  return new Map(
    lots
      .filter(({ soldOut }) => !soldOut)
      .flatMap(({ lot, tiers }) =>
        Object.entries(tiers).map(([form, tier]) => [`${lot.id} ${form}`, tier.answer.price] as const),
      ),
  );
}

/** A price as it is written under `price: amount:`. */
function amountOf({ minor, currency }: Money): string {
  const decimals = currencyDecimals(currency);
  return (minor / 10 ** decimals).toFixed(minor % 10 ** decimals === 0 ? 0 : decimals);
}

/** One problem for each lot whose price, in the first form it differs in, is another without the private folder. */
export function privatePrices(files: readonly SourceFile[], reading: Reading, asOf: Day): Diagnostic[] {
  const { records, privateParts } = reading;
  if (records === null || (!privateParts.costs && privateParts.requests.size === 0)) return [];
  const here = assemble(records, asOf, new Map());
  const there = pricesOf(assemble(withoutPrivate(records, privateParts), asOf, new Map()));
  const prices = pricesOf(here);
  const problems = here.lots.flatMap(({ lot, tiers }): Problem[] => {
    const form = Object.keys(tiers).find(name => {
      const key = `${lot.id} ${name}`;
      return prices.get(key)?.minor !== there.get(key)?.minor;
    });
    const [one, other] = [prices.get(`${lot.id} ${form}`), there.get(`${lot.id} ${form}`)];
    if (!one || !other) return [];
    return [
      {
        rule: 'private-price',
        file: lot.file,
        spot: atValue(lot.index, 'lot'),
        got: priceInWords(one),
        expected: 'the same price with and without the private folder',
        message: `${form} of this lot costs ${priceInWords(one)} here, and ${priceInWords(other)} where the private folder is missing, as on a host that builds the site`,
        remedy: `give the lot a price of its own, "price:" with "amount" "${amountOf(one)}" and "why".`,
      },
    ];
  });
  const named = new Set(problems.map(({ file }) => file));
  const yaml = new Map(
    files.flatMap(({ path, bytes }) => {
      const read = named.has(path) ? decode(path, bytes) : null;
      return read && 'text' in read ? [[path, { file: path, text: read.text, firstLine: 1 }] as const] : [];
    }),
  );
  return locate(problems, { yaml, tables: new Map() });
}
