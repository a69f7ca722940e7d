/** Every check, in the order of the manual. */

import type { Draft } from '../draft.ts';
import type { Problem } from '../problem.ts';
import { addressCodes } from './addressCodes.ts';
import { addressParts } from './addressParts.ts';
import { addressRecords } from './addressRecords.ts';
import { addressRows } from './addressRows.ts';
import { addressTargets } from './addressTargets.ts';
import { amountDecimals } from './amountDecimals.ts';
import { cartonSize } from './cartonSize.ts';
import type { Check } from './check.ts';
import { costsContainer } from './costsContainer.ts';
import { costsMissing } from './costsMissing.ts';
import { counts } from './counts.ts';
import { cultivarBodies } from './cultivarBodies.ts';
import { cultivarFlavor } from './cultivarFlavor.ts';
import { cultivarRipeSeen } from './cultivarRipeSeen.ts';
import { cultivarSpecies } from './cultivarSpecies.ts';
import { cultivarTrial, cultivarTrialPlace } from './cultivarTrial.ts';
import { deliveryAreas, deliveryRegion, deliveryRule } from './delivery.ts';
import { figureOrder } from './figureOrder.ts';
import { figurePair } from './figurePair.ts';
import { figureRange } from './figureRange.ts';
import { guideBodies } from './guideBodies.ts';
import { guideSpecies } from './guideSpecies.ts';
import { innerLinks } from './innerLinks.ts';
import { laterThanDay } from './laterThanDay.ts';
import { listedTwice } from './listedTwice.ts';
import { lotCultivar } from './lotCultivar.ts';
import { lotDates } from './lotDates.ts';
import { lotDuplicate } from './lotDuplicate.ts';
import { lotRetired } from './lotRetired.ts';
import { lotRootstock } from './lotRootstock.ts';
import { lotTwice } from './lotTwice.ts';
import { measures } from './measures.ts';
import { nameTwice } from './nameTwice.ts';
import { orders } from './orders.ts';
import { photoContents } from './photoContents.ts';
import { photos } from './photos.ts';
import { placeDaily } from './placeDaily.ts';
import { placeFigures } from './placeFigures.ts';
import { placeFreezeDays } from './placeFreezeDays.ts';
import { placeZone } from './placeZone.ts';
import { priceBase } from './priceBase.ts';
import { priceRung } from './priceRung.ts';
import { priceSpecies } from './priceSpecies.ts';
import { privateInPublic } from './privateInPublic.ts';
import { reserved } from './reserved.ts';
import { sendingByHand } from './sendingByHand.ts';
import { sendingLimits } from './sendingLimits.ts';
import { sendingWay } from './sendingWay.ts';
import { smallestMissing } from './smallestMissing.ts';
import { speciesBloom } from './speciesBloom.ts';
import { speciesHeat } from './speciesHeat.ts';
import { speciesPropagation } from './speciesPropagation.ts';
import { videoChapters } from './videoChapters.ts';
import { videoDescriptionLength } from './videoDescription.ts';
import { videoLink } from './videoLink.ts';
import { videoPart } from './videoPart.ts';
import { videoPartPlace } from './videoPartPlace.ts';
import { videoPlayers } from './videoPlayers.ts';
import { videoSameDay } from './videoSameDay.ts';
import { videoStart } from './videoStart.ts';
import { walkBeforeLot } from './walkBeforeLot.ts';
import { walkLater } from './walkLater.ts';
import { walkLot } from './walkLot.ts';
import { yardCurrency } from './yardCurrency.ts';
import { yardHome } from './yardHome.ts';
import { yardRounding } from './yardRounding.ts';
import { yardTimeZone } from './yardTimeZone.ts';

const checks: readonly Check[] = [
  listedTwice,
  amountDecimals,
  lotCultivar,
  lotDuplicate,
  lotDates,
  lotRootstock,
  lotRetired,
  laterThanDay,
  speciesPropagation,
  walkLot,
  walkBeforeLot,
  walkLater,
  counts,
  measures,
  lotTwice,
  cultivarRipeSeen,
  cultivarSpecies,
  cultivarFlavor,
  cultivarTrial,
  cultivarTrialPlace,
  nameTwice,
  speciesBloom,
  speciesHeat,
  figureOrder,
  figureRange,
  figurePair,
  yardHome,
  yardTimeZone,
  yardCurrency,
  yardRounding,
  sendingLimits,
  deliveryRule,
  deliveryAreas,
  deliveryRegion,
  sendingByHand,
  sendingWay,
  priceBase,
  priceSpecies,
  priceRung,
  smallestMissing,
  costsContainer,
  costsMissing,
  privateInPublic,
  orders,
  reserved,
  cartonSize,
  placeFigures,
  placeFreezeDays,
  placeDaily,
  placeZone,
  guideSpecies,
  videoLink,
  videoPart,
  videoPartPlace,
  videoStart,
  videoChapters,
  videoPlayers,
  videoSameDay,
  videoDescriptionLength,
  addressRows,
  addressCodes,
  addressRecords,
  addressTargets,
  addressParts,
  photos,
  photoContents,
  cultivarBodies,
  guideBodies,
  innerLinks,
];

export function allChecks(draft: Draft): Problem[] {
  return checks.flatMap(check => check(draft));
}
