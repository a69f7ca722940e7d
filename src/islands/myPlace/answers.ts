/** Fetches what is said about the visitor's place; nothing leaves the device but the request for a file of this site. */

import type { OwnDates } from '../../core/match/ownFigures.ts';
import { href } from '../../href.ts';
import type { BestTree } from '../../site/data/best.ts';
import type { PlaceFile } from '../../site/data/file.ts';
import type { HomeFile } from '../../site/data/town.ts';
import type { TreesFile } from '../../site/data/trees.ts';
import type { SendingView, TravelView } from '../../site/pages/places/sending.ts';
import type { Verdict } from '../../site/words/verdict.ts';
import ownDatesUrl from '../ownPlace/verdictsApart.ts?worker&url';
import type { TownAnswer } from '../town/answer.ts';
import townUrl from '../town/answerApart.ts?worker&url';
import type { Choice, ChosenTown } from './choice.ts';

export interface PlaceAnswers {
  /** The verdict on a cultivar; null when nothing is said about it. */
  on(cultivar: string): Verdict | null;
  /** The cultivars that do best there, best first. */
  best: readonly BestTree[];
  travel: TravelView;
  /** Weeks of the coming year in which each form is sent there. */
  weeks: SendingView['table'];
  /** State or another division, and ISO 3166 code. */
  region: string;
  country: string;
  /** Page of the reference place. */
  path: string;
  /** How the visitor's own dates were used. */
  notes: readonly string[];
  /** What is said of a town beside; null for a reference place. */
  town: TownAnswer | null;
}

/** The dates given do not fit; told to the visitor field by field. */
export class DatesProblem extends Error {
  override name = 'DatesProblem';
  readonly problems: readonly { field: string; text: string }[];
  constructor(problems: readonly { field: string; text: string }[]) {
    super(problems.map(({ text }) => text).join(' '));
    this.problems = problems;
  }
}

async function fetched(path: string): Promise<unknown> {
  const answer = await fetch(href(path));
  if (!answer.ok) throw new Error(`${path}: ${answer.status}`);
  return answer.json();
}

const files = new Map<string, Promise<unknown>>();

/** A file of this site, asked for once: also where it is in the browser's cache, asking again costs a slow phone more than the answer. What fails is asked for again. */
export function fetchJson<T>(path: string): Promise<T> {
  let file = files.get(path);
  if (file === undefined) {
    file = fetched(path);
    files.set(path, file);
    file.catch(() => files.delete(path));
  }
  return file as Promise<T>;
}

/** Many cultivars are told the same, so each verdict is put together once. */
function fromFile(file: PlaceFile): PlaceAnswers['on'] {
  const verdicts = new Map<number, Verdict>();
  const toldAt = (indexes: readonly number[]) =>
    indexes.map(index => file.reasons[index]).filter(told => told !== undefined);
  return cultivar => {
    const at = file.cultivars[cultivar] ?? -1;
    const kind = file.kinds[at];
    if (kind === undefined) return null;
    const verdict = verdicts.get(at) ?? {
      ...kind,
      because: toldAt(kind.because),
      change: toldAt(kind.change),
    };
    verdicts.set(at, verdict);
    return verdict;
  };
}

/** By its address, as a file of its own: scripts bundled apart from each other load the same. */
export async function ownDatesCore(): Promise<typeof globalThis.leafdropVerdicts> {
  await import(/* @vite-ignore */ ownDatesUrl);
  return globalThis.leafdropVerdicts;
}

/** The same for towns. */
export async function townCore(): Promise<typeof globalThis.leafdropTown> {
  await import(/* @vite-ignore */ townUrl);
  return globalThis.leafdropTown;
}

