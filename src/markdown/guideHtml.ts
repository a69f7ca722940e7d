/** Finished blocks of a guide, put together as text; a block that speaks of others is kept as a tree until the whole guide is there. */

import { toHtml } from 'hast-util-to-html';
import type { BlockContent, Html, PhrasingContent, RootContent } from 'mdast';
import { toHast } from 'mdast-util-to-hast';
import { escaped } from './guideBlocks.ts';

/** A finished block: our own HTML, or that of a template. That of an author never gets here. */
export const finished = (value: string): Html => ({ type: 'html', value });
const isFinished = (node: RootContent): node is Html => node.type === 'html';
const withBreaks = (blocks: readonly Html[]) => blocks.map(({ value }) => value).join('\n');

/** A line of which the first words stand out. */
export function line(className: string, strong: string, rest = ''): Html {
  return finished(`<p class="${className}"><strong>${escaped(strong)}</strong>${escaped(rest)}</p>`);
}

/** What a link to an old name leads to: nothing to be seen. */
export const anchor = (id: string): PhrasingContent => ({
  type: 'emphasis',
  children: [],
  data: { hName: 'span', hProperties: { id } },
});

/** A block with an HTML element of its own. */
export function box(
  tag: string,
  className: string,
  children: readonly RootContent[],
  label?: string,
): RootContent {
  if (children.every(isFinished)) {
    const named = label === undefined ? '' : ` aria-label="${label}"`;
    return finished(`<${tag} class="${className}"${named}>\n${withBreaks(children)}\n</${tag}>`);
  }
  return {
    type: 'blockquote',
    children: children as BlockContent[],
    data: {
      hName: tag,
      hProperties: { className: [className], ...(label ? { 'aria-label': label } : {}) },
    },
  };
}

/** Blocks of which some speak of each other, such as a link and where it leads, which have to be made to HTML together. */
function throughTree(children: RootContent[]): string {
  return toHtml(toHast({ type: 'root', children }, { allowDangerousHtml: true }), {
    allowDangerousHtml: true,
  });
}

/** The HTML of all blocks of a guide. */
export function blocksHtml(blocks: RootContent[]): string {
  return blocks.every(isFinished) ? withBreaks(blocks) : throughTree(blocks);
}
