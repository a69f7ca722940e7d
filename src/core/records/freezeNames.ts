/** The freezes that dates are given for. Apart from the schemas, so that what runs in a browser need not load them. */

export const freezeThresholds = ['36F', '32F', '28F', '24F', '20F'] as const;
export type FreezeThreshold = (typeof freezeThresholds)[number];
