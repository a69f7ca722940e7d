/** From the body of a guide and what is known of its reader to HTML. The same input always gives the same bytes. */

import type { PhrasingContent, RootContent } from 'mdast';
import { recordAddress } from '../core/addresses/paths.ts';
import { treeOf } from '../core/care/guideTree.ts';
import { publishedAddress } from '../core/markdown/links.ts';
import type { Guide } from '../core/records/guide.ts';
import { askedWords, guideNodes, type Publish, withWords } from './guideBlocks.ts';
import { anchor } from './guideHtml.ts';
import type { GuideText } from './guideText.ts';
import { type KnownReader, type RenderedGuide, type TreeHand, writeGuide } from './guideWriter.ts';
import { safeHtml } from './safeHtml.ts';

export type { GuideHeading, RenderedGuide } from './guideWriter.ts';

/** Turns a path of this site into a link under its base path. */
type Link = (path: string) => string;

/** What is known of a reader, and how links are made for the page. */
export interface GuideReader extends KnownReader {
  link: Link;
}

/** The text of a guide, kept as long as the guide is, for one way to make links. */
interface KeptText {
  readonly link: Link;
  readonly text: GuideText;
  readonly trees: TreeHand;
}

const keptTexts = new WeakMap<Guide, KeptText>();

const ownNode: readonly RootContent['type'][] = ['containerDirective', 'leafDirective', 'heading'];

function treeHand(publish: Publish): TreeHand {
  const block: TreeHand['block'] = (node, writer) => {
    if (ownNode.includes(node.type)) return guideNodes(node, publish).flatMap(each => writer.node(each));
    return withWords(
      node,
      nodes => nodes.flatMap(each => block(each, writer)) as RootContent[],
      directive => writer.words(askedWords(directive)),
      publish,
    );
  };
  return {
    block,
    heading: ({ node, depth }, id, old, writer) => ({
      ...node,
      depth,
      children: [
        ...old.map(anchor),
        ...(node.children.flatMap(each => block(each, writer)) as PhrasingContent[]),
      ],
      data: { ...node.data, hProperties: { id } },
    }),
    html: blocks => safeHtml({ type: 'root', children: blocks as RootContent[] }),
  };
}

function keptText(guide: Guide, link: Link): KeptText {
  let kept = keptTexts.get(guide);
  if (kept?.link !== link) {
    const page = recordAddress('guide', guide.id);
    const publish: Publish = address => publishedAddress(address, page, link);
    const text = treeOf(guide).children.flatMap(node => guideNodes(node, publish));
    kept = { link, text, trees: treeHand(publish) };
    keptTexts.set(guide, kept);
  }
  return kept;
}

/** The text of a guide as data, its links as `link` makes them. The body must have passed `checkGuideMarkdown`. */
export function guideText(guide: Guide, link: Link): GuideText {
  return keptText(guide, link).text;
}

/** What writes the blocks of a guide that are trees. */
export function guideTrees(guide: Guide, link: Link): TreeHand {
  return keptText(guide, link).trees;
}

/** A guide as a reader sees it. The body must have passed `checkGuideMarkdown`; raw HTML never comes through. */
export function renderGuide(guide: Guide, { link, ...reader }: GuideReader): RenderedGuide {
  const { text, trees } = keptText(guide, link);
  return writeGuide(guide, text, reader, trees);
}
