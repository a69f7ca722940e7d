/** What the script of the comparison fetches of each cultivar: everything in words, and the plate drawn. */

import type { Catalogue, CultivarEntry } from '../../core/catalogue.ts';
import type { PlaceAnswers } from '../../outlooks.ts';
import { cultivarPath } from '../addresses/paths.ts';
import { fruitKind } from '../drawing/plate/kinds.ts';
import { plate, plateSvg } from '../drawing/plate.ts';
import { comparedFacts, type Season, seasonIn } from '../pages/compare/compare.ts';

/** Plates of all cultivars are drawn at this scale, px to the millimeter; the page may enlarge all of them alike. */
const PX_PER_MM = 1.25;

export interface ComparedFile {
  name: string;
  link: string;
  plate: string;
  season: Season;
  /** Label and value; every cultivar has the same labels in the same order. */
  facts: [label: string, value: string][];
}

export function comparedFile(
  all: Catalogue,
  here: PlaceAnswers,
  entry: CultivarEntry,
  href: (path: string) => string,
): ComparedFile {
  const { id, name, fruit } = entry.cultivar;
  const drawn = plate(fruit, fruitKind(entry.species.botanical, fruit), { seed: id, pxPerMm: PX_PER_MM });
  return {
    name,
    link: href(cultivarPath(id)),
    plate: plateSvg(drawn, id),
    season: seasonIn(all, here, id),
    facts: comparedFacts(all, entry).map(({ label, value }) => [label, value]),
  };
}
