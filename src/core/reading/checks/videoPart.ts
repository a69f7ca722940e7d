import { type GuidePart, guideParts } from '../../care/guideHeadings.ts';
import { nearest } from '../nearest.ts';
import { atValue, both, meant, quote, remedyOf } from '../problem.ts';
import type { Check } from './check.ts';

/** A named part of a guide is one of its headings. */
export const videoPart: Check = ({ videos, guides }) => {
  const parts = new Map<string, GuidePart[]>();
  const partsOf = (id: string) => {
    const guide = guides.find(one => one.id === id);
    if (guide && !parts.has(id)) parts.set(id, guideParts(guide.value));
    return parts.get(id) ?? null;
  };
  return videos.flatMap(({ file, value }) =>
    value.chapters.flatMap(({ links }, chapter) =>
      links.flatMap(({ id, part }, link) => {
        const known = part === null ? null : partsOf(id)?.map(one => one.id);
        if (part === null || !known || known.includes(part)) return [];
        const list =
          known.length === 0 ? 'The guide has no headings.' : `Its parts are ${both(known.map(quote))}.`;
        return [
          {
            rule: 'video-part' as const,
            file,
            spot: atValue('chapters', chapter, 'links', link),
            got: quote(part),
            expected: 'the name of a heading of the guide',
            message: `the guide ${quote(id)} has no part ${quote(part)}`,
            remedy: remedyOf(meant(nearest(part, known)), list),
          },
        ];
      }),
    ),
  );
};
