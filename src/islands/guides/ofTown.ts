/** Gets a guide ready for a town: its text, the weather of the town and the code that writes it, loaded when they are used. */

import { guideSheetPath } from '../../site/addresses/guidePaths.ts';
import type { SheetSource } from '../../site/pages/guides/sheetSource.ts';
import { fetchJson, ownDatesCore, townCore } from '../myPlace/answers.ts';
import type { Choice, ChosenTown } from '../myPlace/choice.ts';
import guideUrl from './putSheetApart.ts?worker&url';
import type { SheetWeather } from './townSheet.ts';

async function weatherOf(town: ChosenTown, { own }: Choice): Promise<SheetWeather> {
  const { townWeather } = await townCore();
  const { basis, ...weather } = townWeather(town);
  if (own === null) return weather;
  const { ownSheetWeather } = await ownDatesCore();
  return ownSheetWeather(own, basis) ?? weather;
}

/** What puts the guide into the page, given its line. `path` is that of the guide in general. Rejects when a file does not load. */
export async function guideOfTown(
  path: string,
  choice: Choice,
  town: ChosenTown,
): Promise<(line: Element) => void> {
  const id = path.split('/').at(-2) ?? '';
  const [source, weather] = await Promise.all([
    fetchJson<SheetSource>(guideSheetPath(id)),
    weatherOf(town, choice),
    import(/* @vite-ignore */ guideUrl),
  ]);
  const like = { id: choice.place, name: town.like.name };
  return line => globalThis.leafdropGuide.putTown(source, town, like, weather, line);
}
