/** Text in XML 1.0 documents. */

/**
 * Characters that XML 1.0 (fifth edition, 2.2 Char) does not know, escaped or not: most controls, the two at the end of the first plane,
 * and halves of surrogate pairs, which are no characters at all.
 */
const forbidden =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for.
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

const escapes: Record<string, string> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&apos;',
};

/** Text for the content of an element or for an attribute; what cannot be written is left out. */
export function xmlText(text: string): string {
  return text.replace(forbidden, '').replace(/[&<>"']/g, character => escapes[character]!);
}

/** An element with text in it, and attributes whose values are text. */
export function xmlElement(name: string, attributes: Record<string, string>, text?: string): string {
  const written = Object.entries(attributes).map(([key, value]) => ` ${key}="${xmlText(value)}"`);
  const start = `<${name}${written.join('')}`;
  return text === undefined ? `${start}/>` : `${start}>${xmlText(text)}</${name}>`;
}
