/** The cautions that every guide carries: a box with the gravest in its first line. */

import { type Caution, cautionsFor, gravest } from '../core/care/cautions.ts';
import type { Guide } from '../core/records/guide.ts';
import type { Species } from '../core/records/species.ts';
import { box, finished, type GuideContent } from './guideHtml.ts';
import { escaped } from './guideText.ts';
import type { FinishedBlock } from './safeHtml.ts';

/** Said once below the cautions, not with each. */
const UNSOURCED = 'Common practice, no source.';

/** The fragment of a caution on the page of a guide. */
export function cautionFragment(id: string): string {
  return `caution-${id}`;
}

export interface CautionBox {
  species: readonly Species[];
  cautions: Caution[];
  block: GuideContent;
}

function cautionItem({ id, title, text, source }: Caution): FinishedBlock {
  const named = source.replace(UNSOURCED, '').trim();
  const by = named === '' ? '' : ` <small>${escaped(named)}</small>`;
  return finished(
    `<p class="guide-caution-item" id="${cautionFragment(id)}"><strong>${escaped(title)}. </strong>${escaped(text)}${by}</p>`,
  );
}

function cautionBox(guide: Pick<Guide, 'kind'>, species: readonly Species[]): CautionBox {
  const cautions = cautionsFor(guide.kind, species);
  const rest = finished(
    '<p class="guide-caution-item">Where no source is named these are the usual cautions: common practice. Labels, local rules and people licensed for the work decide.</p>',
  );
  const items = box('div', 'guide-caution-list', [...cautions.map(cautionItem), rest]) as FinishedBlock;
  const details = finished(
    `<details>\n<summary><strong>Take care.</strong> ${escaped(gravest(cautions))} <span class="guide-caution-all">All ${cautions.length} cautions</span></summary>\n${items.value}\n</details>`,
  );
  return { species, cautions, block: box('aside', 'guide-cautions', [details], 'Take care') };
}

const boxes = new WeakMap<Pick<Guide, 'kind'>, CautionBox>();

/** The cautions of a guide for these species. They are the same for every place, so those for the species asked for last are kept. */
export function cautionBoxOf(guide: Pick<Guide, 'kind'>, species: readonly Species[]): CautionBox {
  const kept = boxes.get(guide);
  if (kept?.species.length === species.length && kept.species.every((one, index) => one === species[index]))
    return kept;
  const made = cautionBox(guide, species);
  boxes.set(guide, made);
  return made;
}
