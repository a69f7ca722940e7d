/** A lot told for pasting elsewhere: only what its page says, with the condition first, as it was seen and when. */

import { recordAddress } from '../core/addresses/paths.ts';
import { cautionsFor } from '../core/care/cautions.ts';
import type { Catalogue, LotEntry } from '../core/catalogue.ts';
import { dayInWords } from '../core/days.ts';
import { priceInWords } from '../core/money.ts';
import { forms as allForms, type Form } from '../core/records/common.ts';
import { lengthInWords } from '../core/units.ts';
import { wholeAddress } from '../labels/content.ts';
import { lotFacts, signFacts } from '../site/pages/lots/lot.ts';
import { sentNow } from '../site/parts/sentNow.ts';
import { sizeInWords } from '../site/words/measures.ts';
import { stateView } from '../site/words/state.ts';
import { formWords } from '../site/words/words.ts';

interface ListingPart {
  heading: string | null;
  lines: string[];
  /** May be left out where the text is too long; cautions and condition never are. */
  optional: boolean;
}

export interface Listing {
  lot: string;
  title: string;
  parts: ListingPart[];
}

/** Leaves that nobody has looked at are no condition; a dormant tree has none. */
const LEAFLESS: readonly string[] = ['falling', 'bare'];

function leafWords({ signs }: LotEntry): string {
  const { leaves } = signs;
  if (leaves === null) return 'Nobody has noted yet whether it is in leaf.';
  const state = LEAFLESS.includes(leaves.value) ? 'Leafless or losing its leaves' : 'In leaf';
  return `${state}, seen ${dayInWords(leaves.on)}.`;
}

function rootsSeen({ signs }: LotEntry): string {
  const { roots } = signs;
  const words = {
    none: 'none showing yet',
    showing: 'showing',
    holding: 'hold the ball',
    full: 'fill the pot',
  } as const;
  return roots === null
    ? 'Its roots were not looked at.'
    : `Roots ${words[roots.value]}, seen ${dayInWords(roots.on)}.`;
}

/** What will be cut back for which form: `Cut back to 30 in (76 cm) for sending bare-root.` */
function cutBack({ cartons }: LotEntry): string[] {
  return allForms.flatMap(form => {
    const cut = cartons[form]?.answer.cutBackToCm ?? null;
    return cut === null
      ? []
      : [`Cut back to ${lengthInWords(cut)} for sending, ${formWords[form].toLowerCase()}.`];
  });
}

function formLine(all: Catalogue, entry: LotEntry, form: Form): string[] {
  const answer = entry.forms.find(each => each.form === form);
  if (!answer) return [];
  const price = entry.tiers[form]?.answer.price;
  const { words } = stateView(answer, all.asOf, sentNow(all)[form]);
  return [`${formWords[form]}${price ? `, ${priceInWords(price)}` : ''}: ${words}.`];
}

function howSent({ yard }: Catalogue): string[] {
  const refused = yard.sending.notTo.map(({ region }) => region);
  return refused.length === 0 ? [] : [`Not sent to: ${refused.join(', ')}.`];
}

