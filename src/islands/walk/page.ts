/** The walk on the phone. Everything typed is kept on the device as it is typed, so that a flat battery costs nothing. */

import { day as asDay, type Day, parseDay } from '../../core/days.ts';
import {
  type BenchLot,
  dayQuestion,
  type Entry,
  questionsOf,
  type TypedColumn,
} from '../../core/walking/entry.ts';
import { lotsSeen, newFileAddress, walkCsv } from '../../core/walking/walkCsv.ts';
import type { WalkFile } from '../../site/pages/walk/benchLots.ts';
import { type KeptWalk, keepWalk, keptWalk } from './kept.ts';
import { clearPhotos, hasPhoto, keepPhoto, photosOf } from './photos.ts';

const frame = document.querySelector<HTMLElement>('[data-walk]')!;
const part = <T extends HTMLElement = HTMLElement>(name: string) => frame.querySelector<T>(`[data-${name}]`)!;
const form = part<HTMLFormElement>('lot');
const status = part('status');
const dayBox = frame.querySelector<HTMLInputElement>('#day')!;
const photoBox = frame.querySelector<HTMLInputElement>('#photo')!;

let file: WalkFile;
let walk: KeptWalk;
let at = 0;

const fields = [...form.querySelectorAll<HTMLElement>('[data-field]')];
const columnOf = (field: HTMLElement) => field.dataset.field as TypedColumn;
const lotHere = (): BenchLot => file.lots[at]!;
const entryOf = ({ id }: BenchLot): Entry => walk.entries[id] ?? {};

function deviceDay(): Day {
  const now = new Date();
  const two = (value: number) => String(value).padStart(2, '0');
  return asDay(`${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`);
}

function keep(): void {
  status.textContent = keepWalk(walk)
    ? ''
    : 'This browser keeps nothing for this page: save the file before you leave it.';
}

/** Decimal commas and a minus of any kind are typed on phones. */
const plain = (text: string) => text.trim().replace(',', '.');

function type(column: TypedColumn, text: string): void {
  const lot = lotHere();
  const { [column]: _old, ...rest } = entryOf(lot);
  const typed = column === 'note' ? text : plain(text);
  walk.entries[lot.id] = typed === '' ? rest : { ...rest, [column]: typed };
  keep();
  showQuestions();
  showEnd();
}

function showQuestions(): void {
  const lot = lotHere();
  part('questions').replaceChildren(
    ...questionsOf(lot, entryOf(lot)).map(text =>
      Object.assign(document.createElement('li'), { textContent: text }),
    ),
  );
}

function showSeen(field: HTMLElement, lot: BenchLot): void {
  const column = columnOf(field);
  const seen = column === 'left' ? { text: String(lot.left), on: lot.countedOn } : lot.seen[column];
  const output = field.querySelector('output');
  if (output === null) return;
  output.textContent =
    seen === undefined ? '' : seen.on === null ? `${seen.text} raised` : `${seen.text} on ${seen.on}`;
}

function showField(field: HTMLElement, entry: Entry): void {
  const value = entry[columnOf(field)] ?? '';
  const input = field.querySelector('input');
  if (input) input.value = value;
  for (const key of field.querySelectorAll<HTMLElement>('[data-word]'))
    key.setAttribute('aria-pressed', String(key.dataset.word === value));
}

async function showPhoto({ id }: BenchLot): Promise<void> {
  const kept = await hasPhoto(id);
  if (lotHere().id === id) part('photo').textContent = kept ? 'One is kept for this lot.' : '';
}

function showLot(): void {
  const lot = lotHere();
  const entry = entryOf(lot);
  part('place').textContent = `${at + 1} of ${file.lots.length}`;
  part('name').textContent = `${lot.id}, ${lot.name}`;
  for (const field of fields) {
    showField(field, entry);
    showSeen(field, lot);
  }
  photoBox.value = '';
  void showPhoto(lot);
  showQuestions();
}

function goTo(index: number): void {
  at = (index + file.lots.length) % file.lots.length;
  showLot();
  form.querySelector('h2')?.focus({ preventScroll: true });
  form.scrollIntoView({ block: 'start' });
}

/** The entries of a walk in the order in which the lots stand; of lots that are gone since, behind them. */
function inOrder(): Map<string, Entry> {
  const known = file.lots.flatMap(({ id }) => (walk.entries[id] ? [[id, walk.entries[id]] as const] : []));
  const ids = new Set(known.map(([id]) => id));
  return new Map([...known, ...Object.entries(walk.entries).filter(([id]) => !ids.has(id))]);
}

const fileName = () => `${walk.day}.csv`;

