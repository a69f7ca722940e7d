/** The questions about a lot. */

import { type Day, day, parseDay } from '../src/core/days.ts';
import { type LotRequest, usualForms } from '../src/core/recording/newLot.ts';
import type { YardToAddTo } from '../src/core/recording/openYard.ts';
import { type Form, forms, methods } from '../src/core/records/common.ts';
import { containerPattern } from '../src/core/records/container.ts';
import type { Ask } from './ask.ts';
import { wordGiven } from './given.ts';

/** Asks which of the cultivars that are still raised. */
export function askWhichCultivar({ records: { cultivars } }: YardToAddTo, ask: Ask): Promise<string> {
  return ask.choice(
    'Which cultivar?',
    [...cultivars.values()]
      .filter(({ retired }) => retired === null)
      .map(({ id, name }) => ({ value: id, label: name })),
  );
}

type Problem = (typed: string) => string | undefined;
const orBlank =
  (problem: Problem): Problem =>
  typed =>
    typed.trim() === '' ? undefined : problem(typed);

/** Asks for everything a lot needs besides its cultivar. */
export async function askLot(
  yard: YardToAddTo,
  ask: Ask,
  { today, usual }: { today: Day; usual?: readonly Form[] },
): Promise<Omit<LotRequest, 'cultivar'>> {
  const isDay = (typed: string) => (parseDay(typed) === null ? 'A day such as 2026-03-02.' : undefined);
  const method = await ask.choice(
    'How were they raised?',
    methods.map(each => ({ value: each, label: each })),
  );
  const chosen = wordGiven(method, methods, 'method');
  const started = day((await ask.line('Started on which day?', { initial: today, problem: isDay })) ?? today);
  const rootstock = chosen === 'graft' ? await ask.line('On which rootstock?') : undefined;
  const raised = await ask.wholeNumber('How many plants?', 1);
  const severed =
    chosen === 'air-layer'
      ? await ask.line('Cut from the mother plant on which day? (Enter for not yet)', {
          problem: orBlank(isDay),
        })
      : undefined;
  const isPot = (typed: string) =>
    containerPattern.test(typed.trim()) ? undefined : 'A pot such as #1, SP4 or 3 L.';
  const container = await ask.line('In which pot? (#1, SP4, 3 L; Enter for none yet)', {
    problem: orBlank(isPot),
  });
  const sold = await ask.choices(
    'Sold in which forms?',
    forms.map(each => ({ value: each, label: each })),
    usual ?? usualForms(yard, chosen),
  );
  return {
    method: chosen,
    started,
    rootstock,
    severed: severed === undefined ? undefined : day(severed),
    raised,
    container,
    forms: sold.map(each => wordGiven(each, forms, 'form')),
  };
}
