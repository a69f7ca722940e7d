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

/** Attributes whose values are words, names and addresses, whatever they look like; those of others say what an element may be or hold. */
const freeValues =
  /^(?:id|for|name|value|href|src|content|title|alt|headers|list|lang|datetime|data-.*|aria-(?:label|labelledby|describedby|controls|details))$/;

/** Parts of a page that must differ in their names where there are several of a kind. */
const landmarks = new Set(['aside', 'footer', 'form', 'header', 'main', 'nav', 'section']);

export function withoutScripts(html: string): string {
  return html.replace(/<(script|style)\b([^>]*)>[\s\S]*?<\/\1>/g, '<$1$2></$1>');
}

/** Every element of a page with all it stands in, its attributes, whether they are empty; the order of the ranks of its headings; its landmarks. */
export function makeUpOf(html: string): Set<string> {
  const made = new Set<string>();
  const around: string[] = [];
  const ranks: string[] = [];
  const parts: string[] = [];
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
      !freeValues.test(key) && /^[a-z][a-z _-]*$/i.test(value)
        ? `${key}=${value}`
        : `${key}${value.trim() === '' ? ' empty' : ''}`,
    );
    if (landmarks.has(name))
      parts.push(`${name} ${/\saria-label(?:ledby)?="([^"]*)"/.exec(attributes)?.[1] ?? ''}`);
    made.add(`${around.join('>')}>${name} ${own.sort().join(' ')}`);
    if (/^h[1-6]$/.test(name) && ranks.at(-1) !== name) ranks.push(name);
    if (!closed && !withoutEnd.has(name)) around.push(name);
  }
  return made.add(ranks.join()).add(parts.join());
}
