/** What a search can be narrowed and ordered by. Shared by the page, its script and the file they read. */

/** In the order in which they stand on the page. */
export const searchGroups = [
  'species',
  'flavor',
  'ripening',
  'form',
  'readiness',
  'price',
  'scarcity',
  'size',
  'place',
] as const;
export type SearchGroup = (typeof searchGroups)[number];

/** Groups that a single tree on offer answers, not its cultivar: what is chosen in all of them must be true of the same one. */
export const offerGroups = ['form', 'readiness', 'price', 'size'] as const satisfies readonly SearchGroup[];
export type OfferGroup = (typeof offerGroups)[number];

export const searchOrders = ['match', 'name', 'price', 'readiness', 'ripening'] as const;
export type SearchOrder = (typeof searchOrders)[number];

/** How a form of a lot stands; `sold`: the cultivar has no lot that is not sold out. */
export const searchStates = ['ready', 'opens', 'look', 'blocked', 'sold'] as const;
export type SearchState = (typeof searchStates)[number];

/** Whether what a tree has fits what was chosen: a price is the most somebody wants to pay, all else has to be the same. */
export function fits(group: SearchGroup, own: string, chosen: string): boolean {
  if (group !== 'price') return own === chosen;
  return own !== '' && Number(own) <= Number(chosen);
}
