import { shortestCode } from '../../addresses/codes.ts';
import type { Guide } from '../../records/guide.ts';
import type { Place } from '../../records/place.ts';
import type { Species } from '../../records/species.ts';
import { overTheLimit, type Subjects, videoDescription } from '../../videos/description.ts';
import { saidPath } from '../../videos/saidAddress.ts';
import type { Draft } from '../draft.ts';
import { wholeFile } from '../problem.ts';
import type { Check } from './check.ts';

/** As long as a code is at least; the codes themselves are not known before everything has been read. */
const someCode = 'x'.repeat(shortestCode);

function subjectsOf(draft: Draft, site: string): (video: string) => Subjects {
  const valuesById = <Value>(entries: readonly { id: string; value: Value }[]) =>
    new Map(entries.map(({ id, value }) => [id, value]));
  const species: ReadonlyMap<string, Species> = valuesById(draft.species);
  const cultivars = valuesById(draft.cultivars);
  const lots = valuesById(draft.lots);
  const guides: ReadonlyMap<string, Guide> = valuesById(draft.guides);
  const places: ReadonlyMap<string, Place> = valuesById(draft.places);
  const cultivar: Subjects['cultivar'] = id => {
    const found = cultivars.get(id);
    const kind = found && species.get(found.species);
    return found && kind ? { name: found.name, species: kind } : null;
  };
  return video => ({
    addressOf: link =>
      site +
      saidPath(link === 'video' ? { kind: 'video', id: video, part: null } : link, address =>
        address.startsWith('/places/') ? undefined : someCode,
      ),
    cultivar,
    lot: id => {
      const found = lots.get(id);
      return found && found.started <= draft.asOf ? cultivar(found.cultivar) : null;
    },
    guide: id => guides.get(id) ?? null,
    place: id => places.get(id) ?? null,
    species: [...species.values()],
  });
}

/** The text below a video is not longer than its host takes. A site below a path has longer addresses: the build measures again. */
export const videoDescriptionLength: Check = draft => {
  const { yard, videos } = draft;
  if (!yard || videos.length === 0) return [];
  const { address, videoDescriptionLimit: limit } = yard.value;
  const subjects = subjectsOf(draft, address);
  return videos.flatMap(({ file, id, value }) => {
    const description = videoDescription(value, subjects(id));
    const message = overTheLimit(description, limit);
    if (message === null) return [];
    return [
      {
        rule: 'video-description' as const,
        file,
        spot: wholeFile,
        got: `${description.length} characters`,
        expected: `at most ${limit}`,
        message,
        remedy:
          'shorten titles or take links out, or raise video_description_limit in yard.yaml if your host takes more. Nothing is cut off by itself.',
      },
    ];
  });
};
