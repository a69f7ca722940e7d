/** A town that was found, as a choice. */

import { differences, nearestClimate } from '../../core/match/nearestClimate.ts';
import { figuresInSpot, type GardenSpot, spotMoves } from '../../core/towns/gardenSpot.ts';
import { figuresAtHeight } from '../../core/towns/ownHeight.ts';
import { packedFigures, unpackedFigures } from '../../core/towns/townFigures.ts';
import type { TownRow } from '../../core/towns/townRow.ts';
import { temperatureInWords } from '../../core/units.ts';
import type { ClimatesFile } from '../../site/data/town.ts';
import { unitsIn } from '../../site/words/units.ts';
import { shortMonthDay } from '../../site/words/yearDays.ts';
import { answersFor, fetchJson } from '../myPlace/answers.ts';
import type { Choice, ChosenTown } from '../myPlace/choice.ts';
import type { TownAnswer } from './answer.ts';
import { heightInWords, whereabouts } from './find.ts';

type TownChoice =
  | { readonly ok: true; readonly town: ChosenTown; readonly notes: string[] }
  | { readonly ok: false; readonly text: string };

/** What a visitor knows of the garden beside the town it is in. */
export interface Garden {
  /** Elevation, m; null where it is that of the town. */
  readonly heightM: number | null;
  readonly spot: GardenSpot;
}

/** The garden as the stations stand: on open ground, at the elevation of the town. */
export const plainGarden: Garden = { heightM: null, spot: 'open' };

/** The town, at the elevation and in the spot of the garden. */
function chosenTown(row: TownRow, { heightM: ownM, spot }: Garden): TownChoice {
  const [name, region, country, lat, lon, townM, , packed] = row;
  if (packed === '') {
    return {
      ok: false,
      text: `No weather station is near enough to ${name} to speak for it. Choose from the list below the place most like yours.`,
    };
  }
  // Known only when the town has been worked out.
  const like = { name: '', differs: [] };
  const town: ChosenTown = {
    name,
    where: whereabouts(row),
    region,
    country,
    lat,
    lon,
    heightM: townM,
    figures: packed,
    like,
  };
  if (ownM === null && spot === 'open') return { ok: true, town, notes: [] };
  const moved = figuresAtHeight(unpackedFigures(packed), townM, ownM ?? townM);
  if (!moved.ok) return moved;
  const figures = packedFigures(figuresInSpot(moved.figures, spot));
  const notes =
    ownM === null
      ? []
      : [
          `Worked out for your own elevation of ${heightInWords(ownM)}; the middle of the town lies at ${heightInWords(townM)}.`,
        ];
  return { ok: true, town: { ...town, heightM: Math.round(ownM ?? townM), figures }, notes };
}

const spotWords: Readonly<Record<GardenSpot, string>> = {
  open: 'open ground',
  hollow: 'a cold hollow',
  wall: 'a place by a warm wall',
  city: 'a garden within a city',
};

const signed = (value: number) => `${Math.abs(value)} ${value < 0 ? 'colder' : 'warmer'}`;

/** By how much the spot moves what is said of the town. */
function spotNote(spot: GardenSpot, plain: TownAnswer, moved: TownAnswer): string {
  const { nightsC } = spotMoves[spot];
  const nights = signed(Math.round(nightsC * 1.8)).replace(' ', ` F (${Math.abs(nightsC)} C) `);
  const dates = [plain, moved].map(({ basis }) => basis.climate.freeze['32F'].answer.last.p50);
  const [was, is] = dates.map(date => (date === null ? 'none in most years' : shortMonthDay(date)));
  const colds = [plain, moved].map(({ basis }) => temperatureInWords(basis.climate.annualMinC.answer.mean));
  return `Taken for ${spotWords[spot]}: nights ${nights} than the stations around say. That moves the last freeze from ${was} to ${is}, and the coldest night from ${colds[0]} to ${colds[1]}. Gardens differ: dates of your own say more.`;
}

/** The whole choice: with the town goes the reference place most like it in climate. Rejects when a file does not load. */
export async function choiceOfTown(
  row: TownRow,
  garden: Garden,
): Promise<{ ok: true; choice: Choice } | { ok: false; text: string }> {
  const chosen = chosenTown(row, garden);
  if (!chosen.ok) return chosen;
  const { town, notes } = chosen;
  const { places } = await fetchJson<ClimatesFile>('/my-place/climates.json');
  const choice: Choice = {
    place: places[0]?.id ?? '',
    name: [town.name, town.where].filter(words => words !== '').join(', '),
    found: `elevation ${heightInWords(town.heightM)}`,
    warnings: [],
    notes,
    own: null,
    town,
    units: unitsIn(town.country),
  };
  const open = garden.spot === 'open' ? null : chosenTown(row, { ...garden, spot: 'open' });
  // Before the town itself, whose answers are then the last ones and kept.
  const plain = open?.ok ? (await answersFor({ ...choice, town: open.town })).town : null;
  const { town: answers } = await answersFor(choice);
  const like = answers && nearestClimate(answers.compared, places);
  if (answers === null || like === null) return { ok: false, text: 'This site has no reference places.' };
  const differs = differences(answers.compared, like.climate);
  const moved = plain === null ? [] : [spotNote(garden.spot, plain, answers)];
  return {
    ok: true,
    choice: {
      ...choice,
      place: like.id,
      notes: [...notes, ...moved],
      town: { ...town, like: { name: like.name, differs } },
    },
  };
}
