/** The grower's words in Markdown as HTML, by the processor of the site generator. */

import { plainParagraphs } from './plainParagraphs.ts';

async function makeRenderer() {
  const [{ unified }, { default: remarkDirective }] = await Promise.all([
    import('@astrojs/markdown-remark'),
    import('remark-directive'),
  ]);
  const processor = unified({ remarkPlugins: [remarkDirective], gfm: true, smartypants: false });
  // Highlighting would write inline styles, which the content policy forbids; a catalogue shows no code.
  return processor.createRenderer({ syntaxHighlight: false });
}

let renderer: ReturnType<typeof makeRenderer> | undefined;

/** HTML of checked Markdown, by the processor whatever it holds. */
export async function processedProse(markdown: string): Promise<string> {
  renderer ??= makeRenderer();
  const { code } = await (await renderer).render(markdown);
  return code;
}

/** HTML of checked Markdown: raw HTML and links that run something were refused when it was read. */
export async function proseHtml(markdown: string): Promise<string> {
  return plainParagraphs(markdown) ?? (await processedProse(markdown));
}
