/** Rules about the yard: its settings, prices, costs and private files. */

import type { Rule } from './rule.ts';

export const yardRules = {
  'yard-home': {
    level: 'error',
    title: 'The home of the yard is a place that has a file.',
    help: 'The value is the name of a file in content/places without its ending. Its climate decides when lots get ready.',
  },
  'yard-time-zone': {
    level: 'error',
    title: 'The time zone is an IANA name.',
    help: 'The zone decides which day it is in the yard when the site is built. It is written as region and city, such as America/Chicago.',
  },
  'yard-currency': {
    level: 'error',
    title: 'The currency is in use.',
    help: 'Currencies are written as the three letters of ISO 4217, such as USD, CAD, EUR or GBP.',
  },
  'yard-rounding': {
    level: 'error',
    title: 'Lines of the rounding rise, and the last one has no upper end.',
    help: 'Prices are rounded by the first line whose "below" is greater than the price; the last line leaves "below" out and takes the rest.',
  },
  'delivery-rule': {
    level: 'error',
    title: 'Delivery prices go by a parcel rule that exists.',
    help: 'billed_by: under delivery: names a row of parcel_rules. By that row a parcel is weighed, and by that weight its price is found.',
  },
  'delivery-areas': {
    level: 'error',
    title: 'Areas of delivery do not meet, and their weights rise.',
    help: 'Each region stands in one area. An area without regions is for everywhere else you send to, and stands last. Within an area prices go from light parcels to heavy ones; heavier parcels than the last line are asked for.',
  },
  'delivery-region': {
    level: 'warning',
    title: 'Regions of delivery are spelled as they are known.',
    help: 'A region is a state or province by its full name, as places name it, or the two letters of a country. One that is spelled another way is found by nobody, and its customers are asked the price of everywhere else.',
  },
  'sending-limits': {
    level: 'error',
    title: 'Limits of sending run from cold to hot and agree with one another.',
    help: 'The cold limit of a form is below its heat limit. A lined carton stands as much cold as a plain one or more. Leaves and bare roots stand no more cold than a dormant tree in its pot. What is left out under sending: limits: is filled with careful figures of ours.',
  },
  'sending-by-hand': {
    level: 'error',
    title: 'Weeks opened or closed by hand run forward, and none is both.',
    help: 'Each span under sending: by_hand: has a first and a last day, open or closed, and a reason customers read. Spans of the same form that say different things do not share a day.',
  },
  'sending-way': {
    level: 'warning',
    title: 'Parcels are not longer on their way than the forms on sale may be.',
    help: 'A tree in leaf travels three days at most, bare roots five (seven in a lined carton), a dormant pot seven: our working figures. A form that would be longer on its way is shown as not sent.',
  },
  'price-base': {
    level: 'error',
    title: 'Every species that has lots has a base price.',
    help: 'Prices climb the ladder from the base price of the species. Add a line under prices: base: in yard.yaml.',
  },
  'price-species': {
    level: 'error',
    title: 'Base prices are for species that have a file.',
    help: 'The keys under prices: base: are names of files in content/species without their ending.',
  },
  'price-rung': {
    level: 'warning',
    title: 'A base price stands on a rung of the price ladder.',
    help: 'Prices climb a ladder of preferred numbers (ISO 3), so a base price between two rungs counts as the nearer one: 28 is sold as 25 or 31.5. Write the rung you mean. A single lot may have any price of its own.',
  },
  'smallest-missing': {
    level: 'warning',
    title: 'Every pot size in use has a smallest plant that is sold in it.',
    help: 'Without it, trees of any size in that pot pass as large enough. Add the container class to smallest in yard.yaml, with a least height or stem thickness.',
  },
  'costs-container': {
    level: 'warning',
    title: 'Every pot size in use has its costs.',
    help: 'Without them no cost floor can be kept for lots in that pot. Add the container class to area_sqft and pot under costs in yard.yaml.',
  },
  'costs-missing': {
    level: 'info',
    title: 'Costs are known, so that no tree is sold below them.',
    help: 'Prices climb the ladder from the base price; with costs they are also held above what a tree costs you. Where the private folder is not at hand, as on the host that publishes, there are none. A lot whose price rests on them is told by npm run check on your own machine: give it a price of its own, and it is the same everywhere.',
  },
  'private-in-public': {
    level: 'info',
    title: 'A public repository shows what is private in its files.',
    help: 'The site never shows costs, requests and private notes. The repository does, to everyone who can see it, and so does every version it keeps. Keep it private, or move these keys to the private folder: content/private/yard.yaml for costs, content/private/cultivars/ID.yaml for requests, content/private/lots/NAME.yaml for notes about lots, content/private/walks/DAY.csv for those of a walk. What was once committed stays in the history.',
  },
  'private-twice': {
    level: 'error',
    title: 'A private key stands in the public files or in the private folder, not in both.',
    help: 'When it is in both places nobody can say which is meant, and the one in the public file is still there to be read. Take one out.',
  },
  'private-unknown': {
    level: 'error',
    title: 'What the private folder speaks of is there.',
    help: 'A file in private/cultivars is named after a file in content/cultivars, and every lot in private/lots, sales.csv and reservations.csv is one of content/lots.',
  },
  'private-price': {
    level: 'warning',
    title: 'A price does not hang on the private folder.',
    help: 'Costs and requests that stand in the private folder are not there on a host that builds the site from the repository, so the lot would have another price there. Give it a price of its own in its list of lots, and it is the same everywhere.',
  },
  'carton-size': {
    level: 'error',
    title: 'A carton is larger outside than inside.',
    help: 'One of the measures is wrong, or the two lines are swapped.',
  },
} as const satisfies Record<string, Rule>;
