import { nearest } from '../nearest.ts';
import { atValue, meant, quote, remedyOf } from '../problem.ts';
import type { Check } from './check.ts';

/** The time zone is one of the IANA database, as far as this machine's copy knows. */
export const yardTimeZone: Check = ({ yard }) => {
  if (!yard || isTimeZone(yard.value.timeZone)) return [];
  const zone = yard.value.timeZone;
  return [
    {
      rule: 'yard-time-zone',
      file: yard.file,
      spot: atValue('time_zone'),
      got: quote(zone),
      expected: 'a time zone such as America/Chicago',
      message: `there is no time zone ${quote(zone)}`,
      remedy: remedyOf(meant(nearestZone(zone)), 'Write region and city, such as America/Chicago.'),
    },
  ];
};

function isTimeZone(name: string): boolean {
  try {
    new Intl.DateTimeFormat('en', { timeZone: name });
    return /^[A-Z]/.test(name);
  } catch {
    return false;
  }
}

/** The zone meant, also when only the city was written. */
function nearestZone(written: string): string | null {
  const zones = Intl.supportedValuesOf('timeZone');
  const city = written.trim().replaceAll(' ', '_').toLowerCase();
  return nearest(written, zones) ?? zones.find(zone => zone.toLowerCase().endsWith(`/${city}`)) ?? null;
}
