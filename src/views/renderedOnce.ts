/** Parts of pages that were rendered in this build, by what they show. */

const parts = new Map<string, Promise<string>>();

/** The HTML of a part, rendered on the first call for its key. The key must name everything that the part's HTML depends on. */
export function renderedOnce(key: string, render: () => Promise<string>): Promise<string> {
  let part = parts.get(key);
  if (part === undefined) {
    part = render();
    parts.set(key, part);
  }
  return part;
}
