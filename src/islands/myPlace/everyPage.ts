/** What every page does for the visitor's place. */

import './head.ts';
import './speak.ts';
import './units.ts';
import '../guides/follow.ts';
import '../guides/now.ts';
