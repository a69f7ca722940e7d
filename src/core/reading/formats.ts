/** What texts of a set shape look like, in words: one entry per pattern that the records use. */

import { amountPattern, idPattern, linkPattern } from '../records/common.ts';
import { containerClasses, containerPattern } from '../records/container.ts';
import { countryPattern, dailyNamePattern, monthDayPattern, zonePattern } from '../records/place.ts';
import { chapterLinkPattern, chapterTimePattern } from '../records/video.ts';
import { addressPattern, currencyPattern, newFilePattern } from '../records/yard.ts';
import { slug } from './layout.ts';
import { nearest } from './nearest.ts';
import { meant, remedyOf } from './problem.ts';
import type { RuleId } from './rules.ts';

export interface Format {
  rule: RuleId;
  /** Completes "is not ...": `an id`. */
  name: string;
  expected: string;
  remedy: (got: string) => string;
}

/** A format whose remedy is an example, and a guess where one can be made. */
function example(
  rule: RuleId,
  name: string,
  expected: string,
  guess: (got: string) => string | null = () => null,
): Format {
  return { rule, name, expected, remedy: got => remedyOf(meant(guess(got)), `Write ${expected}.`) };
}

const containerNames = containerClasses.map(({ name }) => name);

/** A pot written another way: `1 gal`, `3L`, `#4`. Gallons are asked about, never converted: a trade gallon is no gallon. */
function guessContainer(got: string): string | null {
  const liters = /^(\d+(?:[.,]\d+)?) ?(?:l|lt|ltr|liters?|liters?)$/i.exec(got.trim());
  if (liters) return `${liters[1]!.replace(',', '.')} L`;
  const gallons = /^#? ?(\d+)(?: ?-? ?gal(?:lons?)?)?$/i.exec(got.trim());
  if (gallons && containerNames.includes(`#${gallons[1]}`)) return `#${gallons[1]}`;
  return nearest(got, containerNames);
}

/** One number with a sign or name of a currency beside it, and nothing else. */
const pricedLike = /^(?:[a-z]{3}|\p{Sc})? ?([\d.,]+) ?(?:[a-z]{3}|\p{Sc})?$/iu;

function guessAmount(got: string): string | null {
  const digits = (pricedLike.exec(got.trim())?.[1] ?? '').replace(/,(?=\d{3}\b)/g, '').replace(',', '.');
  return amountPattern.test(digits) ? digits : null;
}

function guessLink(got: string): string | null {
  if (/^[\w.-]+@[\w.-]+$/.test(got)) return `mailto:${got}`;
  const address = `https://${got.trim()}`;
  return /^[\w-]+(?:\.[\w-]+)+(?:\/\S*)?$/.test(got.trim()) ? address : null;
}

function guessMonthDay(got: string): string | null {
  const parts = /^(?:\d{4}[-/.])?(\d{1,2})[-/.](\d{1,2})$/.exec(got.trim());
  const text = parts ? `${parts[1]!.padStart(2, '0')}-${parts[2]!.padStart(2, '0')}` : '';
  return monthDayPattern.test(text) ? text : null;
}

function upperCase(pattern: RegExp) {
  return (got: string) => (pattern.test(got.trim().toUpperCase()) ? got.trim().toUpperCase() : null);
}

const byPattern = new Map<string, Format>(
  (
    [
      [
        idPattern,
        example('bad-id', 'an id', 'lower-case letters, digits and single hyphens', got => slug(got) || null),
      ],
      [
        linkPattern,
        example(
          'bad-link',
          'an address',
          'an address that starts with https://, http:// or mailto:, without spaces',
          guessLink,
        ),
      ],
      [
        amountPattern,
        example('bad-amount', 'an amount', 'digits and a point only, such as "45" or "45.50"', guessAmount),
      ],
      [
        containerPattern,
        example(
          'bad-container',
          'a pot',
          'a class such as "#1" or SP4, or liters such as 3 L',
          guessContainer,
        ),
      ],
      [
        monthDayPattern,
        example('bad-date', 'a day of the year', 'month and day in quotes, such as "04-21"', guessMonthDay),
      ],
      [
        addressPattern,
        example(
          'bad-link',
          'the address of a site',
          'the address without a path and without a user name, such as https://trees.example',
          got =>
            guessLink(
              got
                .replace(/^https?:\/\//, '')
                .replace(/[/?#].*$/, '')
                .replace(/^.*@/, ''),
            ),
        ),
      ],
      [
        newFilePattern,
        example(
          'bad-link',
          'the address of a form for a new file',
          'an address that starts with https:// and has {name} and then {text} in it, where the host takes them',
        ),
      ],
      [
        currencyPattern,
        example(
          'bad-format',
          'a currency',
          'the three letters of ISO 4217, such as USD',
          upperCase(currencyPattern),
        ),
      ],
      [
        countryPattern,
        example(
          'bad-format',
          'a country',
          'the two letters of ISO 3166, such as US',
          upperCase(countryPattern),
        ),
      ],
      [
        zonePattern,
        example('bad-format', 'a winter zone', 'a number from 1 to 13 and a or b, such as 6b', got =>
          zonePattern.test(got.trim().toLowerCase()) ? got.trim().toLowerCase() : null,
        ),
      ],
      [
        dailyNamePattern,
        example('bad-format', 'the name of a CSV file', 'a name in lower-case letters that ends in .csv'),
      ],
      [
        chapterTimePattern,
        example('bad-format', 'a time', 'minutes and seconds in quotes, such as "4:05" or "1:02:30"'),
      ],
      [
        chapterLinkPattern,
        example(
          'bad-format',
          'a link',
          'cultivar:, lot:, guide: or place: and an id, such as guide:first-winter or guide:first-winter#lifting',
        ),
      ],
    ] as const
  ).map(([pattern, format]) => [pattern.toString(), format]),
);

const email = example('bad-format', 'an e-mail address', 'one address, such as trees@yard.example');
const unknown = example('bad-format', 'in the right shape', 'it as the manual of the record shows');

/** The format behind a pattern as zod prints it, or behind a named format of zod's own. */
export function formatOf(name: string, pattern: string | undefined): Format {
  if (name === 'email') return email;
  return byPattern.get(pattern ?? '') ?? unknown;
}
