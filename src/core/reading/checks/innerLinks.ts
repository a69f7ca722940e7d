import { recordAddress } from '../../addresses/paths.ts';
import { treeOf } from '../../care/guideTree.ts';
import { linkTarget } from '../../markdown/links.ts';
import { nodesOf, parseMarkdown } from '../../markdown/tree.ts';
import type { Draft } from '../draft.ts';
import { depthProblem } from '../markdownDepth.ts';
import { nearest } from '../nearest.ts';
import { atLine, meant, type Problem, quote, remedyOf } from '../problem.ts';
import { SitePages } from '../sitePages.ts';
import type { Check } from './check.ts';

/** Signs without which a text has no link inside the site. */
const mayLink = /\]\(|\]:|\[[^\]]*\]\[/;

interface Link {
  file: string;
  /** The page it stands on. */
  from: string;
  url: string;
  line: number;
  column: number;
}

/** Links of all texts. Those of a text that nests too deep are left out: that is told by itself. */
function linksOf({ cultivars, guides }: Draft): Link[] {
  const texts = [
    ...cultivars.map(entry => ({ ...entry, from: recordAddress('cultivar', entry.id) })),
    ...guides.map(entry => ({ ...entry, from: recordAddress('guide', entry.id) })),
  ];
  return texts.flatMap(({ file, from, value }) => {
    const { body, bodyLine } = value;
    if (!mayLink.test(body) || depthProblem(file, body, bodyLine)) return [];
    const tree = 'kind' in value ? treeOf(value) : parseMarkdown(body);
    return [...nodesOf(tree)].flatMap(({ node }): Link[] => {
      if (node.type !== 'link' && node.type !== 'definition') return [];
      const { line, column } = node.position?.start ?? { line: 1, column: 1 };
      return [{ file, from, url: node.url, line: line + bodyLine - 1, column }];
    });
  });
}

/** A link inside the site leads to a page that is there, and to a part that the page has. */
export const innerLinks: Check = draft => {
  const pages = new SitePages(draft);
  return linksOf(draft).flatMap(({ file, from, url, line, column }): Problem[] => {
    const target = linkTarget(url, from);
    if (target.kind !== 'inner') return [];
    const { path, part } = target;
    const spot = atLine(line, column);
    if (!pages.has(path)) {
      return [
        {
          rule: 'link-nowhere',
          file,
          spot,
          got: quote(url),
          expected: 'a page of the site',
          message: `the link leads to ${quote(path)}, and there is no such page`,
          remedy: remedyOf(
            meant(nearest(path, pages.names)),
            'Write the address from the root of the site, such as /cultivars/some-name/.',
          ),
        },
      ];
    }
    if (part === '' || pages.hasPart(path, part)) return [];
    const known = [...(pages.partsOf(path) ?? [])];
    const near = nearest(part, known);
    return [
      {
        rule: 'link-part',
        file,
        spot,
        got: quote(`#${part}`),
        expected: 'the name of a heading or the time of a chapter of that page',
        message: `the link leads to ${quote(`#${part}`)} of ${path}, and that page has no such part`,
        remedy: remedyOf(
          meant(near === null ? null : `#${near}`),
          'The name of a part is its heading in small letters with hyphens: "Before winter" is #before-winter.',
        ),
      },
    ];
  });
};
