import type { Photo } from '../../records/common.ts';
import type { Draft } from '../draft.ts';
import { photoTrouble } from '../photoTrouble.ts';
import { type Problem, wholeFile } from '../problem.ts';
import { unreadProblem } from '../unreadFile.ts';
import { shortened, visible } from '../visible.ts';
import type { Check } from './check.ts';

/** Longer side in pixels below which a photo looks small on every screen: the narrowest copy that is published. */
const smallestSide = 480;

/** Bytes of an original, and of all of them, up to which a repository stays quick to fetch. Our working figures. */
const largestOriginal = 6e6;
const largestInAll = 150e6;

/** Photos that are shown are whole, of a kind that can be read, and of a size to be seen. Those nobody shows are left alone. */
export const photoContents: Check = draft => {
  const shown = shownNames(draft);
  const placed: string[] = [];
  const problems = draft.photos.flatMap(({ name, facts, unread }): Problem[] => {
    if (unread) return [unreadProblem(`photos/${name}`, unread.why, unread.detail)];
    if (facts === null || !shown.has(name)) return [];
    const file = `photos/${name}`;
    const trouble = photoTrouble(facts);
    if (trouble) return [{ ...trouble, file, spot: wholeFile }];
    if (facts.place) placed.push(file);
    const found: Problem[] = [];
    if (facts.animated) {
      found.push({
        rule: 'photo-animated',
        file,
        spot: wholeFile,
        got: 'several pictures',
        expected: 'one picture',
        message: 'the file holds pictures that play one after the other, and only the first is shown',
        remedy: 'export the picture you want if the first is not the one.',
      });
    }
    if (facts.pixels && Math.max(facts.pixels.width, facts.pixels.height) < smallestSide) {
      const { width, height } = facts.pixels;
      found.push({
        rule: 'photo-small',
        file,
        spot: wholeFile,
        got: `${width} by ${height} pixels`,
        expected: `${smallestSide} pixels or more on the longer side`,
        message: `the photo has only ${width} by ${height} pixels and is shown no larger than that`,
        remedy: 'put the picture there as the camera wrote it; the site makes its own smaller copies.',
      });
    }
    return found;
  });
  return [...problems, ...placeProblem(placed), ...sizeProblem(draft.photos)];
};

const megabytes = (bytes: number) => `${Math.round(bytes / 1e6)} MB`;

/** One line for all originals, shown or not, since git keeps every one of them for ever. */
function sizeProblem(photos: Draft['photos']): Problem[] {
  const sizes = photos
    .flatMap(({ name, facts }) => (facts === null ? [] : [{ name, size: facts.size }]))
    .sort((a, b) => b.size - a.size || (a.name < b.name ? -1 : 1));
  const [largest] = sizes;
  const total = sizes.reduce((sum, { size }) => sum + size, 0);
  if (!largest || (largest.size <= largestOriginal && total <= largestInAll)) return [];
  return [
    {
      rule: 'photo-large',
      file: `photos/${largest.name}`,
      spot: wholeFile,
      got: megabytes(largest.size),
      expected: `up to ${megabytes(largestOriginal)} each, and ${megabytes(largestInAll)} in all`,
      message: `this original has ${megabytes(largest.size)}, and all of them together ${megabytes(total)}, which the repository keeps for ever`,
      remedy:
        'npm run photos -- --shrink makes them smaller where they are, before you commit them; the site looks the same.',
    },
  ];
}

/** One line for all: photos of telephones hold their place as a rule, and nothing needs to be done for the site. */
function placeProblem([first, ...others]: readonly string[]): Problem[] {
  if (first === undefined) return [];
  const count = others.length;
  const subject =
    count === 0 ? 'this photo holds' : `this and ${count} other ${count === 1 ? 'photo' : 'photos'} hold`;
  return [
    {
      rule: 'photo-place',
      file: first,
      spot: wholeFile,
      got: 'a place',
      expected: 'any photo',
      message: `${subject} the place where it was taken`,
      remedy: 'the published copies carry none, so this matters only if you hand on the original.',
    },
  ];
}

/** Photographs that are shown and whose ends look right: those worth decoding. */
export function photosToDecode(draft: Draft): string[] {
  const shown = shownNames(draft);
  return draft.photos
    .filter(({ name, facts }) => shown.has(name) && facts !== null && photoTrouble(facts) === null)
    .map(({ name }) => name);
}

/** The problem of a photograph that could not be decoded; `why` is what the decoder said. */
export function undecodable(name: string, why: string): Problem {
  return {
    rule: 'photo-unreadable',
    file: `photos/${name}`,
    spot: wholeFile,
    got: why,
    expected: 'a whole picture in JPEG, PNG, WebP, AVIF or HEIC',
    message: `the picture is damaged (${shortened(visible(why), 120)})`,
    remedy: 'copy it from the camera or telephone again, or save it anew as JPEG.',
  };
}

function shownNames({ cultivars, lots }: Draft): Set<string> {
  const photos: Photo[] = [
    ...cultivars.flatMap(({ value }) => value.photos),
    ...lots.flatMap(({ value }) => value.photo ?? []),
  ];
  return new Set(photos.map(({ file }) => file));
}
