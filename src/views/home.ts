/** The first page: what is ready today, what comes next, and where the season stands. */

import type { Catalogue } from '../core/catalogue.ts';
import { day, dayInWords } from '../core/days.ts';
import { type Form, forms } from '../core/records/common.ts';
import type { Place } from '../core/records/place.ts';
import { oncePer } from './memo.ts';
import { openingInWords } from './state.ts';
import { formLists, offered, type StockRow, speciesName } from './stock.ts';
import { countInWords, listInWords, sentence } from './words.ts';

/** How many ready lots of each form the first page names. */
const namedPerForm = 5;
/** How many openings to come it names. */
const namedComing = 6;

export interface FormSummary {
  form: Form;
  /** Lots ready today. */
  ready: number;
  /** The first of them. */
  rows: StockRow[];
  /** When nothing is ready: when the next is likely to be. */
  next: string | null;
}

/** Per form of sale: how many lots are ready, the first few, or when the next opens. */
export const readyByForm = oncePer((catalogue: Catalogue): FormSummary[] =>
  forms.map(form => {
    const { contents, pages } = formLists(catalogue)[form];
    const ready = contents.find(({ id }) => id === 'ready')?.count ?? 0;
    const rows = ready === 0 ? [] : (pages[0]?.groups[0]?.rows.slice(0, namedPerForm) ?? []);
    return { form, ready, rows, next: ready === 0 ? nextOpening(catalogue, form) : null };
  }),
);

function openings(catalogue: Catalogue, form: Form) {
  return offered(catalogue).flatMap(entry => {
    const answer = entry.forms.find(candidate => candidate.form === form && candidate.state === 'opens');
    return answer?.range ? [{ entry, range: answer.range, form }] : [];
  });
}

function nextOpening(catalogue: Catalogue, form: Form): string | null {
  const [first] = openings(catalogue, form).sort((a, b) => a.range.from.localeCompare(b.range.from));
  return first ? openingInWords(first.range, catalogue.asOf) : null;
}

export interface ComingRow {
  lot: string;
  name: string;
  form: Form;
  words: string;
}

/** The next lots to open, whatever their form, soonest first. */
export const comingNext = oncePer((catalogue: Catalogue): ComingRow[] =>
  forms
    .flatMap(form => openings(catalogue, form))
    .sort(
      (a, b) =>
        a.range.from.localeCompare(b.range.from) ||
        a.range.to.localeCompare(b.range.to) ||
        a.entry.lot.id.localeCompare(b.entry.lot.id),
    )
    .slice(0, namedComing)
    .map(({ entry, range, form }) => ({
      lot: entry.lot.id,
      name: entry.cultivar.name,
      form,
      words: openingInWords(range, catalogue.asOf),
    })),
);

/** The stock in one sentence. */
export function stockSentence(catalogue: Catalogue): string {
  const entries = offered(catalogue);
  const ready = entries.filter(({ forms: answers }) => answers.some(({ state }) => state === 'ready'));
  const cultivars = new Set(ready.map(({ cultivar }) => cultivar.id)).size;
  const bySpecies = [...new Set(entries.map(({ species }) => speciesName(species)))];
  if (entries.length === 0) return 'Nothing is on the list today.';
  const all = `${countInWords(entries.length, 'lot')} on the list: ${listInWords(bySpecies)}.`;
  if (ready.length === 0) return `${sentence(all)} None is ready today.`;
  return `${sentence(all)} ${sentence(countInWords(ready.length, 'lot'))} of ${countInWords(cultivars, 'cultivar')} ${ready.length === 1 ? 'is' : 'are'} ready today.`;
}

/** `MM-DD` in words. The year is only there to make a day of it; a leap year has them all. */
function monthDayInWords(monthDay: string): string {
  return dayInWords(day(`2024-${monthDay}`)).replace(' 2024', '');
}

/** When freezes come and go where the yard stands, as published; null when nothing is published. */
export function freezeSentence({ name, freeze }: Place): string | null {
  const at = freeze?.at['32F'];
  if (!at?.first?.p10 || !at.first.p90) return null;
  const first = `At ${name} the first freeze of fall comes between ${monthDayInWords(at.first.p10)} and ${monthDayInWords(at.first.p90)} in eight years of ten`;
  if (!at.last?.p10 || !at.last.p90) return `${first}.`;
  return `${first}, and the last of spring between ${monthDayInWords(at.last.p10)} and ${monthDayInWords(at.last.p90)}.`;
}
