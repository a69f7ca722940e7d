/** A species: the horticultural figures every cultivar of it shares. File: content/species/ID.yaml. */

import { z } from 'zod';
import {
  type Crop,
  type Figure,
  figure,
  heatUnits,
  type Method,
  normaliseFigure,
  type RipeningClass,
  type Standing,
  temperatureUnits,
  text,
} from './common.ts';
import {
  type FruitInRain,
  normaliseRain,
  normaliseTrouble,
  type Pollination,
  type Trouble,
  writtenPollination,
  writtenRain,
  writtenTroubles,
} from './speciesFruit.ts';
import { type Growth, noGrowth, normaliseGrowth, writtenGrowth } from './speciesGrowth.ts';
import {
  type BloomFigures,
  normaliseBloom,
  normaliseHeatNeed,
  normaliseLeastDays,
  writtenBloom,
  writtenHeatNeed,
} from './speciesRipening.ts';

const propagation = z.strictObject({
  rooting_warm_days: figure(
    'Warm days (a day at 24 C counts one, at 10 C none) from layering, striking or potting until roots hold the ball.',
    ['days'],
  ),
  wean: figure(
    'Days until the plant stands without shelter: from severing or dividing, and for a cutting from rooting. Of a graft it is not asked.',
    ['days'],
  ),
  strongly_rooted: figure('Days from severing, striking or dividing until roots fill the pot.', ['days']),
  success: figure('Share of starts that become a sellable tree.', ['share', '%']),
});

export const writtenSpecies = z.strictObject({
  botanical: text('Botanical name, such as Ficus carica.', 80),
  common: z
    .array(text('A common name.', 40))
    .min(1)
    .describe(
      'Common names as they stand inside a sentence (fig, American persimmon); the first is the one shown.',
    ),
  hardiness: z
    .strictObject({
      leaf_damage: figure('Air temperature at which leaves in growth are hurt.', temperatureUnits),
      dormant_established: figure(
        'Lowest air temperature an established, dormant tree stands.',
        temperatureUnits,
      ),
      dormant_first_winter: figure(
        'The same for a tree in its first winter in the ground.',
        temperatureUnits,
      ),
      root_injury: figure(
        'Temperature of the potting mix at which roots start to be hurt.',
        temperatureUnits,
      ),
      root_severe: figure('Temperature of the potting mix at which most roots die.', temperatureUnits),
    })
    .describe('What cold does to the species.'),
  dormancy: z
    .strictObject({
      chill_hours: figure('Hours of 0 to 7.2 C that end dormancy.', ['hours']).optional(),
      chill_portions: figure('Chill portions (Dynamic Model) that end dormancy.', ['portions']).optional(),
      leaf_fall_night: figure('The first night this cold takes the leaves.', temperatureUnits),
      leaf_fall_mean: figure('Leaves fall once the mean of a spell of days is below this.', temperatureUnits),
      leaf_fall_spell: figure('How many days that mean is taken over.', ['days']),
      cold_spell: figure(
        'Read from older files, and no longer used: dormancy goes by hours of chill since leaf fall.',
        ['days'],
      ).optional(),
    })
    .describe('When the tree goes to sleep and wakes.'),
  heat: z
    .strictObject({
      base: figure('No development below this temperature.', temperatureUnits),
      cap: figure('No faster development above this temperature.', temperatureUnits),
      budbreak: figure(
        'Heat to budbreak, counted from March 1 (September 1 south) or from the end of chilling where that is later.',
        heatUnits,
      ),
      ripens_above: figure(
        'Nothing ripens any more once the mean of ten days stays below this.',
        temperatureUnits,
      ),
      need: writtenHeatNeed.optional(),
    })
    .describe('Degree days: single sine, horizontal cap.'),
  bloom: writtenBloom.optional(),
  propagation: z
    .strictObject({
      'air-layer': propagation.optional(),
      cutting: propagation.optional(),
      division: propagation.optional(),
      graft: propagation.optional(),
    })
    .describe('How long each way of raising a tree takes and how often it works.'),
  storage: z
    .strictObject({
      temperature: figure('Range a dormant tree is kept at.', temperatureUnits),
      bare_root: figure('Longest time a bare-root tree keeps in damp wrap.', ['days']),
    })
    .describe('Keeping a dormant tree.'),
  hazards: z
    .array(
      z.strictObject({
        to: z.enum(['people', 'pets', 'people-and-pets']).describe('Who it can hurt.'),
        caution: text('What it does and how to avoid it, in plain words.'),
        standing: z.enum(['published', 'practice', 'ours']).describe('How well this is known.'),
        source: text('Where this comes from.'),
      }),
    )
    .describe('Sap, thorns, seeds and the like. Write [] when there are none.'),
  rain_at_ripening: writtenRain.optional(),
  growth: writtenGrowth.optional(),
  pollination: writtenPollination.optional(),
  troubles: writtenTroubles.optional(),
  movement: text('Caution about moving the plants across borders, in general words.', 600),
});

