/** The manual of the words a guide may use, made from the vocabulary so that it can leave nothing out. Every example passes the check. */

import { measureUnitNames } from './guideMeasures.ts';
import {
  type ClosedCondition,
  chances,
  closedConditions,
  type DateName,
  freezeDateNames,
  freezeLevels,
  type SpeciesFigureName,
  speciesDateNames,
  speciesFigureNames,
  taskNames,
  usualChance,
} from './guideVocabulary.ts';
import { taskTable } from './taskTable.ts';

const conditionMeanings: Record<ClosedCondition, string> = {
  winter: 'how hard the winters of the place are',
  season: 'how long the season between its freezes is, which says nothing of heat',
  summer: 'how much heat the growing months of the place bring',
  air: 'how damp its air is in late summer',
  pots: 'how a pot spends the winter by the calendar of the place: in storage, sheltered on hard nights, or outdoors',
  'late-leaves':
    'what the calendar does with a tree that comes in leaf late in the year: grow on, or let the leaves drop and sleep',
  'dormant-planting':
    'when the calendar plants a leafless tree: all winter, as the winter ends, or none before it is in leaf',
  cover: 'what a tree in its first winter in the ground is covered with, pot where no cover is enough',
  form: 'the form in which the tree was bought',
  stage: 'whether the tree is in its first winter or established',
  kept: 'where the tree lives',
};

const dateMeanings: Record<DateName, string> = {
  'first-freeze': 'the first night of fall at or below a temperature',
  'last-freeze': 'the last night of spring at or below a temperature',
  'leaf-fall': 'when the leaves come down',
  dormant: 'when the tree is asleep',
  budbreak: 'when the buds open',
  'safe-out': 'the day after which a later freeze comes in one year in ten',
  'stop-feeding': 'the day of the last feed',
};

const figureMeanings: Record<SpeciesFigureName, string> = {
  'leaf-damage': 'the night that hurts leaves',
  'dormant-established': 'the cold that established wood stands asleep',
  'dormant-first-winter': 'the cold it stands in its first winter',
  'root-injury': 'the temperature of the mix that hurts roots',
  'root-severe': 'the temperature of the mix that kills most roots',
  storage: 'the temperatures of winter storage',
  'bare-root-keeps': 'how long bare roots keep in their wrap',
  'chill-hours': 'the hours of chill the species needs',
};

/** Figures in degrees stand in a sentence as temperatures, the others as their number and unit. */
const figureWords: Partial<Record<SpeciesFigureName, string>> = {
  'bare-root-keeps': 'some weeks',
  'chill-hours': 'some weeks of cold',
};

const example = (...lines: string[]) => ['```', ...lines, '```'].join('\n');

function part(condition: string, value: string): string {
  return example(`:::part{${condition}="${value}"}`, 'Words for these readers only.', ':::');
}

function conditions(): string[] {
  const closed = (Object.keys(closedConditions) as ClosedCondition[]).map(name => {
    const values = closedConditions[name];
    return [
      `### ${name}: ${conditionMeanings[name]}`,
      `Its values: ${values.join(', ')}.`,
      ...values.map(value => part(name, value)),
    ].join('\n\n');
  });
  return [
    ...closed,
    '### species: what the tree is\n\nThe id of a species of the yard, which is the name of its file.',
    `### freeze and no-freeze: how cold it gets\n\nWhere such a night comes in at least one year in ten, and where it does not. Their values: ${freezeLevels.join(', ')}.`,
    ...freezeLevels.flatMap(level => [part('freeze', level), part('no-freeze', level)]),
  ];
}

function dates(): string[] {
  const freezes = freezeDateNames.flatMap(name => [
    `### ${name}: ${dateMeanings[name]}`,
    `It needs its temperature beside it: ${freezeLevels.map(level => `at="${level}"`).join(', ')}.`,
    ...freezeLevels.map(at => example(`Do it :before[in the fall]{date="${name}" at="${at}"}.`)),
  ]);
  const ofSpecies = speciesDateNames.flatMap(name => [
    `### ${name}: ${dateMeanings[name]}`,
    example(`Do it :after{date="${name}"}.`, `It comes :around[in the coolest weeks]{date="${name}"}.`),
  ]);
  const odds = chances.map(chance =>
    example(`Be ready :before{date="first-freeze" at="28F" chance="${chance}"}.`),
  );
  return [
    ...freezes,
    `### The chance of a freeze\n\nBefore and after take the odds that it has come, or for the last freeze that one is still to come: ${chances.join(', ')}. Without the word it is ${usualChance}.`,
    ...odds,
    ...ofSpecies,
  ];
}

/** Every directive, condition, date, figure, measure and task, each with an example, as Markdown. */
export function guideManual(): string {
  const parts = [
    '# The words of a guide',
    'A guide is Markdown. What is written below stands between its words and is turned into dates, figures and tasks for each reader.',
    '## Parts for some readers',
    'A part is shown to those whom its conditions fit. Several values of one condition stand with a space between them, several conditions side by side. A part inside a part: the outer one has one colon more.',
    example(
      '::::part{winter="frozen cold" kept="pot"}',
      'For pots where winters are hard.',
      '',
      ':::part{stage="first-winter"}',
      'For young trees among them.',
      ':::',
      '::::',
    ),
    ...conditions(),
    '## Warnings and cautions',
    'A warning of your own stands in a box. The cautions of species and work are put in by rule; a line of its own says where, else they stand above the first heading.',
    example(':::caution', 'Two people lift a large pot.', ':::'),
    example('::cautions'),
    '## Dates in a sentence',
    'Before, after and around turn into dates of the place, into the rule where no place is known, and into the words in brackets where the place has no such day.',
    ...dates(),
    '## Measures in a sentence',
    `Readers see their own unit first and the other beside it. The units: ${measureUnitNames.join(', ')}. Degrees F and degrees C are for differences.`,
    ...measureUnitNames.map(unit => example(`It takes :measure[2 to 4 ${unit}].`)),
    '## Figures of the species',
    'The words in brackets stand in where nobody said which species, or where it has no such figure.',
    ...speciesFigureNames.flatMap(name => [
      `### ${name}: ${figureMeanings[name]}`,
      example(`That is :figure[${figureWords[name] ?? 'its own limit'}]{of="${name}"}.`),
    ]),
    '## Tasks with their days',
    'A task stands on a line of its own and shows its days at the place, or its rule.',
    ...taskNames.flatMap(name => [
      `### ${name}: ${taskTable[name].title}`,
      example(`::task{name="${name}"}`),
    ]),
  ];
  return `${parts.join('\n\n')}\n`;
}
