/**
 * Rules of thumb behind the calendars, each with unit, standing and source, so that a page can show them and a yard can
 * argue with them. Temperatures C, volumes liters, spans in days.
 */

export interface CareFigure {
  low: number;
  high: number;
  unit: string;
  standing: 'published' | 'practice' | 'ours';
  source: string;
  /** What it decides, in words for people. */
  means: string;
}

const practice = 'Common practice, no source.';
const ours = 'Our working figure.';

export const careFigures = {
  stores: {
    low: 0.6,
    high: 7.2,
    unit: 'C',
    standing: 'practice',
    source:
      'USDA Forest Service, hardwood seedling handling, for 33 to 40 F (0.6 to 4.4 C), which is best for a long winter; up to 45 F (7 C) is common practice, no source.',
    means: 'What storage for dormant trees is held at.',
  },
  forcing: {
    low: 31,
    high: 60,
    unit: 'days at 50 F (10 C)',
    standing: 'ours',
    source:
      'Our working figure for every species: the need published for 20 pomegranates, 4,096 to 7,928 growing degree hours (HortScience 52(4):560, 2017), at a steady 10 C by our sum.',
    means: 'How long a tree that has had its winter takes to open its leaves in a cool bright place.',
  },
  moveInNights: {
    low: -6.7,
    high: -3.9,
    unit: 'C',
    standing: 'practice',
    source: practice,
    means: 'Nights of about 25 to 20 F that a dormant tree should have had before it is put away.',
  },
  storedWaterShare: {
    low: 0.1,
    high: 0.1,
    unit: 'share of the volume of the pot',
    standing: 'ours',
    source:
      'Our working figure, at the dry end of advice for stored figs ("sparingly once a month", New York Botanical Garden plant answers).',
    means: 'Water a stored pot gets at a time.',
  },
  storedWaterDays: {
    low: 21,
    high: 35,
    unit: 'days',
    standing: 'ours',
    source: 'Our working figure, beside "once a month" (New York Botanical Garden plant answers).',
    means: 'Days between waterings of a stored pot.',
  },
  storedCheckDays: {
    low: 14,
    high: 21,
    unit: 'days',
    standing: 'ours',
    source: ours,
    means: 'Days between looks at a stored tree.',
  },
  regrowth: {
    low: 7,
    high: 14,
    unit: 'days',
    standing: 'practice',
    source: practice,
    means: 'Once warm, an unwoken tree resumes growth.',
  },
  hardening: {
    low: 7,
    high: 14,
    unit: 'days',
    standing: 'ours',
    source: ours,
    means: 'From shelter to open sun, in steps.',
  },
  soak: {
    low: 1,
    high: 6,
    unit: 'hours',
    standing: 'ours',
    source: ours,
    means: 'How long bare roots stand in water before planting; never longer than a day.',
  },
  coolAfterPotting: {
    low: 14,
    high: 28,
    unit: 'days',
    standing: 'ours',
    source: ours,
    means: 'A bare-root tree that was potted up is held cool.',
  },
  standApart: {
    low: 14,
    high: 21,
    unit: 'days',
    standing: 'practice',
    source: practice,
    means: 'A new plant stands away from the others while it is watched for pests.',
  },
  rootedBeforeWinter: {
    low: 56,
    high: 56,
    unit: 'days',
    standing: 'ours',
    source: ours,
    means: 'A tree in leaf is planted at least this long before the first freeze may come.',
  },
  lateArrival: {
    low: 42,
    high: 42,
    unit: 'days',
    standing: 'ours',
    source: ours,
    means: 'A tree in leaf that arrives this close to the first freeze has come late.',
  },
  stopFeeding: {
    low: 70,
    high: 70,
    unit: 'days',
    standing: 'ours',
    source: 'Our working figure, about midsummer in cold places: feeding late delays hardening.',
    means: 'The last feed comes this long before the median first freeze.',
  },
  mulchAfterFreeze: {
    low: 30,
    high: 45,
    unit: 'days',
    standing: 'practice',
    source: practice,
    means: 'When the ground is mulched for winter.',
  },
  mulchDepthCm: {
    low: 7,
    high: 10,
    unit: 'cm',
    standing: 'practice',
    source: practice,
    means: 'Depth of mulch, kept off the trunk.',
  },
  plantedWater: {
    low: 2,
    high: 3,
    unit: 'gallons for each inch of the stem',
    standing: 'published',
    source:
      'University of Florida IFAS, EP113 and ENH857 (2 to 3 gallons an inch); University of Minnesota Extension (25 to 30 % of the pot).',
    means: 'Water at a time for a newly planted tree, on the root ball.',
  },
  rootingWeeks: {
    low: 12,
    high: 12,
    unit: 'weeks',
    standing: 'published',
    source: 'University of Minnesota Extension: every two to three days in weeks 3 to 12, then weekly.',
    means: 'How long a newly planted tree is watered every few days.',
  },
  secondSummerWaterDays: {
    low: 10,
    high: 14,
    unit: 'days',
    standing: 'ours',
    source: ours,
    means: 'Days between soakings of a tree in dry spells of its second summer.',
  },
  sleepingWaterDays: {
    low: 14,
    high: 28,
    unit: 'days',
    standing: 'ours',
    source: ours,
    means: 'Days without rain after which a leafless tree in the ground is watered.',
  },
  wakeAtMean: {
    low: 8,
    high: 8,
    unit: 'C',
    standing: 'ours',
    source: ours,
    means: 'Daily mean outdoors from which a stored tree is brought into the light.',
  },
  clothGain: {
    low: 1,
    high: 2,
    unit: 'degrees C',
    standing: 'practice',
    source: practice,
    means: 'What a cloth over the leaves is worth on a freezing night.',
  },
  soilWorkable: {
    low: 4,
    high: 4,
    unit: 'C',
    standing: 'ours',
    source: ours,
    means: 'Daily mean outdoors from which the soil can be dug after a frozen winter.',
  },
  evergreenAbove: {
    low: 15,
    high: 15,
    unit: 'C',
    standing: 'ours',
    source: ours,
    means: 'Where the coldest weeks are warmer than this on average, a tree keeps growing.',
  },
} as const satisfies Record<string, CareFigure>;
