/** The grower's words in Markdown as HTML, by the same processor and with the same settings as the site's collections. */

import { unified } from '@astrojs/markdown-remark';
import remarkDirective from 'remark-directive';

/** What the site generator is told about Markdown. */
export const markdownSettings = {
  // Highlighting writes inline styles, which the content policy forbids; a catalogue shows no code.
  syntaxHighlight: false,
  processor: unified({ remarkPlugins: [remarkDirective], gfm: true, smartypants: false }),
} as const;

let renderer: ReturnType<typeof markdownSettings.processor.createRenderer> | undefined;

/** HTML of checked Markdown: raw HTML and links that run something were refused when it was read. */
export async function proseHtml(markdown: string): Promise<string> {
  renderer ??= markdownSettings.processor.createRenderer({ syntaxHighlight: false });
  const { code } = await (await renderer).render(markdown);
  return code;
}
