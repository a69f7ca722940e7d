/** A guide as its pages show it: in general, for a place, and the arrival guide for one form and species. */

import { type OldNames, oldNames } from '../../../core/addresses/earlierParts.ts';
import type { CareTask } from '../../../core/care/calendar.ts';
import type { CareYear } from '../../../core/care/careYear.ts';
import { guideCalendar } from '../../../core/care/guideCalendar.ts';
import { everyPart } from '../../../core/care/guideHeadings.ts';
import { readersUnitFirst, type UnitChoice } from '../../../core/care/guideMeasures.ts';
import { winterProtection } from '../../../core/care/protection.ts';
import { tasksOfGuide } from '../../../core/care/taskTable.ts';
import type { Catalogue } from '../../../core/catalogue.ts';
import type { Day } from '../../../core/days.ts';
import type { Form } from '../../../core/records/common.ts';
import type { Guide } from '../../../core/records/guide.ts';
import type { Place } from '../../../core/records/place.ts';
import type { Species } from '../../../core/records/species.ts';
import { type RenderedGuide, renderGuide } from '../../../markdown/guideParts.ts';
import { guidePath } from '../../addresses/guidePaths.ts';
import { memoize } from '../../memo.ts';
import { unitsIn } from '../../words/units.ts';
import { speciesName } from '../stock/stock.ts';
import { type ArrivalViews, arrivalViews } from './arrivalViews.ts';
import { leadingSpecies, speciesOf } from './guideSubject.ts';
import { reasonsInWords, type TaskView, taskInUnits, taskView } from './taskView.ts';

type Link = (path: string) => string;

function oldNamesOf({ earlierParts }: Pick<Catalogue, 'earlierParts'>, guide: Guide): OldNames {
  const path = guidePath(guide.id);
  const earlier = earlierParts.get(path);
  return oldNames(earlier, path, earlier === undefined ? new Set() : everyPart(guide));
}

/** Parts that links of before name and that are no heading of the general guide: on another page, or in what stands below the text. */
export function movedParts(
  all: Pick<Catalogue, 'earlierParts'>,
  guide: Guide,
  { headings }: Pick<RenderedGuide, 'headings'>,
): OldNames['elsewhere'] {
  const { here, elsewhere } = oldNamesOf(all, guide);
  const below = [...here].filter(([part]) => !headings.some(({ id }) => id === part));
  return [
    ...elsewhere,
    ...below.flatMap(([part, names]) => names.map(name => ({ name, to: `${guidePath(guide.id)}#${part}` }))),
  ];
}

const anyone = { year: null, species: null, form: null, stage: null, kept: null, tasks: [] };

/** A guide for any reader, in the units of the yard's own country. */
export function generalGuide(all: Catalogue, guide: Guide, link: Link): RenderedGuide {
  const leading = leadingSpecies(all, guide);
  return renderGuide(guide, {
    ...anyone,
    oldNames: oldNamesOf(all, guide).here,
    units: unitsIn(all.home.country),
    yardSpecies: leading === null ? all.species : leadingFirst(all, leading),
    link,
  });
}

/** The same for a reader who has bought one form of one species. */
export function formGuide(
  all: Catalogue,
  guide: Guide,
  form: Form,
  species: Species,
  link: Link,
): RenderedGuide {
  return renderGuide(guide, {
    ...anyone,
    oldNames: oldNamesOf(all, guide).here,
    units: unitsIn(all.home.country),
    species,
    form,
    yardSpecies: all.species,
    link,
  });
}

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
  { asOf }: Pick<Catalogue, 'asOf'>,
  guide: Guide,
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

/** The species whose dates are given comes first, so that its cautions do. */
function leadingFirst({ species }: Catalogue, leading: Species): Species[] {
  const isLeading = ({ id }: Species) => id === leading.id;
  return [...species.filter(isLeading), ...species.filter(one => !isLeading(one))];
}

function withoutDates(guide: Guide, tasks: readonly CareTask[], year: CareYear): string | null {
  if (guide.kind === 'arrival' || tasks.length > 0) return null;
  return tasksOfGuide[guide.kind].length === 0
    ? 'This work hangs on how far the branch has come and not on the calendar of a place, so there are no dates to give.'
    : `Nothing in this guide has to be done by a date in ${year.placeName}.`;
}

const groundGuides: readonly Guide['kind'][] = ['overwintering-ground', 'establishing'];

function potOnly(
  { kind }: Guide,
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

/** A guide for a place: its text with the dates of the place, and its calendar over 18 months. */
export function placeGuide(
  all: Catalogue,
  guide: Guide,
  place: Place,
  year: CareYear,
  link: Link,
): PlaceGuideView {
  const tasks = placeTasks(all, guide, place, year);
  const only = speciesOf(all, guide).length === 1;
  const body = renderGuide(guide, {
    ...anyone,
    oldNames: oldNamesOf(all, guide).here,
    units: unitsIn(place.country),
    year,
    species: only ? year.species : null,
    tasks: wholeTasks(tasks, all.asOf),
    yardSpecies: leadingFirst(all, year.species),
    link,
  });
  return {
    body,
    tasks: tasks.map(task => taskView(task)),
    arrivals: arrivalViews(all, guide, place, year),
    potOnly: potOnly(guide, year, unitsIn(place.country)),
    withoutDates: withoutDates(guide, tasks, year),
  };
}
