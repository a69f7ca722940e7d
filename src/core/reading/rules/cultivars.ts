/** Rules about cultivars and species. */

import type { Rule } from './rule.ts';

export const cultivarRules = {
  'cultivar-species': {
    level: 'error',
    title: 'A cultivar is of a species that has a file.',
    help: 'The value is the name of a file in content/species without its ending.',
  },
  'cultivar-flavor': {
    level: 'error',
    title: 'A flavor class is one that yard.yaml defines.',
    help: "Flavor classes are the yard's own: they are listed under flavor_classes in content/yard.yaml, and cultivars use their ids.",
  },
  'cultivar-trial': {
    level: 'error',
    title: 'A trial ends in the year it begins or later.',
    help: 'The first year of a trial is written as from, the last as to.',
  },
  'cultivar-trial-place': {
    level: 'error',
    title: 'A trial names a place that has a file.',
    help: 'place: in a trial is the reference place whose climate is most like that of the trial. By it the trial counts in other places as far as their climates are alike. Leave it out where no place is like it.',
  },
  'cultivar-trial-crop': {
    level: 'error',
    title: 'A trial speaks of a crop the cultivar bears.',
    help: 'crop: in a trial is breba or main, and main where it is left out. A cultivar that bears only brebas needs crop: breba in its trials.',
  },
  'name-twice': {
    level: 'warning',
    title: 'Two cultivars of a species do not share a name.',
    help: 'Buyers could not tell them apart in lists. If they are one and the same, keep one file; if not, add what sets them apart to the name.',
  },
  'species-heat-need': {
    level: 'error',
    title: 'A species says when the fruit of every ripening class its cultivars use is ripe.',
    help: 'Without a figure for the class nobody can say whether and when the fruit ripens in a place. Add the class in the species file: under heat: need: main for fruit timed by heat, under bloom: to_ripe for fruit timed by its bloom.',
  },
  'species-breba-need': {
    level: 'warning',
    title: 'A species has the heat need of the breba crop its cultivars bear.',
    help: 'Without it the ripening of the breba crop is left open on every page. Add the class under heat: need: breba in the species file.',
  },
  'cultivar-ripe-seen-place': {
    level: 'error',
    title: 'Dates of ripe fruit name a place that there is.',
    help: 'The dates say something about other places only through the climate of the place they were seen at. Name a file in content/places.',
  },
  'cultivar-ripe-seen-class': {
    level: 'warning',
    title: 'Dates of ripe fruit lie within two months of what the ripening class gives at that place.',
    help: 'The dates take the place of the figure of the class, so a slip in them moves every date of the cultivar. Look the dates, the place and the class up again.',
  },
  'species-bloom': {
    level: 'warning',
    title: 'A species whose fruit is timed by its bloom says when it blooms and how long its fruit takes.',
    help: 'A species file gives either heat: need (figs, mulberries) or bloom, with the heat to full bloom, the days from bloom to the first ripe fruit of each ripening class, and the least heat between them. Until then stand-ins of ours are used, and pages say so.',
  },
  'figure-order': {
    level: 'error',
    title: 'A range is written from low to high.',
    help: 'Of the two numbers in [low, high] the first is the smaller. Mind the minus sign: -15 is less than -12.',
  },
  'figure-range': {
    level: 'error',
    title: 'A figure is within what its unit allows.',
    help: 'The bounds are wide. A number beyond them is a slip of the keyboard, or the unit is another: C or F, share or %.',
  },
  'figure-pair': {
    level: 'error',
    title: 'Figures of one species agree with one another.',
    help: 'Development starts at a lower temperature than it stops rising at; a young tree is not hardier than an established one; roots are hurt before they die; a late class needs more heat than an early one.',
  },
} as const satisfies Record<string, Rule>;
