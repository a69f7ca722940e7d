/** Guides without the parts about species that a yard does not raise. */

const opening = /^(:{3,})part\{(.*)\}\s*$/;
const speciesWords = /species="([^"]*)"/;

/** The text of a guide, with the parts for other species left out, and those for several species kept for the ones that are raised. */
export function guideFor(text: string, raised: readonly string[]): string {
  const kept: string[] = [];
  let leavingOut: string | null = null;
  for (const line of text.split('\n')) {
    if (leavingOut !== null) {
      if (line.trimEnd() === leavingOut) leavingOut = null;
      continue;
    }
    const [, fence, settings = ''] = opening.exec(line) ?? [];
    const named = speciesWords.exec(settings)?.[1]?.split(/\s+/);
    const ours = named?.filter(each => raised.includes(each));
    if (fence !== undefined && ours?.length === 0) {
      leavingOut = fence;
      // The blank line before it goes with it.
      if (kept.at(-1) === '') kept.pop();
    } else kept.push(ours ? line.replace(speciesWords, `species="${ours.join(' ')}"`) : line);
  }
  return kept.join('\n');
}
