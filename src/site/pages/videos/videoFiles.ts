/** The files beside the page of a video that its maker takes along: the text to paste below it, and the code for its end card. */

import type { Catalogue } from '../../../core/catalogue.ts';
import type { Video } from '../../../core/records/video.ts';
import { overTheLimit, type Subjects, videoDescription } from '../../../core/videos/description.ts';
import { saidPath } from '../../../core/videos/saidAddress.ts';

type Absolute = (path: string) => string;

function subjectsOf(all: Catalogue, video: Video, absolute: Absolute): Subjects {
  const cultivarOf = (id: string) => {
    const entry = all.cultivars.find(({ cultivar }) => cultivar.id === id);
    return entry ? { name: entry.cultivar.name, species: entry.species } : null;
  };
  return {
    addressOf: link =>
      absolute(
        saidPath(link === 'video' ? { kind: 'video', id: video.id, part: null } : link, address =>
          all.codes.get(address),
        ),
      ),
    cultivar: cultivarOf,
    lot: id => {
      const entry = all.lots.find(({ lot }) => lot.id === id);
      return entry ? cultivarOf(entry.cultivar.id) : null;
    },
    guide: id => all.guides.find(guide => guide.id === id) ?? null,
    place: id => all.places.find(place => place.id === id) ?? null,
    species: all.species,
  };
}

/** The text to paste below a video. Throws when it is longer than the yard's limit: the addresses of a site below a path are longer than the check knows. */
export function descriptionFile(all: Catalogue, video: Video, absolute: Absolute): string {
  const description = videoDescription(video, subjectsOf(all, video, absolute));
  const over = overTheLimit(description, all.yard.videoDescriptionLimit);
  if (over !== null) throw new Error(`video ${video.id}: ${over}`);
  return description.text;
}

/** The address in the code of a video's end card: as short as there is one, so that the modules are large. */
export function endCardAddress(
  { codes }: Pick<Catalogue, 'codes'>,
  { id }: Video,
  absolute: Absolute,
): string {
  return absolute(saidPath({ kind: 'video', id, part: null }, address => codes.get(address)));
}
