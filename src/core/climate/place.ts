/** From a place record to the figures the climate of the place is computed from. */

import type { FreezeThreshold, Place, PublishedFreeze as RecordedFreeze } from '../records/place.ts';
import {
  type DailyRecordFigures,
  dailyRecordFigures,
  FEWEST_WHOLE_YEARS,
  lastNormalYears,
} from './dailyRecord.ts';
import { readDailyRecord } from './dailyRecordText.ts';
import {
  type ClimateFigures,
  type FreezeThresholdF,
  freezeThresholdsF,
  type PublishedFreeze,
} from './figures.ts';
import { winterZone } from './winterZone.ts';

/** Freeze dates and winter low of a record long enough to stand for its climate; nothing of a shorter one. */
function observedIn({ freeze, seasons, annualMinMeanC, from, to }: DailyRecordFigures, file: string) {
  if (seasons < FEWEST_WHOLE_YEARS || freeze === null || annualMinMeanC === null) {
    return { freeze: null, annualMin: null, winterZone: null };
  }
  const source = `Taken from the daily record ${file}, ${from} to ${to}, ${seasons} whole seasons`;
  const at: Partial<Record<FreezeThreshold, RecordedFreeze>> = {};
  for (const [thresholdF, odds] of freeze) at[`${thresholdF}F`] = odds;
  return {
    freeze: { source, at },
    annualMin: { meanC: annualMinMeanC, source },
    winterZone: {
      zone: winterZone(annualMinMeanC),
      basis: `Computed by the definition of the USDA map from the daily record ${file}; not an official zone`,
    },
  };
}

export interface FilledPlace {
  place: Place;
  /** Gaps and shortness of the record, in words. */
  notes: string[];
}

/**
 * Fills the figures of a place from its daily record; what the place record gives itself stays. Throws a RangeError when the record
 * cannot be used: the check of the content finds that first.
 */
export function withDailyRecord(place: Place, dailyText: string): FilledPlace {
  const file = place.daily ?? 'daily record';
  const { rows, problems } = readDailyRecord(dailyText);
  const fault = problems.find(({ level }) => level === 'error');
  if (fault) throw new RangeError(`${file}: ${fault.message}`);
  const figures = dailyRecordFigures(lastNormalYears(rows), place.lat);
  if (figures === null) throw new RangeError(`${file}: some months of the year have too few days`);
  const observed = observedIn(figures, file);
  return {
    notes: [...problems.map(({ message }) => message), ...figures.notes.map(({ text }) => text)],
    place: {
      ...place,
      tmaxC: figures.tmaxC,
      tminC: figures.tminC,
      sd: place.sd ?? {
        tminC: figures.sdTminC,
        tmaxC: figures.sdTmaxC,
        about: 'curve',
        source: `Taken from the daily record ${file}`,
      },
      lag1: place.lag1 ?? figures.lag1,
      freeze: place.freeze ?? observed.freeze,
      annualMin: place.annualMin ?? observed.annualMin,
      winterZone: place.winterZone ?? observed.winterZone,
    },
  };
}

function publishedFreezes({ freeze }: Place): Map<FreezeThresholdF, PublishedFreeze> {
  const published = new Map<FreezeThresholdF, PublishedFreeze>();
  for (const thresholdF of freezeThresholdsF) {
    const at = freeze?.at[`${thresholdF}F`];
    if (!freeze || !at?.first || !at.last) continue;
    published.set(thresholdF, { first: at.first, last: at.last, none: at.none, source: freeze.source });
  }
  return published;
}

/**
 * What the climate of a place is computed from. A threshold counts as published when both its first and its last freeze are given.
 * A place that names a daily record needs its text; throws a RangeError as `withDailyRecord` does, or without the text.
 */
export function figuresOfPlace(place: Place, dailyText?: string): ClimateFigures {
  if (place.daily !== null && place.tminC.length === 0) {
    if (dailyText === undefined)
      throw new RangeError(`${place.id}: the daily record ${place.daily} was not read`);
    return figuresOfPlace(withDailyRecord(place, dailyText).place);
  }
  const { sd, winterZone: zone, annualMin } = place;
  return {
    lat: place.lat,
    tmaxC: place.tmaxC,
    tminC: place.tminC,
    rainMm: place.rainMm,
    dewPointC: place.dewC,
    sdTminC: sd?.tminC ?? null,
    sdTmaxC: sd?.tmaxC ?? null,
    sdAbout: sd?.about ?? 'month',
    lag1: place.lag1,
    published: {
      freeze: publishedFreezes(place),
      season: null,
      winterZone: zone && { ...zone, source: zone.basis },
      annualMin: annualMin && { meanC: annualMin.meanC, p10C: null, source: annualMin.source },
    },
  };
}
