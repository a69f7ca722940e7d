import { describe, expect, test } from 'vitest';
import { renderGuide } from '../../markdown/guideParts.ts';
import { normaliseGuide } from '../records/guide.ts';
import { guideParts } from './guideHeadings.ts';

const body = `
First words.

## Lifting & carrying

:::part{kept="pot"}
### In :measure[24 F] nights

Words.
:::

::::part{species="fig"}
## Figs only

:::part{winter="cold"}
### Lifting, carrying
:::
::::

:::part{species="mulberry"}
## Mulberries only
:::

:::caution
#### Éclair
:::

- a list

  ## Inside a list
`;

describe('parts of a guide', () => {
  test.each([
    ['of all species', [], 7],
    ['of figs alone', ['fig'], 6],
  ] as const)('are those its general page has: a guide %s', (_, species, count) => {
    const guide = normaliseGuide(
      'g',
      { title: 'G', kind: 'growing-on', summary: 'S', species: [...species] },
      { text: body, line: 1 },
    );
    const { headings, html } = renderGuide(guide, {
      units: 'us',
      year: null,
      species: null,
      form: null,
      stage: null,
      kept: null,
      tasks: [],
      yardSpecies: [],
      link: path => path,
      oldNames: new Map(),
    });
    const parts = guideParts(guide);
    expect(parts).toEqual(headings.map(({ id, text }) => ({ id, text })));
    expect(parts).toHaveLength(count);
    for (const { id } of parts) expect(html).toContain(`id="${id}"`);
    expect(parts.map(({ id }) => id)).toContain('lifting-carrying--2');
  });
});
