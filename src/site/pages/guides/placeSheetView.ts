/** A guide for a place as its sheet shows it: the text with the dates of the place, its calendar, and what stands above them. */

import type { CareTask } from '../../../core/care/calendar.ts';
import type { CareYear } from '../../../core/care/careYear.ts';
import { guideCalendar } from '../../../core/care/guideCalendar.ts';
import { readersUnitFirst, type UnitChoice } from '../../../core/care/guideMeasures.ts';
import { winterProtection } from '../../../core/care/protection.ts';
import { tasksOfGuide } from '../../../core/care/taskTable.ts';
import type { Day } from '../../../core/days.ts';
import type { Guide } from '../../../core/records/guide.ts';
import type { Place } from '../../../core/records/place.ts';
import { type RenderedGuide, type TreeHand, writeGuide } from '../../../markdown/guideWriter.ts';
import { memoize } from '../../memo.ts';
import { speciesName } from '../../words/speciesName.ts';
import { unitsIn } from '../../words/units.ts';
import { type ArrivalViews, arrivalViews } from './arrivalViews.ts';
import { type SheetPlace, type SheetSource, sheetSpecies } from './sheetSource.ts';
import { reasonsInWords, type TaskView, taskInUnits, taskView } from './taskView.ts';

export interface PlaceGuideView {
  body: RenderedGuide;
  tasks: TaskView[];
  arrivals: ArrivalViews | null;
  /** That the ground is no place for the species here, and why; null where it is one or the guide is not about the ground. */
  potOnly: { words: string; known: string } | null;
  /** Why there are no dates; null where there are some. */
  withoutDates: string | null;
}

/** The page of a guide and its file show the same tasks. */
const keptTasks = memoize((_year: CareYear) => new Map<string, CareTask[]>());

/** Tasks of a guide at a place from the day of the content, for its calendar and its file, in the units of its readers. */
export function placeTasks(
  { asOf, guide }: { readonly asOf: Day; readonly guide: Pick<Guide, 'kind'> },
  { country }: Pick<Place, 'country'>,
  year: CareYear,
): CareTask[] {
  const ofYear = keptTasks(year);
  const key = `${guide.kind} ${asOf} ${unitsIn(country)}`;
  const kept = ofYear.get(key);
  if (kept) return kept;
  const tasks = guideCalendar(guide.kind, year, asOf).map(task => taskInUnits(task, unitsIn(country)));
  ofYear.set(key, tasks);
  return tasks;
}

/** One task of each name, of a season that had not begun on the day of the content where there is one: that one is not cut short. */
function wholeTasks(tasks: readonly CareTask[], asOf: Day): CareTask[] {
  const names = [...new Set(tasks.map(({ name }) => name))];
  return names.map(name => {
    const ofName = tasks.filter(task => task.name === name);
    return ofName.find(({ range }) => range.from > asOf) ?? ofName[0]!;
  });
}

function withoutDates(guide: Pick<Guide, 'kind'>, tasks: readonly CareTask[], year: CareYear): string | null {
  if (guide.kind === 'arrival' || tasks.length > 0) return null;
  return tasksOfGuide[guide.kind].length === 0
    ? 'This work hangs on how far the branch has come and not on the calendar of a place, so there are no dates to give.'
    : `Nothing in this guide has to be done by a date in ${year.placeName}.`;
}

const groundGuides: readonly Guide['kind'][] = ['overwintering-ground', 'establishing'];

function potOnly(
  { kind }: Pick<Guide, 'kind'>,
  { species, winterLowC, placeName }: CareYear,
  units: UnitChoice,
): PlaceGuideView['potOnly'] {
  if (!groundGuides.includes(kind)) return null;
  const { method, because } = winterProtection(species, 3, winterLowC);
  if (method !== 'pot-only') return null;
  return {
    words: `The winters of ${placeName} are too hard for ${speciesName(species)} in the ground, whatever the cover. Keep it in a pot and store it. What follows is for trees that stand more cold, or for a trial.`,
    known: readersUnitFirst(reasonsInWords(because), units),
  };
}

/** A guide for a place: its text with the dates of the place, and its calendar over 18 months. `trees` as in `writeGuide`. */
export function placeGuide(
  source: SheetSource,
  place: SheetPlace,
  year: CareYear,
  trees: TreeHand | null,
): PlaceGuideView {
  const { guide, asOf } = source;
  const units = unitsIn(place.country);
  const tasks = placeTasks(source, place, year);
  const only = sheetSpecies(source).length === 1;
  const reader = {
    form: null,
    stage: null,
    kept: null,
    oldNames: new Map(source.oldNames),
    units,
    year,
    species: only ? year.species : null,
    tasks: wholeTasks(tasks, asOf),
    yardSpecies: source.yardSpecies,
  };
  return {
    body: writeGuide(guide, source.text, reader, trees),
    tasks: tasks.map(task => taskView(task)),
    arrivals: arrivalViews(source, place, year),
    potOnly: potOnly(guide, year, units),
    withoutDates: withoutDates(guide, tasks, year),
  };
}
