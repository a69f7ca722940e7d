/** What a page is made of, without its words: to tell pages that differ in their words only. */

/** Elements that have no end (HTML Living Standard, 13.1.2). */
const withoutEnd = new Set([
  'area',
  'base',
  'br',
  'col',
  'embed',
  'hr',
  'img',
  'input',
  'link',
  'meta',
  'source',
  'track',
  'wbr',
]);

/** Attributes whose values say what an element may be or hold; the values of others are words, numbers and addresses. */
const tellingValues = new Set(['class', 'type', 'role', 'rel', 'scope']);

export function withoutScripts(html: string): string {
  return html.replace(/<(script|style)\b([^>]*)>[\s\S]*?<\/\1>/g, '<$1$2></$1>');
}

/** Every element of a page with all it stands in, its attributes, and whether they are empty; and the order of the ranks of its headings. */
export function makeUpOf(html: string): Set<string> {
  const made = new Set<string>();
  const around: string[] = [];
  const ranks: string[] = [];
  for (const [, end, name = '', attributes = '', closed] of withoutScripts(html).matchAll(
    /<(\/?)([a-z][\w-]*)((?:\s+[^\s=>/]+(?:="[^"]*")?)*)\s*(\/?)>/gi,
  )) {
    if (end) {
      // An end without a beginning is a make-up of its own.
      if (around.at(-1) !== name) made.add(`${around.join('>')}, then the end of ${name}`);
      around.length = Math.max(0, around.lastIndexOf(name));
      continue;
    }
    const own = [...attributes.matchAll(/([^\s=]+)(?:="([^"]*)")?/g)].map(([, key = '', value = '']) =>
      tellingValues.has(key) ? `${key}=${value}` : `${key}${value.trim() === '' ? ' empty' : ''}`,
    );
    made.add(`${around.join('>')}>${name} ${own.sort().join(' ')}`);
    if (/^h[1-6]$/.test(name) && ranks.at(-1) !== name) ranks.push(name);
    if (!closed && !withoutEnd.has(name)) around.push(name);
  }
  return made.add(ranks.join());
}
