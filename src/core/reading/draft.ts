/** What has been read so far, before it is known whether it all fits together: the input of the checks. */

import type { Day } from '../days.ts';
import type { MeasureColumn } from '../lots/plausible.ts';
import type { AddressRow } from '../records/address.ts';
import type { ChangeLine } from '../records/change.ts';
import type { Cultivar, WrittenCultivar } from '../records/cultivar.ts';
import type { Guide, WrittenGuide } from '../records/guide.ts';
import type { Lot, WrittenLot } from '../records/lot.ts';
import type { Orders } from '../records/orders.ts';
import type { Place, WrittenPlace } from '../records/place.ts';
import type { WrittenPrivateCultivar, WrittenPrivateLots, WrittenPrivateYard } from '../records/private.ts';
import type { DailyReading } from '../records/records.ts';
import type { Species, WrittenSpecies } from '../records/species.ts';
import type { Video, WrittenVideo } from '../records/video.ts';
import type { Walk, WalkNote } from '../records/walk.ts';
import type { WrittenYard, Yard } from '../records/yard.ts';
import type { PhotoFacts } from './photoFacts.ts';
import type { UnreadFile } from './read.ts';

/** A record with the file it came from, as written and as used. */
export interface Entry<Written, Value> {
  file: string;
  id: string;
  written: Written;
  value: Value;
}

/** A lot with its place in its file's list. */
export interface LotEntry extends Entry<WrittenLot, Lot> {
  index: number;
}

/** Ids that have a file, or a line in one, even when what is written there has errors: a reference to them is not unknown. */
export interface KnownIds {
  species: Set<string>;
  cultivar: Set<string>;
  lot: Set<string>;
  place: Set<string>;
  guide: Set<string>;
  video: Set<string>;
  /** Names of daily records in content/places, with their ending. */
  daily: Set<string>;
}

/** Where a lot id stands, also when the lot has errors. */
export interface LotPlace {
  id: string;
  file: string;
  index: number;
}

/** A photograph by its name below content/photos, with what its first and last bytes tell; null when only its name is known. */
export interface PhotoFile {
  name: string;
  facts: PhotoFacts | null;
  /** Why it was not read, for one that was not. */
  unread?: UnreadFile;
}

/** A height or a stem with the unit it was typed in. */
export interface TypedMeasure {
  file: string;
  /** 1-based line in the file. */
  line: number;
  column: MeasureColumn;
  value: number;
}

/** Only records without errors of their own are here, so that one slip is not reported again by every check. */
export interface Draft {
  asOf: Day;
  yard: Entry<WrittenYard, Yard> | null;
  species: Entry<WrittenSpecies, Species>[];
  cultivars: Entry<WrittenCultivar, Cultivar>[];
  lots: LotEntry[];
  lotPlaces: LotPlace[];
  /** False when a list of lots, or an id in one, could not be read: then nobody can say that a lot is unknown. */
  allLotsKnown: boolean;
  /** All walks in order of day, also later ones. */
  walks: Walk[];
  /** Heights and stems of walks as they were typed. */
  typedMeasures: TypedMeasure[];
  /** Notes of walks, public and private. */
  walkNotes: WalkNote[];
  places: Entry<WrittenPlace, Place>[];
  guides: Entry<WrittenGuide, Guide>[];
  videos: Entry<WrittenVideo, Video>[];
  temperatures: DailyReading[];
  /** Lines of the address list without errors of their own, in the order of the file. */
  addresses: AddressRow[];
  /** What was told of the list before, oldest first. */
  changes: ChangeLine[];
  /** Daily records in content/places: file name to text. */
  dailyRecords: Map<string, string>;
  /** Costs with the file they stand in, public or private; null where there are none. */
  costs: { file: string; written: NonNullable<WrittenYard['costs']> } | null;
  /** What the private folder holds; merged into the records above. */
  privateYard: Entry<WrittenPrivateYard, null> | null;
  privateCultivars: Entry<WrittenPrivateCultivar, null>[];
  privateLots: Entry<WrittenPrivateLots, null>[];
  /** Walks in it have notes only. */
  privateWalks: Walk[];
  /** Tables of the private folder, in the order of their files. */
  orders: Orders;
  /** Files in content/photos. */
  photos: readonly PhotoFile[];
  ids: KnownIds;
}
