/** Rules about single keys and values. */

import type { Rule } from './rule.ts';

export const valueRules = {
  'unknown-key': {
    level: 'error',
    title: 'Only known keys are used.',
    help: 'A misspelled key would be silently ignored, and what you meant to say with it lost. The message names the nearest known key, or all keys that may stand there.',
  },
  'missing-key': {
    level: 'error',
    title: 'Keys a record cannot do without are there.',
    help: 'The place shown is the group in which the key is missing. Add a line with it.',
  },
  'empty-value': {
    level: 'error',
    title: 'A key that is written has a value.',
    help: 'Write a value, or take the whole line out. A # after a space starts a comment, so a value such as #1 must be put in quotes: "#1".',
  },
  'wrong-type': {
    level: 'error',
    title: 'A value is of the kind its key asks for: text, number, list or group.',
    help: 'Ids, prices and other text that looks like a number go in double quotes; numbers go without quotes and without a unit, with a point for decimals. A list is written [a, b] or as lines that start with a hyphen.',
  },
  'not-whole': {
    level: 'error',
    title: 'Counts are whole numbers.',
    help: 'Plants, days and steps come in whole numbers.',
  },
  'not-in-list': {
    level: 'error',
    title: 'A value that comes from a list is one of that list.',
    help: 'Some keys take one of a few words. The message names the nearest one, or all of them.',
  },
  'out-of-range': {
    level: 'error',
    title: 'Numbers are within what can be.',
    help: 'The bounds are wide: a number beyond them is a slip of the keyboard, or was measured in another unit than the key says. The message asks about the unit where another one would fit.',
  },
  'text-empty': {
    level: 'error',
    title: 'A text that is written is not blank.',
    help: 'Write the text, or take the line out when the key may be left out.',
  },
  'text-too-long': {
    level: 'error',
    title: 'A text fits where it is shown.',
    help: 'Names, titles and cautions stand in lists, labels and cards with limited room. Shorten the text; long prose belongs in the body of a cultivar or guide.',
  },
  'list-length': {
    level: 'error',
    title: 'A list has as many entries as it must have.',
    help: 'Monthly figures are twelve numbers, January to December. Lists that must not be empty need at least one entry.',
  },
  'bad-id': {
    level: 'error',
    title: 'Ids are lower-case letters, digits and single hyphens.',
    help: 'An id is part of web addresses and labels and never changes. Use lower-case letters, digits and single hyphens, at most 64 in all, such as bellwether-2601.',
  },
  'bad-date': {
    level: 'error',
    title: 'A day is written YYYY-MM-DD and exists.',
    help: 'Year, month and day with hyphens and leading zeros, such as 2026-03-01. Days without a year are written MM-DD, in quotes.',
  },
  'bad-link': {
    level: 'error',
    title: 'A web address starts with https:// (or http://, or mailto:).',
    help: "Only these kinds of address are published; others could run a script in the reader's browser or lead nowhere. There are no spaces in an address.",
  },
  'bad-amount': {
    level: 'error',
    title: 'An amount of money is digits in quotes, such as "45" or "45.50".',
    help: 'No currency sign, no thousands separator, a point for decimals, and no more decimals than the currency has. In quotes, so that 45.50 stays what you wrote.',
  },
  'bad-container': {
    level: 'error',
    title: 'A pot is a known class or a volume in liters.',
    help: 'Write "#1" to "#25" in quotes, SP1 to SP5, or liters such as 3 L. A trade gallon is not a gallon of liquid: write the class or measure the liters.',
  },
  'bad-format': {
    level: 'error',
    title: 'Codes, times and addresses have their usual shape.',
    help: 'Country codes, currency codes, e-mail addresses, times of video chapters, winter zones and the like are written in one shape only; the message shows an example.',
  },
  'two-units': {
    level: 'error',
    title: 'A value is given in one unit.',
    help: 'When height_in and height_cm are both there and do not agree, nobody can say which is right. Keep the one you measured.',
  },
  'listed-twice': {
    level: 'error',
    title: 'Nothing stands twice in a list of different things.',
    help: 'Flavor classes, smallest sizes, forms, crops and species in a list are each named once.',
  },
} as const satisfies Record<string, Rule>;
