import { expect, it } from 'vitest';
import { photoOnPage } from './photoOnPage.ts';

it.each([
  ['lying', 960, 720, 853, 640],
  ['standing', 960, 1280, 480, 640],
  ['small', 300, 200, 300, 200],
  ['a lying panorama', 960, 48, 960, 48],
  ['a standing panorama', 96, 1920, 32, 640],
  ['a thread', 3, 1920, 1, 640],
])('%s photograph stands whole in its frame, never enlarged', (_, width, height, shownWidth, shownHeight) => {
  const shown = photoOnPage({ width, height });
  expect([shown.width, shown.height]).toEqual([shownWidth, shownHeight]);
  expect(shown.sizes.match(/\d+px/g)).toEqual([`${shownWidth}px`, `${shownWidth}px`, `${shownWidth}px`]);
});
