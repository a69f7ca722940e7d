/** How large a photograph stands on a page. */

/** The largest frame in CSS pixels: a portrait or a tall panorama must not fill several screens. Shown whole inside it. */
const largest = { width: 960, height: 640 } as const;

/**
 * Width and height in CSS pixels, which the browser keeps free before the picture is there, and the `sizes` by which it chooses a copy.
 * From 55 rem two columns of under half the window stand side by side, up to 33 rem each; below, a photograph is as wide as the window
 * less the margins.
 */
export function photoOnPage(copy: { width: number; height: number }): {
  width: number;
  height: number;
  sizes: string;
} {
  const scale = Math.min(1, largest.width / copy.width, largest.height / copy.height);
  const width = Math.max(1, Math.round(copy.width * scale));
  const height = Math.max(1, Math.round(copy.height * scale));
  const sizes = [
    `(min-width: 73rem) min(${width}px, 33rem)`,
    `(min-width: 55rem) min(${width}px, 44vw)`,
    `min(${width}px, 92vw)`,
  ];
  return { width, height, sizes: sizes.join(', ') };
}
