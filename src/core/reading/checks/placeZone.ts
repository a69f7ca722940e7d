import { halfZoneIndex, halfZoneName, parseZone } from '../../climate/winterZone.ts';
import type { Place } from '../../records/place.ts';
import { celsiusToFahrenheit, roundTo } from '../../units.ts';
import { atValue, type Problem } from '../problem.ts';
import type { Check } from './check.ts';

/** A published zone is read from a map and may lie next to the one computed at the station. Our working figure. */
const halfZonesApart = 1;
/**
 * The coldest night of a year is colder than the mean minimum of the coldest month by at most this many half zones of 5 F.
 * Our working figure.
 */
const mostBelowMonth = 9;

/** The winter zone agrees with the mean coldest night where that is given, else with the coldest month. */
export const placeZone: Check = ({ places }) =>
  places.flatMap(({ file, value }) => {
    const zone = value.winterZone && parseZone(value.winterZone.zone);
    if (zone === null) return [];
    const words = value.annualMin ? againstNight(zone, value.annualMin.meanC) : againstMonth(zone, value);
    return words ? [{ ...words, file, spot: atValue('winter_zone', 'zone') }] : [];
  });

type Words = Omit<Problem, 'file' | 'spot'>;

function againstNight(zone: number, meanC: number): Words | null {
  const computed = halfZoneIndex(meanC);
  if (Math.abs(computed - zone) <= halfZonesApart) return null;
  return words(zone, halfZoneName(computed), `a mean coldest night of ${inF(meanC)}`);
}

function againstMonth(zone: number, { tminC }: Place): Words | null {
  if (tminC.length === 0) return null;
  const coldest = Math.min(...tminC);
  const warmest = halfZoneIndex(coldest);
  if (zone <= warmest && zone >= warmest - mostBelowMonth) return null;
  const possible = `${halfZoneName(Math.max(0, warmest - mostBelowMonth))} to ${halfZoneName(warmest)}`;
  return words(zone, possible, `a coldest month with a mean minimum of ${inF(coldest)}`);
}

function inF(tC: number): string {
  return `${roundTo(celsiusToFahrenheit(tC), 1)} F`;
}

function words(zone: number, possible: string, evidence: string): Words {
  const name = halfZoneName(zone);
  return {
    rule: 'place-zone',
    got: name,
    expected: possible,
    message: `zone ${name} does not go with ${evidence}, which is ${possible}`,
    remedy: 'look the zone and the figure up again.',
  };
}
