/** places/ID.json: what is computed about one place for the coming year, for machines. */

import { z } from 'zod';
import type { Catalogue } from '../core/catalogue.ts';
import { type Day, dayFromParts, dayParts, monthDay } from '../core/days.ts';
import { type DoySpread, levels, type Match } from '../core/match/answers.ts';
import { crops } from '../core/records/common.ts';
import type { Place } from '../core/records/place.ts';
import { openDay, openId, publishedSchema } from './openFile.ts';
import { type FormRuns, openSending, openSendingOf } from './openSending.ts';

/** Raised when a field changes its meaning or goes away; new fields do not raise it. */
const PLACE_FILE_VERSION = 1;

const ripeShape = z
  .strictObject({
    p10: openDay.describe('One year in ten is earlier.'),
    p50: openDay,
    p90: openDay.describe('One year in ten is later.'),
  })
  .nullable()
  .describe(
    'First ripe fruit of the coming season, in the years that get there; null where hardly any does.',
  );

const cultivarShape = z.strictObject({
  cultivar: openId.describe('Id in cultivars.json.'),
  verdict: z
    .enum(levels)
    .describe(
      'at-home: in the ground with no more than mulch; with-care: with a cover or some loss; in-a-pot: wintered in storage; a-gamble: crops in some years; not-here.',
    ),
  crops: z.array(
    z.strictObject({
      crop: z.enum(crops),
      chance: z.number().min(0).max(1).describe('Share of years in which it ripens outdoors.'),
      ripe: ripeShape,
    }),
  ),
});

const placeFileShape = z.strictObject({
  version: z.literal(PLACE_FILE_VERSION),
  asOf: openDay.describe('The day the weeks are counted from.'),
  place: openId.describe('Id in places.json.'),
  name: z.string(),
  cultivars: z.array(cultivarShape).describe('Every cultivar of the list, by its id.'),
  sending: openSending.describe(
    'Weeks of the coming year in which trees of each form are sent here, judged by the weather at both ends; empty where the yard does not send.',
  ),
});

export type OpenPlaceFile = z.infer<typeof placeFileShape>;

/** The first date on or after a day that falls on a day of the year. */
function onOrAfter(from: Day, doy: number): Day {
  const inYear = (year: number) => {
    const [month, date] = monthDay(doy).split('-').map(Number) as [number, number];
    return dayFromParts(year, month, date);
  };
  const { year } = dayParts(from);
  const thisYear = inYear(year);
  return thisYear >= from ? thisYear : inYear(year + 1);
}

/** Days of the year as dates in order: the middle one is the next to come, the others stand around it. */
function datesOf({ p10, p50, p90 }: DoySpread, asOf: Day): NonNullable<z.infer<typeof ripeShape>> {
  const middle = onOrAfter(asOf, p50);
  const { year, month, date } = dayParts(middle);
  const early = onOrAfter(dayFromParts(year - 1, month, date), p10);
  return { p10: p10 === p50 ? middle : early, p50: middle, p90: onOrAfter(middle, p90) };
}

function openMatch({ cultivar, level, ripening }: Match, asOf: Day): z.infer<typeof cultivarShape> {
  return {
    cultivar,
    verdict: level,
    crops: ripening.map(({ crop, share, blocked, dates }) => ({
      crop,
      chance: Math.round(share * 100) / 100,
      ripe: blocked !== null || dates === null ? null : datesOf(dates, asOf),
    })),
  };
}

/** The content of places/ID.json: `matches` of every cultivar of the list there, `sending` for each form. */
export function openPlaceFile(
  { asOf }: Pick<Catalogue, 'asOf'>,
  { id, name }: Pick<Place, 'id' | 'name'>,
  matches: readonly Match[],
  sending: readonly FormRuns[],
): OpenPlaceFile {
  return {
    version: PLACE_FILE_VERSION,
    asOf,
    place: id,
    name,
    cultivars: matches.map(match => openMatch(match, asOf)),
    sending: openSendingOf(sending),
  };
}

/** JSON Schema of places/ID.json, published as place.schema.json. */
export function placeFileSchema(): Record<string, unknown> {
  return publishedSchema(placeFileShape, 'One place in the coming year');
}
