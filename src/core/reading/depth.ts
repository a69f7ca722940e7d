/** How deep YAML text nests, by a scan that no text can make slow or overflow. */

/** Records are never more than six levels deep. */
const deepest = 60;

const manyDashes = /(?:[-?:][ \t]+){60}/;

/** Line, 1-based, on which the text nests too deep to be a record; null when it does not. Brackets in text count too: no text has 60 open ones. */
export function tooDeepLine(text: string): number | null {
  let [depth, line] = [0, 1];
  for (let index = 0; index < text.length; index += 1) {
    const letter = text[index];
    if (letter === '[' || letter === '{') depth += 1;
    else if ((letter === ']' || letter === '}') && depth > 0) depth -= 1;
    else if (letter === '\n') line += 1;
    if (depth > deepest) return line;
  }
  const dashes = manyDashes.exec(text);
  return dashes ? text.slice(0, dashes.index).split('\n').length : null;
}
