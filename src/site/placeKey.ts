/** Under which name a browser keeps the visitor's place. */

/** `base` is the path below which the site lives: sites below different paths share one storage. */
export function placeKey(base: string): string {
  return `leafdrop-place:${base}`;
}
