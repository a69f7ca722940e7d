/** The same edits in the front matter of a Markdown file; the text below it is never touched. */

import { type Edited, editYaml, type YamlChange } from './editYaml.ts';

const fences = /^(\ufeff?---[ \t]*\r?\n)([\s\S]*?)(^---[ \t]*\r?$)/m;

/** The text with the changes made in its front matter, or why it was left alone. */
export function editFrontMatter(text: string, changes: readonly YamlChange[]): Edited {
  const found = fences.exec(text);
  if (found?.index !== 0) return { refused: 'the file has no front matter between two lines of ---' };
  const [, open, yaml] = found as unknown as [string, string, string];
  const edited = editYaml(yaml, changes);
  if ('refused' in edited) return edited;
  return { text: open + edited.text + text.slice(open.length + yaml.length) };
}