function showEnd(): void {
  const entries = inOrder();
  const seen = lotsSeen(entries);
  // Nothing is asked about a lot that nobody has looked at.
  const open = file.lots.filter(
    lot => walk.entries[lot.id] !== undefined && questionsOf(lot, entryOf(lot)).length > 0,
  );
  part('summary').textContent =
    `${seen} of ${file.lots.length} lots looked at.` +
    (open.length > 0 ? ` Still asked about: ${open.map(({ id }) => id).join(', ')}.` : '');
  const question = dayQuestion(walk.day, file.made, file.lastWalk);
  part('day-question').hidden = question === null;
  part('day-question').textContent = question ?? '';
  dayBox.value = walk.day;
  const text = walkCsv(entries);
  const save = part<HTMLAnchorElement>('save');
  URL.revokeObjectURL(save.href);
  save.href = URL.createObjectURL(new Blob([text], { type: 'text/csv' }));
  save.download = fileName();
  const newFile = part<HTMLAnchorElement>('new-file');
  const address = file.newFile === null ? null : newFileAddress(file.newFile, fileName(), text);
  newFile.hidden = seen === 0 || address === null;
  if (address !== null) Object.assign(newFile, { href: address, target: '_blank', rel: 'noopener' });
  part('end').textContent =
    file.newFile !== null && address === null
      ? 'This walk is too long for the form of your host: share or save the file, and add it to content/walks there.'
      : '';
}

async function filesToShare(): Promise<File[]> {
  const photos = (await photosOf()).map(
    ({ lot, picture }) =>
      new File([picture], `${lot}-${walk.day}.jpg`, { type: picture.type || 'image/jpeg' }),
  );
  return [new File([walkCsv(inOrder())], fileName(), { type: 'text/csv' }), ...photos];
}

async function share(): Promise<void> {
  const files = await filesToShare();
  const shared = navigator.canShare({ files }) ? files : files.slice(0, 1);
  // A visitor who closes the sheet has changed their mind, which is no fault.
  await navigator.share({ files: shared, title: fileName() }).catch(() => undefined);
}

function step(field: HTMLElement, by: number): void {
  const column = columnOf(field);
  const from = entryOf(lotHere())[column] ?? (column === 'left' ? String(lotHere().left) : '0');
  type(column, String(Math.max(0, (Number.parseInt(from, 10) || 0) + by)));
  showField(field, entryOf(lotHere()));
}

function listen(): void {
  form.addEventListener('submit', event => {
    event.preventDefault();
    goTo(at + 1);
  });
  form.addEventListener('click', event => {
    const key = (event.target as Element).closest<HTMLElement>('button');
    const field = key?.closest<HTMLElement>('[data-field]');
    if (!key) return;
    if (key.dataset.turn) goTo(at + Number(key.dataset.turn));
    if (!field) return;
    if (key.dataset.step) step(field, Number(key.dataset.step));
    if (key.dataset.word) {
      type(columnOf(field), key.getAttribute('aria-pressed') === 'true' ? '' : key.dataset.word);
      showField(field, entryOf(lotHere()));
    }
  });
  form.addEventListener('input', event => {
    const input = event.target as HTMLInputElement;
    const field = input.closest<HTMLElement>('[data-field]');
    if (field) type(columnOf(field), input.value);
  });
  photoBox.addEventListener('change', async () => {
    const [picture] = photoBox.files ?? [];
    const lot = lotHere();
    if (!picture) return;
    part('photo').textContent = (await keepPhoto(lot.id, picture))
      ? 'One is kept for this lot.'
      : 'This browser cannot keep photographs: take it with the camera instead.';
  });
  dayBox.addEventListener('change', () => {
    const day = parseDay(dayBox.value);
    if (day !== null) walk.day = day;
    keep();
    showEnd();
  });
  part('share').addEventListener('click', () => void share());
  part('clear').addEventListener('click', () => {
    if (!confirm('Start a new walk? What was typed in this one goes, so save it first.')) return;
    walk = { day: deviceDay(), entries: {} };
    void clearPhotos();
    keep();
    goTo(0);
    showEnd();
  });
}

function listLots(): void {
  part('lots').replaceChildren(
    ...file.lots.map((lot, index) => {
      const item = document.createElement('li');
      const key = Object.assign(document.createElement('button'), {
        type: 'button',
        textContent: `${lot.id}, ${lot.name}`,
      });
      key.addEventListener('click', () => goTo(index));
      item.append(key);
      return item;
    }),
  );
}

async function start(): Promise<void> {
  const answer = await fetch(frame.dataset.walk!);
  if (!answer.ok) throw new Error(String(answer.status));
  file = await answer.json();
  walk = keptWalk() ?? { day: deviceDay(), entries: {} };
  frame.hidden = false;
  if (file.lots.length === 0) {
    form.hidden = true;
    status.textContent = 'There are no lots to look at.';
    return;
  }
  part('share').hidden = !('canShare' in navigator);
  listen();
  listLots();
  // On with the first lot that was not looked at.
  const next = file.lots.findIndex(({ id }) => walk.entries[id] === undefined);
  at = Math.max(0, next);
  showLot();
  showEnd();
}

start().catch(() => {
  frame.hidden = false;
  form.hidden = true;
  status.textContent =
    'The lots could not be loaded. Open this page once with a network; from then on it works without.';
});

if ('serviceWorker' in navigator)
  void navigator.serviceWorker.register(frame.dataset.worker!).catch(() => undefined);
