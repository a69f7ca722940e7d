import { describe, expect, it } from 'vitest';
import { forms } from '../../core/records/common.ts';
import { href } from '../../href.ts';
import {
  arrivalPath,
  guidePath,
  guidesPath,
  placeCalendarPath,
  placeGuidePath,
} from '../../site/addresses/guidePaths.ts';
import { guideAt } from './guideAt.ts';

describe('the address of a guide for a place', () => {
  it('is that of the place version, at the part of the form', () => {
    expect(guideAt(href(guidePath('first-48-hours')), 'miami-fl')).toBe(
      href(placeGuidePath('first-48-hours', 'miami-fl')),
    );
    for (const form of forms) {
      expect(guideAt(href(arrivalPath('first-48-hours', form, 'fig')), 'miami-fl')).toBe(
        href(`${placeGuidePath('first-48-hours', 'miami-fl')}#${form}`),
      );
    }
  });

  it('keeps the chapter that a link names', () => {
    expect(guideAt(`${href(guidePath('first-48-hours'))}#on-arrival`, 'miami-fl')).toBe(
      `${href(placeGuidePath('first-48-hours', 'miami-fl'))}#on-arrival`,
    );
  });

  it('is none for other addresses', () => {
    const others = [
      guidesPath,
      placeGuidePath('waking-and-hardening', 'bonn'),
      placeCalendarPath('waking-and-hardening', 'bonn'),
      `${guidePath('waking-and-hardening')}#places`,
      '/lots/26-layer-01/',
      'https://elsewhere.example/guides/waking/',
      '',
    ];
    expect(others.map(path => guideAt(path, 'miami-fl'))).toEqual(others.map(() => null));
  });
});
