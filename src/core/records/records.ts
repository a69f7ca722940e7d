/** Everything the grower wrote, read and normalised: the input of the computing core. */

import type { Day } from '../days.ts';
import type { AddressRow } from './address.ts';
import type { ChangeLine } from './change.ts';
import type { Cultivar } from './cultivar.ts';
import type { Guide } from './guide.ts';
import type { Lot } from './lot.ts';
import type { Place } from './place.ts';
import type { Species } from './species.ts';
import type { Video } from './video.ts';
import type { Walk } from './walk.ts';
import type { Yard } from './yard.ts';

/** One line of the yard's own temperature log, content/temperatures.csv. */
export interface DailyReading {
  day: Day;
  tminC: number;
  tmaxC: number;
}

/** Records by id; lots, walks and videos in order (lots by id, walks and videos by day). */
export interface Records {
  yard: Yard;
  species: Map<string, Species>;
  cultivars: Map<string, Cultivar>;
  lots: Lot[];
  /** Only walks on or before the day the catalogue is made for. */
  walks: Walk[];
  places: Map<string, Place>;
  guides: Map<string, Guide>;
  videos: Video[];
  /** Daily records in content/places by file name, as text: `johnson-county.csv`. */
  dailyRecords: Map<string, string>;
  /** The yard's own log in order of day; days on which nothing was read are left out. */
  temperatures: DailyReading[];
  /** Every address ever published, in the order of the file. */
  addresses: AddressRow[];
  /** What was told of the list when the site was published, in the order of the file. */
  changes: ChangeLine[];
}
