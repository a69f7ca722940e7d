/** How much of a crop the weather can spoil, from next to nothing to most of it. Apart from the schemas, so that a browser need not load those. */
export const rainLosses = ['sound', 'some-loss', 'heavy-loss'] as const;
export type RainLoss = (typeof rainLosses)[number];
