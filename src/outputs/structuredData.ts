/**
 * What pages say to programs that read schema.org: JSON-LD whose prices and availability are those the page shows. Nothing is told that
 * the page does not tell people: a sold lot shows no price, so it offers nothing here either.
 */

import type {
  AggregateOffer,
  BreadcrumbList,
  ItemAvailability,
  ItemList,
  Offer,
  Organization,
  Product,
  Thing,
} from 'schema-dts';
import type { CultivarEntry, LotEntry, PublicYard } from '../core/catalogue.ts';
import type { FormState } from '../core/lots/answers.ts';
import { currencyDecimals, type Money } from '../core/money.ts';
import type { Form } from '../core/records/common.ts';
import type { AddressOf } from './openFile.ts';

/** One thing of a page. */
export type PageThing = Exclude<Thing, string>;

/**
 * ready: in stock. opens: it can be ordered for later. Nobody can promise a form that is blocked or has to be looked at first, so it
 * is out of stock.
 */
const availabilities: Record<FormState, ItemAvailability> = {
  ready: 'https://schema.org/InStock',
  opens: 'https://schema.org/PreOrder',
  look: 'https://schema.org/OutOfStock',
  blocked: 'https://schema.org/OutOfStock',
};

/** A price as schema.org wants it: a number in the main unit, `45.00`. */
function amountOf({ minor, currency }: Money): string {
  const decimals = currencyDecimals(currency);
  return (minor / 10 ** decimals).toFixed(decimals);
}

/** Address of the yard as a thing, on its first page. */
function yardId(addressOf: AddressOf): string {
  return `${addressOf('/')}#yard`;
}

function sellerOf(name: string, addressOf: AddressOf): Organization {
  return { '@type': 'Organization', '@id': yardId(addressOf), name };
}

/** The words that only a view has. */
export interface ProductWords {
  /** Name of the yard. */
  seller: string;
  name: string;
  description: string;
  /** Absolute address of a photograph that the page shows; null when it shows none. */
  image: string | null;
  formWords: Record<Form, string>;
}

/** Offers of a lot in the forms that have a price; none when it is sold out. */
function offersOf(
  { lot, forms, tiers, soldOut }: LotEntry,
  url: string,
  { formWords, seller }: Pick<ProductWords, 'formWords' | 'seller'>,
  addressOf: AddressOf,
): Offer[] {
  if (soldOut) return [];
  return forms.flatMap(({ form, state, range }): Offer[] => {
    const tier = tiers[form]?.answer;
    if (!tier) return [];
    const { price, overrideRungs } = tier;
    const until = overrideRungs === null ? null : (lot.price?.until ?? null);
    return [
      {
        '@type': 'Offer',
        name: formWords[form],
        url,
        price: amountOf(price),
        priceCurrency: price.currency,
        ...(until ? { priceValidUntil: until } : {}),
        availability: availabilities[state],
        // The late end of the forecast: by then it has opened in nine years in ten.
        ...(range ? { availabilityStarts: range.to } : {}),
        itemCondition: 'https://schema.org/NewCondition',
        seller: sellerOf(seller, addressOf),
      },
    ];
  });
}

/** A lot as a product with an offer for each form; null when there is nothing to offer. `path` is its page. */
export function lotProduct(
  entry: LotEntry,
  path: string,
  words: ProductWords & { size: string },
  addressOf: AddressOf,
): Product | null {
  const url = addressOf(path);
  const offers = offersOf(entry, url, words, addressOf);
  if (offers.length === 0) return null;
  return {
    '@type': 'Product',
    name: words.name,
    description: words.description,
    url,
    sku: entry.lot.id,
    size: words.size,
    ...(words.image === null ? {} : { image: words.image }),
    offers,
  };
}

/** What cannot be had is not among them: the page of the cultivar shows no price for it. */
const bestFirst: readonly FormState[] = ['ready', 'opens', 'look'];

/** A cultivar as a product, offered at the prices of the forms that stand best of its lots on the list: a form to come has no say in it; null when none is on the list or priced. */
export function cultivarProduct(
  { lots }: Pick<CultivarEntry, 'lots'>,
  path: string,
  words: Omit<ProductWords, 'formWords'>,
  addressOf: AddressOf,
): Product | null {
  const priced = lots
    .filter(({ soldOut }) => !soldOut)
    .flatMap(({ forms: answers, tiers }) =>
      answers.flatMap(({ form, state }) => {
        const price = tiers[form]?.answer.price;
        return price ? [{ price, state }] : [];
      }),
    );
  const best = bestFirst.find(state => priced.some(form => form.state === state));
  const forms = priced.filter(({ state }) => state === best);
  const [low, high] = [Math.min, Math.max].map(most => most(...forms.map(({ price }) => price.minor)));
  const [first] = forms;
  if (!first || !best) return null;
  const { currency } = first.price;
  const offers: AggregateOffer = {
    '@type': 'AggregateOffer',
    lowPrice: amountOf({ minor: low!, currency }),
    highPrice: amountOf({ minor: high!, currency }),
    priceCurrency: currency,
    offerCount: forms.length,
    availability: availabilities[best],
    seller: sellerOf(words.seller, addressOf),
  };
  return {
    '@type': 'Product',
    name: words.name,
    description: words.description,
    url: addressOf(path),
    ...(words.image === null ? {} : { image: words.image }),
    offers,
  };
}

/** The pages above a page, and the page itself, as a trail. */
export function breadcrumbs(
  above: readonly { path: string; name: string }[],
  here: string,
  addressOf: AddressOf,
): BreadcrumbList {
  return {
    '@type': 'BreadcrumbList',
    itemListElement: [
      ...above.map(({ path, name }, index) => ({
        '@type': 'ListItem' as const,
        position: index + 1,
        name,
        item: addressOf(path),
      })),
      { '@type': 'ListItem', position: above.length + 1, name: here },
    ],
  };
}

/** The pages that a list names, in its order. */
export function listOfPages(rows: readonly { path: string; name: string }[], addressOf: AddressOf): ItemList {
  return {
    '@type': 'ItemList',
    itemListElement: rows.map(({ path, name }, index) => ({
      '@type': 'ListItem',
      position: index + 1,
      name,
      url: addressOf(path),
    })),
  };
}

/** The yard and its site. */
export function yardAndSite(yard: PublicYard, addressOf: AddressOf): PageThing[] {
  const { email, phone, post } = yard.contact;
  const id = yardId(addressOf);
  const url = addressOf('/');
  return [
    {
      '@type': 'Organization',
      '@id': id,
      name: yard.name,
      slogan: yard.tagline,
      url,
      ...(yard.about === null ? {} : { description: yard.about }),
      ...(email === null ? {} : { email }),
      ...(phone === null ? {} : { telephone: phone }),
      ...(post === null ? {} : { address: post }),
    },
    { '@type': 'WebSite', name: yard.name, url, inLanguage: 'en', publisher: { '@id': id } },
  ];
}

/** The text of a `application/ld+json` script. What could end the script is escaped, so that no name can. */
export function structuredText(things: readonly PageThing[]): string {
  return JSON.stringify({ '@context': 'https://schema.org', '@graph': things }).replaceAll('<', '\\u003c');
}