/** The verdicts for own dates laid over a place. Throws a DatesProblem for dates that do not fit. */
function ownAnswers(
  own: OwnDates,
  basis: PlaceFile['basis'],
  trees: TreesFile,
  { ownVerdicts }: typeof globalThis.leafdropVerdicts,
) {
  const found = ownVerdicts(own, basis, trees);
  if (!found.ok) throw new DatesProblem(found.problems);
  const stay = `The weeks in which trees are sent stay those of ${basis.name}.`;
  return { verdicts: found.verdicts, best: found.best, notes: [...found.notes, stay] };
}

/** Page of a reference place. */
const pathOf = (place: string) => `/places/${place}/`;

async function loadTown(place: string, town: ChosenTown, own: OwnDates | null): Promise<PlaceAnswers> {
  const [trees, home, core] = await Promise.all([
    fetchJson<TreesFile>('/my-place/trees.json'),
    fetchJson<HomeFile>('/my-place/home.json'),
    townCore(),
  ]);
  const found = core.answerTown(town, trees, home);
  const { now: travel, table: weeks } = found.sending;
  const { region, country } = town;
  const told = { travel, weeks, region, country, path: pathOf(place), town: found };
  const { best } = found;
  if (own === null) return { ...told, best, on: cultivar => found.verdicts.get(cultivar) ?? null, notes: [] };
  const { verdicts, ...byDates } = ownAnswers(own, found.basis, trees, await ownDatesCore());
  return { ...told, ...byDates, on: cultivar => verdicts.get(cultivar) ?? null };
}

async function load(choice: Choice): Promise<PlaceAnswers> {
  const { town } = choice;
  if (town !== null) return loadTown(choice.place, town, choice.own);
  const file = await fetchJson<PlaceFile>(`/places/${choice.place}/verdicts.json`);
  const { travel, weeks, region, country, path } = file;
  const told = { travel, weeks, region, country, path, town: null };
  if (choice.own === null) return { ...told, best: file.best, on: fromFile(file), notes: [] };
  const [trees, core] = await Promise.all([fetchJson<TreesFile>('/my-place/trees.json'), ownDatesCore()]);
  const { verdicts, ...byDates } = ownAnswers(choice.own, file.basis, trees, core);
  return { ...told, ...byDates, on: cultivar => verdicts.get(cultivar) ?? null };
}

const whenIdle: (then: () => void) => void =
  'requestIdleCallback' in window
    ? then => requestIdleCallback(then)
    : // Safari has none.
      then => setTimeout(then, 50);

/** Gets the answer to own dates over a place ready in short turns, so that it comes at once when it is asked for. */
export async function rehearse(place: string): Promise<void> {
  const [{ basis }, trees, { rehearsal }] = await Promise.all([
    fetchJson<PlaceFile>(`/places/${place}/verdicts.json`),
    fetchJson<TreesFile>('/my-place/trees.json'),
    ownDatesCore(),
  ]);
  const turn = rehearsal(basis, trees);
  const next = () => {
    if (turn()) whenIdle(next);
  };
  whenIdle(next);
}

let last: { key: string; answers: Promise<PlaceAnswers> } | null = null;

/** The answers for a choice. Throws when they cannot be fetched, or a DatesProblem; a later call tries again. */
export function answersFor(choice: Choice): Promise<PlaceAnswers> {
  const key = JSON.stringify(
    choice.town === null
      ? [choice.place, choice.own]
      : [choice.town.figures, choice.town.lat, choice.town.name, choice.own],
  );
  // The place most like a town is found only when the town has been worked out.
  const led = (answers: Promise<PlaceAnswers>) =>
    answers.then(found => ({ ...found, path: pathOf(choice.place) }));
  if (last?.key === key) return led(last.answers);
  const answers = load(choice);
  last = { key, answers };
  answers.catch(() => {
    if (last?.answers === answers) last = null;
  });
  return led(answers);
}

let ahead = false;

/** Works out the answers for what a form says, in the next idle moment, so that they are there when the form is sent. */
export function workOutAhead(choiceNow: () => Choice): void {
  if (ahead) return;
  ahead = true;
  whenIdle(() => {
    ahead = false;
    void answersFor(choiceNow()).catch(() => {});
  });
}
