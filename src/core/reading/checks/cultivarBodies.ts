import { markdownProblems } from '../markdownBody.ts';
import type { Check } from './check.ts';

/** The text of a cultivar has nothing in it that must not be published or would vanish. */
export const cultivarBodies: Check = ({ cultivars }) =>
  cultivars.flatMap(({ file, value }) => markdownProblems(file, value.body, value.bodyLine));
