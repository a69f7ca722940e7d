import { markdownProblems } from '../markdownBody.ts';
import type { Check } from './check.ts';

/** Text below the front matter has nothing in it that must not be published or would vanish. */
export const bodies: Check = ({ cultivars, guides }) =>
  [...cultivars, ...guides].flatMap(({ file, value }) => markdownProblems(file, value.body, value.bodyLine));
