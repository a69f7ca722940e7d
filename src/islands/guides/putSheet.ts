/** Puts the sheet of a guide for a town in the place of the built one, and back. */

import { href } from '../../href.ts';
import { placeGuidePath } from '../../site/addresses/guidePaths.ts';
import type { SheetPlace, SheetSource } from '../../site/pages/guides/sheetSource.ts';
import type { ChosenTown } from '../myPlace/choice.ts';
import { type SheetWeather, sheetYear, townCalendars, townSheet } from './townSheet.ts';

const sheet = document.querySelector<HTMLElement>('.guide-sheet');
const built = [...(sheet?.childNodes ?? [])];
/** What else on the page names the place. */
const others = document.querySelector('#others');
const othersWords = others?.textContent ?? '';
const title = document.title;
let files: string[] = [];

/** A town's name as the name of a file has it: letters and digits. */
function plainName(town: string): string {
  const letters = town.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
  return letters.replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '') || 'town';
}

/** Stable while the town stays where it is. */
const placeIdOf = ({ lat, lon, heightM }: ChosenTown) =>
  ['at', lat.toFixed(2), lon.toFixed(2), heightM].join('.');

/** The calendar files of the sheet, held by the browser itself. */
function linkCalendars(body: HTMLElement, calendars: ReturnType<typeof townCalendars>, town: string): void {
  for (const { path, name, text } of calendars) {
    for (const link of body.querySelectorAll<HTMLAnchorElement>('a[type="text/calendar"]')) {
      if (link.getAttribute('href') !== href(path)) continue;
      const address = URL.createObjectURL(new Blob([text], { type: 'text/calendar' }));
      files.push(address);
      link.href = address;
      link.download = `${name}-${plainName(town)}.ics`;
    }
  }
}

function rename(from: string, to: string): void {
  if (others) others.textContent = othersWords.replace(from, to);
  document.title = title.replace(from, to);
}

function put(nodes: readonly Node[], line: Element): void {
  if (sheet === null) return;
  sheet.replaceChildren(...nodes);
  // The line of the page stays: what it offers goes on working.
  const place = sheet.querySelector('[data-guide-line]') ?? sheet.querySelector('h1');
  if (place !== line) place?.after(line);
}

/** Puts the built sheet back. */
export function putBack(line: Element): void {
  for (const address of files) URL.revokeObjectURL(address);
  files = [];
  put(built, line);
  if (others) others.textContent = othersWords;
  document.title = title;
}

/** Puts the sheet of a town in place. `like` is the reference place whose page this is. */
export function putTown(
  source: SheetSource,
  town: ChosenTown,
  like: { readonly id: string; readonly name: string },
  weather: SheetWeather,
  line: Element,
): void {
  if (sheet === null) return;
  const place: SheetPlace = {
    id: like.id,
    name: town.name,
    where: town.where,
    country: town.country,
    hasPage: false,
  };
  const year = sheetYear(source, place, weather);
  const parsed = new DOMParser().parseFromString(townSheet(source, place, year, href), 'text/html');
  const url = new URL(href(placeGuidePath(source.guide.id, like.id)), location.href).href;
  linkCalendars(
    parsed.body,
    townCalendars(source, place, year, { placeId: placeIdOf(town), url }),
    town.name,
  );
  put([...parsed.body.childNodes], line);
  rename(like.name.split(',')[0] ?? '', town.name);
}
