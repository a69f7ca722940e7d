import { describe, expect, it } from 'vitest';
import {
  airClass,
  LONG_SEASON_DAYS,
  MIDDLE_SEASON_DAYS,
  ripeningAir,
  seasonClass,
  winterClass,
} from './placeClass.ts';
import { halfZoneName, parseZone } from './winterZone.ts';

describe('winterClass', () => {
  it.each([
    ['1a', 'frozen'],
    ['5b', 'frozen'],
    ['6a', 'cold'],
    ['7a', 'cold'],
    ['7b', 'cool'],
    ['8b', 'cool'],
    ['9a', 'mild'],
    ['9b', 'mild'],
    ['10a', 'frost-free'],
    ['13b', 'frost-free'],
  ] as const)('zone %s is %s', (zone, expected) => {
    expect(winterClass(parseZone(zone) ?? -1)).toBe(expected);
  });
});

describe('parseZone', () => {
  it('reads every half zone back', () => {
    for (let index = 0; index < 26; index += 1) expect(parseZone(halfZoneName(index))).toBe(index);
    expect(parseZone('7')).toBe(12);
  });

  it.each(['0a', '14a', '7c', 'zone 7', ''])('refuses "%s"', text => {
    expect(parseZone(text)).toBeNull();
  });
});

describe('seasonClass', () => {
  it('changes at its bounds', () => {
    expect(seasonClass(MIDDLE_SEASON_DAYS - 1)).toBe('short');
    expect(seasonClass(MIDDLE_SEASON_DAYS)).toBe('middle');
    expect(seasonClass(LONG_SEASON_DAYS - 1)).toBe('middle');
    expect(seasonClass(LONG_SEASON_DAYS)).toBe('long');
  });
});

describe('airClass', () => {
  const air = { rainMm: 50, deficitKpa: 1, deficitShare: 0.4, dewPointKnown: true };
  it.each([
    ['rain decides in middling air', { rainMm: 29 }, 'dry'],
    ['rain decides in middling air', { rainMm: 30 }, 'fair'],
    ['rain decides in middling air', { rainMm: 75 }, 'humid'],
    ['thirsty air dries a fair place', { deficitShare: 0.5 }, 'dry'],
    ['damp air spoils a place without rain', { rainMm: 5, deficitShare: 0.2 }, 'fair'],
    ['thirsty air helps a wet place by one step', { rainMm: 90, deficitShare: 0.6 }, 'fair'],
    ['an estimated dew point moves nothing', { deficitShare: 0.6, dewPointKnown: false }, 'fair'],
    [
      'without rain figures the air decides',
      { rainMm: null, deficitShare: 0.6, dewPointKnown: false },
      'dry',
    ],
    ['without rain figures the air decides', { rainMm: null, deficitShare: 0.2 }, 'humid'],
  ] as const)('%s', (_, part, expected) => {
    expect(airClass({ ...air, ...part })).toBe(expected);
  });

  it('looks at August to October in the north and at February to April in the south', () => {
    const rainMm = [0, 90, 90, 90, 0, 0, 0, 10, 10, 10, 0, 0];
    const figures = {
      tminC: new Array<number>(12).fill(12),
      tmaxC: new Array<number>(12).fill(24),
      rainMm,
      dewPointC: null,
    };
    expect(ripeningAir({ ...figures, lat: 40 }).rainMm).toBe(10);
    expect(ripeningAir({ ...figures, lat: -40 }).rainMm).toBe(90);
  });
});
