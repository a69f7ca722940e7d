import type { Draft } from '../draft.ts';
import { atValue, type KeyPath, type Problem, quote } from '../problem.ts';
import type { Check } from './check.ts';
import { checkReference } from './references.ts';

const readable = /\.(?:jpe?g|png|webp|avif|hei[cf])$/i;

/** A photo that is named is in content/photos and of a kind that can be made smaller for the web. */
export const photos: Check = draft => {
  const known = new Set(draft.photos.map(({ name }) => name));
  return namedPhotos(draft).flatMap(({ file, path, name }): Problem[] => {
    if (readable.test(name)) {
      const where = 'Photos are in content/photos/.';
      return checkReference({
        rule: 'photo-missing',
        file,
        spot: atValue(...path),
        kind: 'photo',
        id: name,
        known,
        where,
      });
    }
    return [
      {
        rule: 'photo-type',
        file,
        spot: atValue(...path),
        got: quote(name),
        expected: 'a name that ends in .jpg, .png, .webp, .avif or .heic',
        message: `${quote(name)} is not a kind of photo that can be shown`,
        remedy: 'export it as JPEG and name that file.',
      },
    ];
  });
};

interface NamedPhoto {
  file: string;
  path: KeyPath;
  name: string;
}

function namedPhotos({ cultivars, lots }: Draft): NamedPhoto[] {
  return [
    ...cultivars.flatMap(({ file, value }) =>
      value.photos.map(
        (photo, index): NamedPhoto => ({ file, path: ['photos', index, 'file'], name: photo.file }),
      ),
    ),
    ...lots.flatMap(({ file, index, value }): NamedPhoto[] =>
      value.photo ? [{ file, path: [index, 'photo', 'file'], name: value.photo.file }] : [],
    ),
  ];
}
