/** Records as they were known on the day the site is made for. */

import type { Day } from '../days.ts';
import type { Lot } from '../records/lot.ts';
import type { Records } from '../records/records.ts';
import type { Draft } from './draft.ts';
import { byText } from './locate.ts';

/** Whatever is dated later is left out: lots, what was done to a lot, walks, videos, temperatures. The check says so. */
export function onTheDay({
  asOf,
  lots,
  walks,
  videos,
  temperatures,
}: Draft): Pick<Records, 'lots' | 'walks' | 'videos' | 'temperatures'> {
  return {
    lots: lots.filter(({ value }) => value.started <= asOf).map(({ value }) => lotOnTheDay(value, asOf)),
    walks: walks.filter(({ day }) => day <= asOf),
    videos: videos
      .filter(({ value }) => value.date <= asOf)
      .map(({ value }) => value)
      .sort((a, b) => byText(a.date, b.date) || byText(a.id, b.id)),
    temperatures: temperatures.filter(({ day }) => day <= asOf),
  };
}

function lotOnTheDay(lot: Lot, asOf: Day): Lot {
  const known = (day: Day | null) => (day !== null && day <= asOf ? day : null);
  return {
    ...lot,
    severed: known(lot.severed),
    lifted: known(lot.lifted),
    pottings: lot.pottings.filter(({ date }) => date <= asOf),
    reserved: lot.reserved.filter(({ since }) => since <= asOf),
    hold: lot.hold && lot.hold.since <= asOf ? lot.hold : null,
  };
}
