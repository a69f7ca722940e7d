/** The grower's words in Markdown as HTML, by the processor of the site generator. */

import { unified } from '@astrojs/markdown-remark';
import remarkDirective from 'remark-directive';

const processor = unified({ remarkPlugins: [remarkDirective], gfm: true, smartypants: false });

let renderer: ReturnType<typeof processor.createRenderer> | undefined;

/** HTML of checked Markdown: raw HTML and links that run something were refused when it was read. */
export async function proseHtml(markdown: string): Promise<string> {
  // Highlighting would write inline styles, which the content policy forbids; a catalogue shows no code.
  renderer ??= processor.createRenderer({ syntaxHighlight: false });
  const { code } = await (await renderer).render(markdown);
  return code;
}
