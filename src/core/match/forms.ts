/** Which form of sale suits a buyer in a place on a day. */
import { growsOnLate } from '../climate/placeClass.ts';
import type { Form, Reason } from '../records/common.ts';
import type { Species } from '../records/species.ts';
import type { FormAdvice, FormFit, MatchContext } from './answers.ts';
import { type BuyingSeason, buyingSeason } from './buyingSeason.ts';
import type { PlaceOutlook } from './placeOutlook.ts';
import { doyInWords, reasonFrom } from './words.ts';

const practice = (text: string): Reason => ({ text, standing: 'practice' });

const noLeavesNeeded = practice(
  'This late in a short season a tree needs no leaves: it would only have to drop them again. Keep it asleep until spring.',
);
const leavesPreferred = practice('Where the season is long, a tree with leaves grows on at once.');
const wakes = practice(
  'A sleeping tree starts to grow within one to two weeks of coming into the warm; that is right, not a fault.',
);
const tooLateInLeaf = practice('A tree in leaf would meet the freezes before it has hardened.');
const rootsIn = practice('There is time to root in before the first freeze.');
const growingBareRoot = practice(
  'Bare-root trees travel and are planted asleep; this is the wrong half of the year.',
);

function safeText(season: BuyingSeason): Reason {
  const until =
    season.safeFromDoy === null ? 'the freezes are over' : `about ${doyInWords(season.safeFromDoy)}`;
  return practice(`Keep a tree in leaf under cover on cold nights until ${until}.`);
}

/** A bare-root tree that cannot be planted yet must keep that long in its wrap. */
function bareRootAdvice(species: Species, { stage, daysToPlanting }: BuyingSeason): FormAdvice {
  const keeps = species.bareRootKeepsDays;
  if (stage === 'planting') {
    return {
      form: 'bare-root',
      fit: 'best',
      because: [practice('These are the weeks to plant dormant trees.')],
    };
  }
  if (stage === 'growing' || stage === 'spring') {
    return { form: 'bare-root', fit: 'poor', because: [growingBareRoot] };
  }
  const weeks = Math.ceil(daysToPlanting / 7);
  const enough = daysToPlanting <= keeps.value;
  const text = `Planting time is about ${weeks} ${weeks === 1 ? 'week' : 'weeks'} off, and bare roots keep ${Math.round(keeps.value)} days in damp wrap${enough ? '' : ': pot it up, or let us send it later'}.`;
  return { form: 'bare-root', fit: enough ? 'fine' : 'poor', because: [reasonFrom(text, keeps)] };
}

type Advice = readonly [FormFit, Reason[]];

/** Advice about the leafed and the dormant pot, where the season is short or the summer has no heat to spare. */
function shortSeason(season: BuyingSeason): { leafed: Advice; dormant: Advice } {
  switch (season.stage) {
    case 'growing':
      return { leafed: ['best', [rootsIn]], dormant: ['fine', [wakes]] };
    case 'spring':
      return {
        leafed: ['fine', [safeText(season)]],
        dormant: ['best', [practice('It wakes with your spring.')]],
      };
    case 'late':
    case 'winter':
    case 'planting':
      return { leafed: ['poor', [tooLateInLeaf]], dormant: ['best', [noLeavesNeeded]] };
  }
}

function longSeason(season: BuyingSeason, freezesRarely: boolean): { leafed: Advice; dormant: Advice } {
  const wintry = season.stage === 'winter' || season.stage === 'planting';
  if (wintry && !freezesRarely) {
    return { leafed: ['poor', [tooLateInLeaf, safeText(season)]], dormant: ['best', [wakes]] };
  }
  if (season.stage === 'spring') return { leafed: ['fine', [safeText(season)]], dormant: ['best', [wakes]] };
  return { leafed: ['best', [leavesPreferred]], dormant: ['fine', [wakes]] };
}

const fitOrder: Readonly<Record<FormFit, number>> = { best: 0, fine: 1, poor: 2 };

/** All three forms, best first. */
export function formAdvice(
  place: PlaceOutlook,
  species: Species,
  { asOf }: Pick<MatchContext, 'asOf'>,
): FormAdvice[] {
  const season = buyingSeason(place, asOf);
  // There a pot is stored, and leaves would only have to fall.
  const winterIsHard = place.class.winter === 'frozen' || place.class.winter === 'cold';
  const freezesRarely = place.class.winter === 'mild' || place.class.winter === 'frost-free';
  const { leafed, dormant } =
    growsOnLate(place.class) && !winterIsHard ? longSeason(season, freezesRarely) : shortSeason(season);
  const advice = (form: Form, [fit, because]: Advice): FormAdvice => ({ form, fit, because });
  return [advice('leafed-pot', leafed), advice('dormant-pot', dormant), bareRootAdvice(species, season)].sort(
    (a, b) => fitOrder[a.fit] - fitOrder[b.fit],
  );
}
