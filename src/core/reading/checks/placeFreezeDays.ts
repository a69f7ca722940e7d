import { doyFromMonthDay, monthInWords } from '../../days.ts';
import { freezeThresholds } from '../../records/place.ts';
import { atValue, type Problem, quote } from '../problem.ts';
import type { Check } from './check.ts';

const chances = ['p10', 'p50', 'p90'] as const;

/** A day of the year exists: 02-30 does not. */
export const placeFreezeDays: Check = ({ places }) =>
  places.flatMap(({ file, written }) =>
    freezeThresholds.flatMap(threshold =>
      (['first', 'last'] as const).flatMap(which =>
        chances.flatMap((chance): Problem[] => {
          const day = written.freeze?.[threshold]?.[which]?.[chance];
          if (!day || doyFromMonthDay(day) !== null) return [];
          return [
            {
              rule: 'bad-date',
              file,
              spot: atValue('freeze', threshold, which, chance),
              got: quote(day),
              expected: 'a day of the year, MM-DD',
              message: `${quote(day)} is a day that does not exist`,
              remedy: `${monthInWords(Number(day.slice(0, 2)))} has fewer days.`,
            },
          ];
        }),
      ),
    ),
  );
