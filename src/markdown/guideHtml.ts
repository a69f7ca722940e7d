/** Finished blocks of a guide, put together as text; a block that speaks of others is kept as a tree until the whole guide is there. */

import type { BlockContent, PhrasingContent, RootContent } from 'mdast';
import { escaped } from './guideText.ts';
import type { FinishedBlock } from './safeHtml.ts';

/** Content of a guide on its way to HTML. */
export type GuideContent = RootContent | FinishedBlock;

/** A finished block: our own HTML, or that of a template. That of an author never gets here. */
export const finished = (value: string): FinishedBlock => ({ type: 'finished', value });
const isFinished = (node: GuideContent): node is FinishedBlock => node.type === 'finished';
const withBreaks = (blocks: readonly FinishedBlock[]) => blocks.map(({ value }) => value).join('\n');

/** A line of which the first words stand out. */
export function line(className: string, strong: string, rest = ''): FinishedBlock {
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
  children: readonly GuideContent[],
  label?: string,
): GuideContent {
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

/** The HTML of blocks that are all finished; null where some are trees. */
export function finishedHtml(blocks: readonly GuideContent[]): string | null {
  return blocks.every(isFinished) ? withBreaks(blocks) : null;
}
