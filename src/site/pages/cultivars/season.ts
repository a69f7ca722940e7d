/** Which sizes and forms of a cultivar this season brings, when the next lots are listed, and what will not come: from its lots under way. */

import type { Catalogue, CultivarEntry, LotEntry } from '../../../core/catalogue.ts';
import { byDay, type DayRange } from '../../../core/days.ts';
import type { FormAnswer } from '../../../core/lots/answers.ts';
import { readyForms } from '../../../core/lots/readyOffers.ts';
import { type Form, forms, type Reason } from '../../../core/records/common.ts';
import { sentNow } from '../../parts/sentNow.ts';
import { sizeInWords, standInWords } from '../../words/measures.ts';
import { openingInWords, stateView } from '../../words/state.ts';
import { countInWords, formWords, listInWords, lowerFirst, sentence } from '../../words/words.ts';
import type { Why } from '../lots/lot.ts';

const named = (which: readonly Form[], last: 'and' | 'or') =>
  listInWords(
    which.map(form => lowerFirst(formWords[form])),
    last,
  );

/** Whether a form of a lot is there or in sight; one that waits for a look is. */
const comes = ({ state }: FormAnswer) => state !== 'blocked';

/** The forms that come from some lots, in the order of `forms`. */
function comingForms(lots: readonly LotEntry[]): Form[] {
  return forms.filter(form =>
    lots.some(lot => lot.forms.some(answer => answer.form === form && comes(answer))),
  );
}

/** The size of a lot with how each of its forms stands: `Lot 26-layer-01, #1 pot, 34 in: leafed ready; dormant about March 3`. */
function lotReason(all: Catalogue, entry: LotEntry): Reason {
  const sent = sentNow(all);
  const told = entry.forms
    .filter(comes)
    .map(
      answer =>
        `${lowerFirst(formWords[answer.form])} ${lowerFirst(stateView(answer, all.asOf, sent[answer.form]).words)}`,
    );
  const stands = told.length === 0 ? 'not for sale yet' : told.join('; ');
  return { text: `Lot ${entry.lot.id}, ${sizeInWords(entry)}: ${stands}.`, standing: 'modeled' };
}

/** The first day on which a lot that is not ready may open in any form; null where no day is in sight. */
function opening({ forms: answers }: LotEntry): DayRange | null {
  const ranges = answers.flatMap(({ state, range }) => (state === 'opens' && range ? [range] : []));
  return ranges.sort((a, b) => byDay(a.from, b.from))[0] ?? null;
}

function nextLots(all: Catalogue, waiting: readonly LotEntry[]): Why {
  const question = 'When are the next lots listed?';
  if (waiting.length === 0) {
    const text = 'Every lot of it that is under way is ready already.';
    return { question, answer: 'None is under way', because: [{ text, standing: 'seen' }] };
  }
  const first = waiting
    .map(opening)
    .filter(range => range !== null)
    .sort((a, b) => byDay(a.from, b.from))[0];
  const when = first ? `the first ${lowerFirst(openingInWords(first, all.asOf))}` : 'no day yet';
  return {
    question,
    answer: `${countInWords(waiting.length, 'lot')} to come, ${when}`,
    because: waiting.map(lot => lotReason(all, lot)),
  };
}

function willNotCome(lots: readonly LotEntry[], coming: readonly Form[]): Why {
  const largest = lots.toSorted((a, b) => b.size.answer.classIndex - a.size.answer.classIndex)[0]!;
  const missing = forms.filter(form => !coming.includes(form));
  const size = `No tree graded above ${largest.size.answer.name}`;
  const never = missing.length === 0 ? '' : `; none ${named(missing, 'or')}`;
  return {
    question: 'What will not come this season?',
    answer: `${size}${never}`,
    because: [
      {
        text: `The largest lot under way is ${largest.lot.id} (${standInWords(largest)}, graded as ${largest.size.answer.name}).`,
        standing: 'seen',
      },
      ...missing.map((form): Reason => {
        const text = `No lot that is under way can be sold ${lowerFirst(formWords[form])} as it stands.`;
        return { text, standing: 'modeled' };
      }),
    ],
  };
}

/** Questions about what the season brings; none for a cultivar without a lot that is for sale or under way. */
export function seasonWhy(all: Catalogue, { lots }: Pick<CultivarEntry, 'lots'>): Why[] {
  const open = lots.filter(({ soldOut }) => !soldOut);
  if (open.length === 0) return [];
  const bySize = open.toSorted((a, b) => a.size.answer.classIndex - b.size.answer.classIndex);
  const sizes = [...new Set(bySize.map(({ size }) => size.answer.name))];
  const coming = comingForms(open);
  return [
    {
      question: 'What does this season bring?',
      answer: sentence(
        `graded ${listInWords(sizes)}${coming.length === 0 ? '' : `; ${named(coming, 'and')}`}`,
      ),
      because: bySize.map(lot => lotReason(all, lot)),
    },
    nextLots(
      all,
      open.filter(lot => readyForms(lot).length === 0),
    ),
    willNotCome(open, coming),
  ];
}
