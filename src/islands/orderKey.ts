/** Where the list of trees is kept: sites below different base paths share one storage. */

import { href } from '../href.ts';

export const orderKey = `leafdrop-list:${href('/')}`;