/** Everything that is said of a lot. `base`: the path below which the site is published, `/` or `/orchard/`. */
export function listingOf(all: Catalogue, entry: LotEntry, base: string): Listing {
  const { lot, cultivar, species, stock } = entry;
  const name = species.common[0] ?? species.botanical;
  const facts = lotFacts(entry).filter(({ label }) => ['Pot', 'Roots', 'Raised'].includes(label));
  const seen = signFacts(entry.signs).filter(({ label }) => label === 'Wood' || label === 'Health');
  const cautions = cautionsFor('arrival', [species]).filter(({ topic }) =>
    ['plant', 'pets', 'movement'].includes(topic),
  );
  const guide = all.guides.find(({ kind }) => kind === 'arrival');
  const address = (page: string) => wholeAddress(all, page, base);
  const left = stock.free === 1 ? '1 plant is left' : `${stock.free} plants are left`;
  const condition = [
    ...(lot.condition === null ? [] : [lot.condition]),
    ...(lot.hold === null ? [] : [`Held: ${lot.hold.why}`]),
    ...lotFacts(entry)
      .filter(({ label }) => label === 'Height' || label === 'Stem')
      .map(({ label, value }) => `${label}: ${value}.`),
    leafWords(entry),
    rootsSeen(entry),
    ...cutBack(entry),
  ];
  return {
    lot: lot.id,
    title: `${cultivar.name} (${name}, ${species.botanical}), lot ${lot.id}`,
    parts: [
      { heading: 'Condition', lines: condition, optional: false },
      {
        heading: 'Forms',
        lines: [...allForms.flatMap(form => formLine(all, entry, form)), `${left}.`],
        optional: false,
      },
      { heading: 'Sending', lines: howSent(all), optional: false },
      {
        heading: 'Care',
        lines: [
          ...(guide ? [`When it comes: ${address(recordAddress('guide', guide.id))}`] : []),
          `Everything seen of this lot: ${address(recordAddress('lot', lot.id))}`,
        ],
        optional: false,
      },
      {
        heading: 'Beware',
        lines: cautions.map(({ title, text }) => `${title}: ${text.trim()}`),
        optional: false,
      },
      { heading: 'The lot', lines: facts.map(({ label, value }) => `${label}: ${value}`), optional: true },
      { heading: 'Seen', lines: seen.map(({ label, value }) => `${label}: ${value}`), optional: true },
      { heading: 'Note', lines: lot.note === null ? [] : [lot.note], optional: true },
    ].filter(({ lines }) => lines.length > 0),
  };
}

/** Plain text, ending in a line feed. */
export function listingText({ title, parts }: Listing): string {
  const blocks = parts.map(({ heading, lines }) =>
    [...(heading === null ? [] : [`${heading}:`]), ...lines].join('\n'),
  );
  return `${[title, ...blocks].join('\n\n').replaceAll('\u00a0', ' ')}\n`;
}

const entities: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const escaped = (text: string) => text.replace(/[&<>"]/g, sign => entities[sign]!);

/** Addresses become links; everything else is text. */
function line(text: string): string {
  return escaped(text).replace(/https?:\/\/[^\s<]+/g, address => `<a href="${address}">${address}</a>`);
}

/** Simple HTML without styles: h3, h4, p and ul, which editors of shops and mail programs take. */
export function listingHtml({ title, parts }: Listing): string {
  const blocks = parts.map(({ heading, lines }) => {
    const items = lines.map(each => `<li>${line(each)}</li>`).join('\n');
    return `${heading === null ? '' : `<h4>${escaped(heading)}</h4>\n`}<ul>\n${items}\n</ul>`;
  });
  return `<h3>${escaped(title)}</h3>\n${blocks.join('\n')}\n`;
}

const lengthOf = (text: string) => [...text].length;

/**
 * The listing within a limit of characters of its plain text: optional parts are left out, the last first. Where what must stand in it is too long,
 * by how many characters.
 */
export function withinLimit(listing: Listing, limit: number | null): { listing: Listing } | { over: number } {
  let fitted = listing;
  while (limit !== null && lengthOf(listingText(fitted)) > limit) {
    const dropped = fitted.parts.findLastIndex(({ optional }) => optional);
    if (dropped < 0) return { over: lengthOf(listingText(fitted)) - limit };
    fitted = { ...fitted, parts: fitted.parts.filter((_, index) => index !== dropped) };
  }
  return { listing: fitted };
}

/** One line for each lot that is not sold, for a list elsewhere. */
export function wholeList(all: Catalogue, base: string): string {
  const rows = all.lots
    .filter(({ soldOut, lot }) => !soldOut && lot.hold === null)
    .map(entry => {
      const { lot, cultivar, stock } = entry;
      const forms = allForms.flatMap(form => formLine(all, entry, form)).join(' ');
      return `${cultivar.name}, lot ${lot.id}, ${sizeInWords(entry)}, ${stock.free} left. ${forms}\n${wholeAddress(all, recordAddress('lot', lot.id), base)}`;
    });
  const head = `${all.yard.name}, as of ${dayInWords(all.asOf)}. ${howSent(all).join(' ')}`.trim();
  return `${[head, ...rows].join('\n\n').replaceAll('\u00a0', ' ')}\n`;
}
