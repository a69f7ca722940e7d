/**
 * Markdown without any mark: paragraphs of words. Most of what is written about a cultivar is that, and it needs no processor, whose loading
 * alone costs more than a hundred pages.
 */

/** Lines that begin with a letter and hold nothing that Markdown, its tables and links, or directives give a meaning. */
const plainLine = /^\p{L}(?:[\p{L}\p{M}\p{Nd} ,.;'"()?%°½¼–-]|:(?= ))*$/u;
/** Without brackets and slashes the only address that becomes a link by itself. */
const bareLink = /www\./i;
const blank = /\n{2,}/;

/** The HTML that a Markdown processor (CommonMark with GFM and directives) gives; null where the text holds more than words. */
export function plainParagraphs(markdown: string): string | null {
  const text = markdown.replace(/^\n+|[\n ]+$/g, '');
  if (text === '' || bareLink.test(text)) return null;
  const isPlain = text
    .split('\n')
    .every(line => line === '' || (plainLine.test(line) && !line.endsWith(' ')));
  if (!isPlain) return null;
  return text
    .split(blank)
    .map(paragraph => `<p>${paragraph}</p>`)
    .join('\n');
}
