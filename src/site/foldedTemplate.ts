/**
 * Folds the white space by which a template is laid out in its source, so that markup can be written over several lines and is sent without
 * them. The meaning stays: between words and inline elements a run of white space becomes one space; at the edge of a block, where browsers
 * show none, it goes; inside of `pre`, `textarea`, `script` and `style`, and in quoted attributes, it stays as written.
 */

/**
 * Elements at whose edges white space is not shown: the blocks of HTML, parts of tables, lists and selections, metadata, line breaks, and the
 * shapes of SVG, between which white space means nothing.
 */
const blocks = new Set(
  (
    'address article aside blockquote body caption col colgroup dd details dialog div dl dt fieldset figcaption figure footer form h1 h2 h3 ' +
    'h4 h5 h6 head header hgroup hr html legend li link main meta nav noscript ol optgroup option p pre script search section style ' +
    'summary table tbody td template tfoot th thead title tr ul br ' +
    'circle defs desc ellipse g line linearGradient path polygon polyline radialGradient rect stop symbol text use'
  ).split(' '),
);

const verbatim = new Set(['pre', 'textarea', 'script', 'style']);

/** Stands for a value put in. No template holds this character, which HTML does not allow. */
const hole = '\0';

/** A comment, a tag with its name and the rest of it, or text. Quoted attributes may hold `>`. */
const token = /<!--[\s\S]*?-->|<(\/?)([a-zA-Z][\w-]*)((?:"[^"]*"|'[^']*'|[^"'>])*)>|[^<]+|</g;

/** Inside of a tag, white space is folded between attributes and not in their quotes. */
function foldedTag(tag: string): string {
  return tag.replace(/("[^"]*"|'[^']*')|\s+(\/?>)?/g, (_, quoted, end) => quoted ?? end ?? ' ');
}

function foldedText(text: string, afterBlock: boolean, beforeBlock: boolean): string {
  const folded = text.replace(/\s+/g, ' ');
  const start = afterBlock && folded.startsWith(' ') ? 1 : 0;
  const end = beforeBlock && folded.endsWith(' ') ? -1 : folded.length;
  return folded.slice(start, end);
}

/** Without the line breaks at its ends. A space there without a line break belongs to what is written. */
function withoutMargins(text: string): string {
  return text.replace(/^[ \t]*\n\s*|\s*\n[ \t]*$/g, '');
}

function folded(text: string): string {
  const tokens = [...withoutMargins(text).matchAll(token)];
  const isBlock = (index: number) => blocks.has(tokens[index]?.[2] ?? '');
  let kept: string | null = null;
  let written = '';
  for (const [index, [whole, slash, name]] of tokens.entries()) {
    if (kept !== null) {
      if (slash === '/' && name === kept) kept = null;
      written += kept === null ? foldedTag(whole) : whole;
    } else if (name !== undefined) {
      if (slash === '' && verbatim.has(name)) kept = name;
      written += foldedTag(whole);
    } else if (whole.startsWith('<')) {
      written += whole;
    } else {
      written += foldedText(whole, isBlock(index - 1), isBlock(index + 1));
    }
  }
  return written;
}

const known = new WeakMap<TemplateStringsArray, readonly string[]>();

/** The constant parts of a template, folded; worked out once for each template of the source. */
export function foldedTemplate(template: TemplateStringsArray): readonly string[] {
  let parts = known.get(template);
  if (parts === undefined) {
    parts = folded(template.join(hole)).split(hole);
    known.set(template, parts);
  }
  return parts;
}
