/**
 * Hourly temperatures from daily extremes: a sine by day, a logarithmic fall by night.
 * Source: Linvill 1990, HortScience 25:14-16.
 */
import type { SunTimes } from './dayLength.ts';

/** The maximum comes this much later than a sine over the day alone would have it: two hours after solar noon. */
const AFTERNOON_LAG_HOURS = 4;

export interface DayExtremes {
  readonly tminC: number;
  readonly tmaxC: number;
}

/** Temperature at an hour between sunrise and sunset, C. */
function byDay({ tminC, tmaxC }: DayExtremes, sun: SunTimes, hour: number): number {
  return (
    tminC +
    (tmaxC - tminC) * Math.sin((Math.PI * (hour - sun.sunrise)) / (sun.dayLength + AFTERNOON_LAG_HOURS))
  );
}

/** Temperature at sunset, from which the night falls, C. */
export function sunsetTemperature(day: DayExtremes, sun: SunTimes): number {
  return byDay(day, sun, sun.sunset);
}

/**
 * Night-time temperature `hours` after sunset of a night that long; reaches the next morning's minimum at its end. Under
 * the midnight sun the night has no length and is its minimum.
 */
function byNight(sunsetC: number, nextMinC: number, hours: number, nightLength: number): number {
  if (nightLength <= 0) return nextMinC;
  return sunsetC - ((sunsetC - nextMinC) * Math.log(hours + 1)) / Math.log(nightLength + 1);
}

/**
 * The 24 temperatures of a day at hours 0 to 23 of solar time, written into `into` from `at`. Days before and after are
 * needed for the nights. Works through polar night (all night) and midnight sun (all day).
 */
export function fillHours(
  into: Float64Array,
  at: number,
  days: readonly [DayExtremes, DayExtremes, DayExtremes],
  suns: readonly [SunTimes, SunTimes, SunTimes],
): void {
  const [before, today, after] = days;
  const [sunBefore, sun, sunAfter] = suns;
  const duskBefore = sunsetTemperature(before, sunBefore);
  const dusk = sunsetTemperature(today, sun);
  const nightBefore = 24 - sunBefore.sunset + sun.sunrise;
  const night = 24 - sun.sunset + sunAfter.sunrise;
  for (let hour = 0; hour < 24; hour += 1) {
    if (hour <= sun.sunrise) {
      into[at + hour] = byNight(duskBefore, today.tminC, hour + 24 - sunBefore.sunset, nightBefore);
    } else if (hour < sun.sunset) {
      into[at + hour] = byDay(today, sun, hour);
    } else {
      into[at + hour] = byNight(dusk, after.tminC, hour - sun.sunset, night);
    }
  }
}
