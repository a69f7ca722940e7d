/** All that a page with lots or cultivars does for the visitor's place. */

import './speak.ts';
import '../guides/follow.ts';
