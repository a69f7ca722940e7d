/** The yard's rules of sending, in the words of the page on ordering. */

import { type Day, rangeInWords } from '../../../core/days.ts';
import { forms } from '../../../core/records/common.ts';
import { longestWay } from '../../../core/records/longestWay.ts';
import { type Lining, linings, type SendingRules } from '../../../core/records/sending.ts';
import { temperatureInWords } from '../../../core/units.ts';
import { countInWords, formWords, listInWords, lowerFirst } from '../../words/words.ts';

const cartonNames: Readonly<Record<Lining, string>> = { plain: 'plain', lined: 'lined' };

export interface LimitRow {
  carton: string;
  coldest: string;
  hottest: string;
  longest: string;
}

/** The limits of each form in each carton the yard has. */
export function limitRows({ limits }: SendingRules): { formName: string; cartons: LimitRow[] }[] {
  return forms.map(form => ({
    formName: formWords[form],
    cartons: linings.flatMap(lining => {
      const limit = limits[form][lining];
      if (limit === null) return [];
      return [
        {
          carton: cartonNames[lining],
          coldest: temperatureInWords(limit.coldestC),
          hottest: temperatureInWords(limit.hottestC),
          longest: countInWords(longestWay[form][lining], 'day'),
        },
      ];
    }),
  }));
}

/** Spans the grower has opened or closed and that are not over, one line each. */
export function handRows({ byHand }: SendingRules, asOf: Day): string[] {
  return byHand
    .filter(({ to }) => to >= asOf)
    .map(({ from, to, state, forms: shut, why }) => {
      const which =
        shut.length === forms.length
          ? ''
          : ` for ${listInWords(shut.map(form => lowerFirst(formWords[form])))}`;
      return `${rangeInWords({ from, to })}: ${state}${which}. ${why}`;
    });
}
