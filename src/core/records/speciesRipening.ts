/** What a species record says of ripening: by heat, or by days from bloom. */

import { z } from 'zod';
import { type Crop, type Figure, figure, heatUnits, normaliseFigure, type RipeningClass } from './common.ts';

const classes = (description: string, units: readonly [string, ...string[]]) =>
  z.strictObject({
    'very-early': figure(description, units).optional(),
    early: figure(description, units).optional(),
    mid: figure(description, units).optional(),
    late: figure(description, units).optional(),
    'very-late': figure(description, units).optional(),
  });

const heatNeeds = classes('Heat from spring to the first ripe fruit.', heatUnits).describe(
  'Heat need per ripening class; leave out a class the species does not have.',
);

const leastDays = figure('Least days from budbreak to the first ripe fruit, however hot it is.', ['days']);

/** Heat needs of a species whose fruit is timed by heat. */
export const writtenHeatNeed = z
  .strictObject({
    main: heatNeeds,
    breba: heatNeeds.optional(),
    least_days: z
      .strictObject({ main: leastDays.optional(), breba: leastDays.optional() })
      .optional()
      .describe('Per crop; leave it out where heat alone decides.'),
  })
  .describe(
    'For a species whose fruit is timed by heat (figs, mulberries): heat to the first ripe fruit, counted like budbreak. Leave it out where bloom decides.',
  );

/** What times the fruit of a species that is timed by its bloom. */
export const writtenBloom = z
  .strictObject({
    heat: figure('Heat to full bloom, counted like budbreak.', heatUnits).optional(),
    to_ripe: classes('Days from full bloom to the first ripe fruit, for a bloom on May 25.', ['days'])
      .describe('Days per ripening class; leave out a class the species does not have.')
      .optional(),
    least_heat: figure(
      'Least heat from full bloom to the first ripe fruit of a mid-season crop.',
      heatUnits,
    ).optional(),
  })
  .describe(
    'For a species whose fruit takes so many days from bloom, however warm they are (persimmons, jujubes, pomegranates). What is left out is filled in with stand-ins of ours, and the check says so.',
  );

export type WrittenHeatNeed = z.infer<typeof writtenHeatNeed>;
export type WrittenBloom = z.infer<typeof writtenBloom>;

type ByClass = Partial<Record<RipeningClass, Figure>>;

export interface BloomFigures {
  /** C-degree-days from spring to full bloom. */
  heat: Figure;
  /** Days from full bloom to the first ripe fruit, for a bloom on May 25 (November 23 south). */
  toRipeDays: ByClass;
  /** Least C-degree-days between them, for a mid-season crop. */
  leastHeat: Figure;
}

function standIn(value: number): Figure {
  return {
    low: value,
    value,
    high: value,
    standing: 'ours',
    source: 'A stand-in of ours: the middle of the species we have dated fruit of.',
    note: null,
  };
}

/** Between the figures of persimmons, jujube and pomegranate. Standing: ours. */
const STAND_IN_HEAT = 490;
const STAND_IN_LEAST_HEAT = 1000;
const standInDays: Record<RipeningClass, number> = {
  'very-early': 90,
  early: 105,
  mid: 127,
  late: 147,
  'very-late': 165,
};

/** Keys of the bloom figures that a species timed by bloom should give and does not. */
export function missingBloomKeys(written: WrittenBloom | undefined): string[] {
  return (['heat', 'to_ripe', 'least_heat'] as const).filter(key => written?.[key] === undefined);
}

function figuresOf(written: Record<string, Parameters<typeof normaliseFigure>[0] | undefined>): ByClass {
  const entries = Object.entries(written).filter(([, value]) => value !== undefined);
  return Object.fromEntries(entries.map(([key, value]) => [key, normaliseFigure(value!)]));
}

/** Heat needs by crop and class; all empty for a species timed by bloom. */
export function normaliseHeatNeed(written: WrittenHeatNeed | undefined): Record<Crop, ByClass> {
  return { main: figuresOf(written?.main ?? {}), breba: figuresOf(written?.breba ?? {}) };
}

/** Least days from budbreak by crop; null where heat alone decides. */
export function normaliseLeastDays(written: WrittenHeatNeed | undefined): Record<Crop, Figure | null> {
  const of = (crop: Crop) => {
    const given = written?.least_days?.[crop];
    return given ? normaliseFigure(given) : null;
  };
  return { main: of('main'), breba: of('breba') };
}

/** Bloom figures, with stand-ins for what is not given; null for a species timed by heat. */
export function normaliseBloom(
  written: WrittenBloom | undefined,
  heatNeed: WrittenHeatNeed | undefined,
): BloomFigures | null {
  if (written === undefined && heatNeed !== undefined) return null;
  const standInClasses = Object.entries(standInDays).map(([name, days]) => [name, standIn(days)]);
  return {
    heat: written?.heat ? normaliseFigure(written.heat) : standIn(STAND_IN_HEAT),
    toRipeDays: written?.to_ripe ? figuresOf(written.to_ripe) : Object.fromEntries(standInClasses),
    leastHeat: written?.least_heat ? normaliseFigure(written.least_heat) : standIn(STAND_IN_LEAST_HEAT),
  };
}
