/** What would make a cultivar do better here. */
import type { Reason, RipeningClass } from '../records/common.ts';
import type { Species } from '../records/species.ts';
import { differenceInWords } from '../units.ts';
import type { RipeningVerdict, TreeAge, WetVerdict, WinterVerdict } from './answers.ts';
import type { PlaceOutlook } from './placeOutlook.ts';
import type { MatchedCultivar } from './subject.ts';
import {
  cropWords,
  modeled,
  ours,
  ripeningClassWords,
  ripeningOrder,
  ripeningWord,
  yearsOfTen,
} from './words.ts';

/** What a warm wall gives on the coldest nights, C. Standing: ours. */
const WALL_C = 3;

export function winterChanges(winter: Record<TreeAge, WinterVerdict>): Reason[] {
  const { marginC, care } = winter.established;
  const short = `it falls ${differenceInWords(-marginC)} short`;
  switch (care) {
    case 'store':
      return [ours(`Cold storage for the winter: ${short}, and no wrapping makes up for that.`)];
    case 'bury':
      return [
        ours(`Burying it, worth 14 to 22 F (8 to 12 C), or wintering it in a pot in cold storage: ${short}.`),
      ];
    case 'wrap': {
      const wall =
        marginC + WALL_C >= 0
          ? ` A warm wall, worth up to ${differenceInWords(WALL_C)}, may do instead.`
          : '';
      return [ours(`A cage of dry leaves, worth 5 to 9 F (3 to 5 C): ${short}.${wall}`)];
    }
    case 'mulch':
    case 'nothing':
      return winter['first-winter'].marginC < 0
        ? [ours('Its first winters spent in a pot in cold storage: young wood stands less than old.')]
        : [];
  }
}

/** The latest class of the species, earlier than this one, that ripens reliably. */
function earlierClass(place: PlaceOutlook, species: Species, ownClass: RipeningClass): Reason[] {
  const classes = place.species.get(species.id)?.crops.main;
  if (!classes) return [];
  const own = ripeningOrder[ownClass];
  let best: RipeningClass | null = null;
  for (const [name, { outdoors }] of classes) {
    const earlier = ripeningOrder[name] < own && ripeningWord(outdoors.share) === 'reliable';
    if (earlier && (best === null || ripeningOrder[name] > ripeningOrder[best])) best = name;
  }
  if (best === null) return [];
  return [modeled(`A cultivar of the class "${ripeningClassWords[best]}" ripens reliably here.`)];
}

/** Changes for the crop that decides; nothing where none sets fruit or it is reliable. */
export function ripeningChanges(
  place: PlaceOutlook,
  species: Species,
  own: RipeningClass,
  best: RipeningVerdict | null,
): Reason[] {
  if (best === null || best.word === 'reliable') return [];
  const helped =
    best.headStart.word === best.word
      ? []
      : [
          modeled(
            `A pot woken four weeks early under cover and moved out after the freezes: its ${cropWords[best.crop]} then ripens ${yearsOfTen(best.headStart.share)}.`,
          ),
        ];
  return [...helped, ...earlierClass(place, species, own)];
}

const waspChange = ours('Fig wasps near you, which live only where wild or planted caprifigs grow.');
const partnerChange = ours('A second cultivar of the same species in flower at the same time, as partner.');
const coverChange = ours('A cover against rain while it ripens.');

/** Changes to the setting of the fruit and the wet, most telling first. */
export function fruitChanges(
  cultivar: MatchedCultivar,
  crops: readonly { readonly verdict: RipeningVerdict }[],
  wet: WetVerdict,
): Reason[] {
  const changes: Reason[] = [];
  if (crops.some(({ verdict }) => verdict.blocked === 'needs-wasp')) changes.push(waspChange);
  if (cultivar.pollination === 'partner') changes.push(partnerChange);
  if (wet.level === 'heavy-loss') changes.push(coverChange);
  return changes;
}