export type WrittenSpecies = z.infer<typeof writtenSpecies>;

export interface Hazard {
  to: 'people' | 'pets' | 'people-and-pets';
  caution: string;
  standing: Standing;
  source: string;
}

export interface PropagationFigures {
  /** Days at 24 C or their equal in cooler days. */
  rootingWarmDays: Figure;
  weanDays: Figure;
  stronglyRootedDays: Figure;
  /** Share 0 to 1. */
  success: Figure;
}

export interface Species {
  id: string;
  botanical: string;
  common: string[];
  leafDamageC: Figure;
  dormantEstablishedC: Figure;
  dormantFirstWinterC: Figure;
  rootInjuryC: Figure;
  rootSevereC: Figure;
  chillHours: Figure | null;
  chillPortions: Figure | null;
  leafFallNightC: Figure;
  leafFallMeanC: Figure;
  leafFallSpellDays: Figure;
  heatBaseC: Figure;
  heatCapC: Figure;
  /** Degree-days C above the base. */
  budbreakHeat: Figure;
  /** Mean of ten days under which nothing ripens, C. */
  ripensAboveC: Figure;
  /** C-degree-days from spring to the first ripe fruit; empty for a species timed by bloom. */
  heatNeed: Record<Crop, Partial<Record<RipeningClass, Figure>>>;
  /** Least days from budbreak to the first ripe fruit of a crop timed by heat, however hot it is; null where heat alone decides. */
  leastDays: Record<Crop, Figure | null>;
  /** Null for a species timed by heat. */
  bloom: BloomFigures | null;
  propagation: Partial<Record<Method, PropagationFigures>>;
  storageC: Figure;
  bareRootKeepsDays: Figure;
  hazards: Hazard[];
  /** Null where the record says nothing. */
  rainAtRipening: FruitInRain | null;
  growth: Growth;
  pollination: Pollination | null;
  troubles: Trouble[];
  movement: string;
}

/** A species with every figure in C, degree-days C, days, hours, portions or shares. */
export function normaliseSpecies(id: string, written: WrittenSpecies): Species {
  const { hardiness, dormancy, heat, storage } = written;
  const propagation = Object.entries(written.propagation).flatMap(([method, figures]) =>
    figures === undefined
      ? []
      : [
          [
            method,
            {
              rootingWarmDays: normaliseFigure(figures.rooting_warm_days),
              weanDays: normaliseFigure(figures.wean),
              stronglyRootedDays: normaliseFigure(figures.strongly_rooted),
              success: normaliseFigure(figures.success),
            },
          ] as const,
        ],
  );
  return {
    id,
    botanical: written.botanical,
    common: written.common,
    leafDamageC: normaliseFigure(hardiness.leaf_damage),
    dormantEstablishedC: normaliseFigure(hardiness.dormant_established),
    dormantFirstWinterC: normaliseFigure(hardiness.dormant_first_winter),
    rootInjuryC: normaliseFigure(hardiness.root_injury),
    rootSevereC: normaliseFigure(hardiness.root_severe),
    chillHours: dormancy.chill_hours ? normaliseFigure(dormancy.chill_hours) : null,
    chillPortions: dormancy.chill_portions ? normaliseFigure(dormancy.chill_portions) : null,
    leafFallNightC: normaliseFigure(dormancy.leaf_fall_night),
    leafFallMeanC: normaliseFigure(dormancy.leaf_fall_mean),
    leafFallSpellDays: normaliseFigure(dormancy.leaf_fall_spell),
    heatBaseC: normaliseFigure(heat.base),
    heatCapC: normaliseFigure(heat.cap),
    budbreakHeat: normaliseFigure(heat.budbreak),
    ripensAboveC: normaliseFigure(heat.ripens_above),
    heatNeed: normaliseHeatNeed(heat.need),
    leastDays: normaliseLeastDays(heat.need),
    bloom: normaliseBloom(written.bloom, heat.need),
    propagation: Object.fromEntries(propagation),
    storageC: normaliseFigure(storage.temperature),
    bareRootKeepsDays: normaliseFigure(storage.bare_root),
    hazards: written.hazards,
    rainAtRipening: written.rain_at_ripening ? normaliseRain(written.rain_at_ripening) : null,
    growth: written.growth ? normaliseGrowth(written.growth) : noGrowth,
    pollination: written.pollination ?? null,
    troubles: (written.troubles ?? []).map(normaliseTrouble),
    movement: written.movement,
  };
}
