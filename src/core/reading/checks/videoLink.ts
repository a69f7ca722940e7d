import type { LinkKind } from '../../records/video.ts';
import { atValue } from '../problem.ts';
import type { Check } from './check.ts';
import { checkReference } from './references.ts';

const where: Record<LinkKind, string> = {
  cultivar: 'Cultivars are in content/cultivars/.',
  lot: 'Lots are in content/lots/.',
  guide: 'Guides are in content/guides/.',
  place: 'Places are in content/places/.',
};

/** A chapter links to something that exists. */
export const videoLink: Check = ({ videos, ids, allLotsKnown }) =>
  videos.flatMap(({ file, value }) =>
    value.chapters.flatMap(({ links }, chapter) =>
      links.flatMap(({ kind, id }, link) =>
        kind === 'lot' && !allLotsKnown
          ? []
          : checkReference({
              rule: 'video-link',
              file,
              spot: atValue('chapters', chapter, 'links', link),
              kind,
              id,
              known: ids[kind],
              where: where[kind],
            }),
      ),
    ),
  );
