/** Rules about lots and walks. */

import type { Rule } from './rule.ts';

export const lotRules = {
  'lot-cultivar': {
    level: 'error',
    title: 'A lot is of a cultivar that has a file.',
    help: 'The value is the name of a file in content/cultivars without its ending.',
  },
  'lot-duplicate': {
    level: 'error',
    title: 'A lot id is used once, for ever.',
    help: 'Two lots with one id cannot be told apart in walks, on labels and in web addresses. Give the newer one a new id. Ids of lots that are sold are not used again.',
  },
  'lot-dates': {
    level: 'error',
    title: 'The days of a lot follow one another.',
    help: 'A lot is started, then severed or lifted, then potted, potted up in order of days. A day that comes before an earlier step is a slip, most often in the year.',
  },
  'lot-rootstock': {
    level: 'error',
    title: 'A grafted lot names its rootstock; a layer or cutting has none.',
    help: 'Layers and cuttings stand on their own roots. A grafted tree does not, and a buyer whose tree freezes back wants to know what will come up again.',
  },
  'lot-retired': {
    level: 'error',
    title: 'No lot is started of a cultivar that is retired.',
    help: 'A cultivar with a date under `retired:` is one the yard no longer raises: its page says so and stays, and lists leave it out once the last plant is sold. Take the line out if it is raised again.',
  },
  'division-grafted': {
    level: 'warning',
    title: 'A division is not taken from a grafted tree.',
    help: 'What comes up beside a grafted tree grows from the rootstock, so a division of it is a plant of the rootstock, not of the cultivar. If the mother tree stands on its own roots, take the rootstock out of the lot.',
  },
  'later-than-day': {
    level: 'info',
    title: 'What happens after the day the site is made for is left out.',
    help: 'The site shows the yard as it was known on one day. A lot started later, or a severing, lifting, potting, hold or video dated later, is left out until that day comes. If the day is a slip, mend it.',
  },
  'species-propagation': {
    level: 'warning',
    title: 'A species has propagation figures for the methods its lots use.',
    help: 'Without figures for the way a lot was raised, nobody can say when it will be rooted and weaned; only what is seen on walks counts. Add the method under propagation in the species file.',
  },
  'walk-lot': {
    level: 'error',
    title: 'A walk counts lots that exist.',
    help: 'The value in the column lot is the id of a lot in content/lots.',
  },
  'walk-before-lot': {
    level: 'error',
    title: 'A lot is not seen before it was started.',
    help: 'Either the day of the walk or the day the lot was started is wrong, or the line belongs to another lot.',
  },
  'walk-later': {
    level: 'info',
    title: 'A walk after the day the site is made for is left out.',
    help: 'The site shows the yard as it was known on one day. A walk dated later is left out until that day comes. If the file is named after the wrong day, rename it.',
  },
  'counts-balance': {
    level: 'error',
    title: 'Plants raised and returned are as many as those left, sold and lost.',
    help: 'What is left and what was lost cannot be more than what was raised or came back. One of the counts is wrong: count again, or correct the number raised in the lot.',
  },
  'left-rises': {
    level: 'error',
    title: 'Fewer plants are left over time, unless some come back.',
    help: 'The column left is a count, so it can only fall. When plants came back, write them in the column returned of that walk. When the earlier count was wrong, correct it there.',
  },
  'measure-implausible': {
    level: 'warning',
    title: 'A height and a stem fit the pot, each other, and the walk before.',
    help: 'A number below the wrong unit makes a tree too large or too small, and moves its size and its price. The check compares the newest height and stem of a lot with what a pot of its class usually holds, with each other, and with what was seen before, and names the unit that would fit. If the tree really is so, leave it: the next walk that sees it alike is not asked about.',
  },
  'reserved-left': {
    level: 'warning',
    title: 'No more plants are set aside than are left.',
    help: 'Plants set aside for buyers are not for sale, so the lot shows none. Let reservations go that are over with npm run reserve -- LOT --off, or count the lot again.',
  },
  'reserved-differs': {
    level: 'warning',
    title: 'A lot and the private table agree about plants set aside.',
    help: 'How many plants are set aside stands with the lot, for whom in private/reservations.csv. npm run reserve changes both at once; after a change by hand they may differ.',
  },
  'lot-twice': {
    level: 'error',
    title: 'A walk has one line per lot.',
    help: 'Two lines for one lot on one day contradict each other sooner or later. Put everything seen that day in one line.',
  },
  'unknown-column': {
    level: 'error',
    title: 'Only known columns are used.',
    help: 'A misspelled column would be silently ignored. The message names the nearest known column, or all of them.',
  },
  'missing-column': {
    level: 'error',
    title: 'The columns a table cannot do without are there.',
    help: 'A walk needs the column lot and at least one more; a temperature log needs date, a minimum and a maximum.',
  },
  'duplicate-column': {
    level: 'error',
    title: 'A column is there once.',
    help: 'With two columns of one name, nobody can say which one counts. Take one out.',
  },
  'ragged-row': {
    level: 'error',
    title: 'Every row has as many cells as the header.',
    help: 'A cell too many or too few shifts everything behind it into the wrong column. Most often a note has a comma in it: put the note in double quotes.',
  },
} as const satisfies Record<string, Rule>;
