/** Words of the trade that stand on lots and in guides, with their usual meaning. */

import { classLiters, containerClasses } from '../../../core/records/container.ts';
import { roundTo } from '../../../core/units.ts';
import { type Html, html } from '../../html.ts';

/** `#1, about 3.3 L`: classes from the smallest a customer meets to the largest. */
function potSizes(): string {
  const shown = containerClasses.filter(({ name }) => /^(?:SP[45]|#(?:1|2|3|5|7|15))$/.test(name));
  return shown.map(each => `${each.name} about ${roundTo(classLiters(each), 0.1)} L`).join(', ');
}

/** Standing of all of them: common practice, no source; pot sizes from memory of ANSI Z60.1. */
const words: readonly (readonly [word: string, means: string])[] = [
  [
    'Pot sizes (SP4, SP5, #1, #2 ...)',
    `Container classes of the American nursery trade: SP for small plants, # for larger ones. A #1 is often called a "one gallon" pot and holds less: ${potSizes()}.`,
  ],
  [
    'Graded',
    'How large the tree is, by height and stem, beside what its pot size promises: true to its pot, one size under it, or one size over it. The price follows the grade, not the pot.',
  ],
  ['Stem (caliper)', 'The thickness of the stem just above the soil, or above the graft.'],
  ['Leafed', 'In leaf, and used to sun, wind and cool nights (hardened).'],
  ['Dormant', 'At rest for the winter: leaves down, wood ripe, and enough cold since then.'],
  ['Bare-root', 'Lifted while dormant and sent without soil, the roots kept damp.'],
  [
    'Hardened',
    'Brought into sun, wind and cool nights in steps, so that a change does not burn or chill the leaves.',
  ],
  ['Weaned', 'Living on its own roots without a cover or mist.'],
  ['Air layer', 'A branch that was rooted while still on the mother tree, then cut off and potted.'],
  [
    'Scion, rootstock',
    'The upper and the lower part of a grafted tree. A tree on its own roots has neither.',
  ],
  [
    'Breba and main crop',
    'Figs that ripen in early summer on the wood of last year, and those of late summer and fall on new wood.',
  ],
  [
    'Chill hours and chill portions',
    'Two ways to count the winter cold a tree needs before it wakes well in spring.',
  ],
  ['Degree-days', 'Warmth added up over the days of a season, which tells when fruit will be ripe.'],
  ['Hardiness zone', 'The USDA scale of the coldest night of a usual winter, from 1 (coldest) to 13.'],
  [
    'Billed weight',
    'What a carrier charges for: the weight of the parcel or a weight worked out from its size, whichever is larger.',
  ],
];

export function tradeWordsSection(): Html {
  const items = words.map(
    ([word, means]) => html`
      <div>
        <dt>${word}</dt>
        <dd>${means}</dd>
      </div>
    `,
  );
  return html`
    <section aria-labelledby="words">
      <h2 id="words">Words of the trade</h2>
      <dl class="facts">${items}</dl>
      <p class="standing">Common practice. Pot sizes follow the container classes of the American Standard for Nursery Stock, ANSI Z60.1, from memory.</p>
    </section>
  `;
}
