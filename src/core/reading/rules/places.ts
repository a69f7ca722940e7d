/** Rules about places, daily records and the temperature log. */

import type { Rule } from './rule.ts';

export const placeRules = {
  'place-months': {
    level: 'error',
    title: 'A place has twelve monthly figures of both minimum and maximum, or a daily record.',
    help: 'Give tmax and tmin (in C or F), or name a daily record under daily, but not both.',
  },
  'place-unit': {
    level: 'error',
    title: 'Monthly temperatures are in the unit their key names.',
    help: 'The figures would make a place hotter or colder than any known one, but are plausible in the other unit. Rename the keys, or look the figures up again.',
  },
  'place-crossed': {
    level: 'error',
    title: 'A mean minimum is not above the mean maximum of the same month.',
    help: 'The two lists may be swapped or shifted, or a number slipped.',
  },
  'place-position': {
    level: 'error',
    title: 'A place lies in its country and has its summer in the right half of the year.',
    help: 'South and west are negative, and latitude is never more than 90. The position is compared with rough boxes around the country, and the warm months with the latitude.',
  },
  'place-freeze-order': {
    level: 'error',
    title: 'Freeze dates run from early to late.',
    help: 'p10 is the early date, p90 the late one, whether first or last freeze. Agencies that count the last freeze by the chance of a later one print them the other way round.',
  },
  'place-daily': {
    level: 'error',
    title: 'The daily record a place names is there.',
    help: 'The value of daily is the name of a CSV file in content/places.',
  },
  'daily-record': {
    level: 'error',
    title: 'A daily record can be read and covers the year.',
    help: "It needs a date and the minimum and maximum of each day, with the unit in the column's name, such as tmin_c. Every month of the year must have enough days.",
  },
  'daily-gaps': {
    level: 'warning',
    title: 'Days of a daily record that cannot be right are left out.',
    help: 'The rest of the record is used. If many days are named, look at the file. Months with under 20 days and seasons with more than 10 days missing are left out as well.',
  },
  'daily-short': {
    level: 'warning',
    title: 'A daily record has at least ten whole years.',
    help: 'The means of fewer years may lie far from the climate, so no freeze dates or winter zone are taken from them; they are modeled.',
  },
  'place-zone': {
    level: 'warning',
    title: 'The winter zone agrees with the other figures.',
    help: 'A zone spans five degrees F of the mean coldest night of the year (1a from -60 F). It is compared with that mean where it is given, else with the coldest month.',
  },
  'log-crossed': {
    level: 'error',
    title: 'A minimum of the temperature log is not above the maximum of the same day.',
    help: 'The two columns may be swapped, or a number slipped.',
  },
  'day-twice': {
    level: 'error',
    title: 'A temperature log has one line per day.',
    help: 'Keep one of the lines.',
  },
} as const satisfies Record<string, Rule>;
