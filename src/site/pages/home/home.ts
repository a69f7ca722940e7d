/** The first page: what is ready today, what comes next, and where the season stands. */

import type { Catalogue, LotEntry } from '../../../core/catalogue.ts';
import type { DateQuantiles } from '../../../core/climate/figures.ts';
import { byDay, type Day } from '../../../core/days.ts';
import { priceInWords } from '../../../core/money.ts';
import { byText } from '../../../core/reading/locate.ts';
import { type Form, forms } from '../../../core/records/common.ts';
import { cultivarPath, lotPath } from '../../addresses/paths.ts';
import { memoize } from '../../memo.ts';
import { groupBy } from '../../parts/paging.ts';
import { type SentNow, sentNow } from '../../parts/sentNow.ts';
import { comingDay, openingInWords } from '../../words/state.ts';
import { countInWords, formWords, listInWords, lowerFirst, sentence } from '../../words/words.ts';
import { monthDayInWords } from '../../words/yearDays.ts';
import { weeksInWords } from '../places/sending.ts';
import { offered, speciesName } from '../stock/stock.ts';

/** How many ready cultivars of each form the first page names. */
const namedPerForm = 6;
/** How many openings to come it names. */
const namedComing = 5;

/** A cultivar that is ready in some form today. */
export interface ReadyRow {
  name: string;
  /** The lot when there is one, else the cultivar. */
  path: string;
  species: string;
  /** `$45`, or `from $45` when its lots differ; null when nothing is priced. */
  price: string | null;
}

export interface FormSummary {
  form: Form;
  /** Lots ready today. */
  ready: number;
  /** The first cultivars among them. */
  rows: ReadyRow[];
  /** How trees of this form leave this week. */
  sent: string;
  /** When nothing is ready: when the next is likely to be. */
  next: string | null;
}

function readyRow(lots: readonly LotEntry[], form: Form): ReadyRow {
  const { cultivar, species, lot } = lots[0]!;
  const prices = lots.flatMap(({ tiers }) => tiers[form]?.answer.price ?? []);
  const lowest = [...prices].sort((a, b) => a.minor - b.minor)[0];
  const differ = prices.some(({ minor }) => minor !== lowest?.minor);
  return {
    name: cultivar.name,
    path: lots.length === 1 ? lotPath(lot.id) : cultivarPath(cultivar.id),
    species: speciesName(species),
    price: lowest ? `${differ ? 'from ' : ''}${priceInWords(lowest)}` : null,
  };
}

/** How trees of a form leave this week, by the weather at the yard: `Sent by forecast: about every second week passes here.` */
function sentInWords({ state, share, from }: SentNow, asOf: Day): string {
  if (state === 'open') return 'Sent this week; your end decides.';
  if (state === 'by-forecast')
    return `Sent by forecast: here ${weeksInWords(share)} passes; your end counts too.`;
  if (from === null) return 'Not sent in the coming year.';
  const how = from.state === 'by-forecast' ? 'by forecast from' : 'from';
  return `Not sent now; ${how} ${comingDay(from.monday, asOf)}.`;
}

/** Per form of sale: how many lots are ready, the first few cultivars, or when the next opens. */
export const readyByForm = memoize((catalogue: Catalogue): FormSummary[] =>
  forms.map(form => {
    const ready = offered(catalogue).filter(entry =>
      entry.forms.some(answer => answer.form === form && answer.state === 'ready'),
    );
    const byCultivar = groupBy(ready, ({ cultivar }) => cultivar.id);
    const rows = [...byCultivar.values()].slice(0, namedPerForm).map(lots => readyRow(lots, form));
    return {
      form,
      ready: ready.length,
      rows,
      sent: sentInWords(sentNow(catalogue)[form], catalogue.asOf),
      next: ready.length === 0 ? nextOpening(catalogue, form) : null,
    };
  }),
);

function openings(catalogue: Catalogue, form: Form) {
  return offered(catalogue).flatMap(entry => {
    const answer = entry.forms.find(candidate => candidate.form === form && candidate.state === 'opens');
    return answer?.range ? [{ entry, range: answer.range, form }] : [];
  });
}

function nextOpening(catalogue: Catalogue, form: Form): string | null {
  const [first] = openings(catalogue, form).sort((a, b) => byDay(a.range.from, b.range.from));
  return first ? openingInWords(first.range, catalogue.asOf) : null;
}

export interface ComingRow {
  lot: string;
  name: string;
  species: string;
  /** The forms that open then. */
  forms: string;
  words: string;
}

/** The next lots to open, soonest first; forms of a lot that open together are one row. */
export const comingNext = memoize((catalogue: Catalogue): ComingRow[] => {
  const soonest = forms
    .flatMap(form => openings(catalogue, form))
    .sort(
      (a, b) =>
        byDay(a.range.from, b.range.from) ||
        byDay(a.range.to, b.range.to) ||
        byText(a.entry.lot.id, b.entry.lot.id),
    );
  const together = groupBy(soonest, ({ entry, range }) => `${entry.lot.id} ${range.from} ${range.to}`);
  return [...together.values()].slice(0, namedComing).map(opened => {
    const { entry, range } = opened[0]!;
    return {
      lot: entry.lot.id,
      name: entry.cultivar.name,
      species: speciesName(entry.species),
      forms: sentence(
        listInWords(
          opened.map(({ form }) => lowerFirst(formWords[form])),
          'or',
        ),
      ),
      words: openingInWords(range, catalogue.asOf),
    };
  });
});

/** The stock in one sentence: how many lots there are and how many are ready. */
export function stockSentence(catalogue: Catalogue): string {
  const entries = offered(catalogue);
  if (entries.length === 0) return 'Nothing is on the list today.';
  const ready = entries.filter(({ forms: answers }) => answers.some(({ state }) => state === 'ready'));
  const cultivars = new Set(ready.map(({ cultivar }) => cultivar.id)).size;
  const all = `${countInWords(entries.length, 'lot')} on the list`;
  if (ready.length === 0) return `${all}, none of them ready today.`;
  return `${all}; ${ready.length.toLocaleString('en-US')} of them, in ${countInWords(cultivars, 'cultivar')}, ready today.`;
}

function spanInWords({ p10, p90 }: DateQuantiles): string | null {
  return p10 === null || p90 === null ? null : `between ${monthDayInWords(p10)} and ${monthDayInWords(p90)}`;
}

/** When freezes come and go where the yard stands, and how that is known; null when most winters have none. */
export function freezeSentence({ home, climates }: Pick<Catalogue, 'home' | 'climates'>): string | null {
  const freeze = climates.get(home.id)?.freeze['32F'];
  if (!freeze) return null;
  const [first, last] = [spanInWords(freeze.answer.first), spanInWords(freeze.answer.last)];
  if (first === null || last === null) return null;
  const known = freeze.standing === 'published' ? 'published' : 'computed';
  return `At ${home.name} the first freeze of fall comes ${first} in eight years in ten, and the last of spring ${last} (${known}).`;
}
