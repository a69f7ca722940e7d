/** Plates of fruit, drawn: whole and cut, to scale. Colors come from classes, since the content policy allows no inline styles. */

import type { CultivarEntry } from '../../core/catalogue.ts';
import { comparePath } from '../addresses/paths.ts';
import { attribute, type Html, html, safeHtml } from '../html.ts';
import { memoize } from '../memo.ts';
import { fruitSizeInWords } from '../words/measures.ts';
import { type DrawnPlate, drawnPlate } from './plate/drawn.ts';
import { fruitKind } from './plate/kinds.ts';
import { barInWords, canvasOf, largeScale } from './plate.ts';

function plateHtml({ attributes, markup }: DrawnPlate): Html {
  const written = Object.entries(attributes).map(([name, value]) => attribute(name, String(value)));
  return html`<svg${written}>${safeHtml(markup)}</svg>`;
}

type Shown = Pick<CultivarEntry, 'cultivar' | 'species'>;

function figure({ cultivar, species }: Shown, href: (path: string) => string): Html {
  const { id, name, fruit } = cultivar;
  const kind = fruitKind(species.botanical, fruit);
  const canvas = canvasOf(fruit, kind);
  const drawn = drawnPlate(id, fruit, kind, largeScale(canvas), canvas);
  return html`
    <figure class="plate-figure">
      ${plateHtml(drawn)}
      <figcaption>
        Drawn from its traits, ${fruitSizeInWords(fruit.lengthMm, fruit.widthMm)}. The bar is ${barInWords}.
        <a href="${href(comparePath)}?c=${id}">Compare <bdi>${name}</bdi> with others</a>
      </figcaption>
    </figure>
  `;
}

const figures = memoize((href: (path: string) => string) =>
  memoize((cultivar: Shown['cultivar']) =>
    memoize((species: Shown['species']) => figure({ cultivar, species }, href)),
  ),
);

/** A large plate of a cultivar's fruit with what it is and its bar in words. All its lots show the same. */
export function plateFigure({ cultivar, species }: Shown, href: (path: string) => string): Html {
  return figures(href)(cultivar)(species);
}
