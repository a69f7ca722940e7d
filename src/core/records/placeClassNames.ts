/** Names of the classes of places. Apart from the schemas, so that what runs in a browser need not load them. */

/** The four axes that describe a place; every place has exactly one word of each. */
export const winterClasses = ['frozen', 'cold', 'cool', 'mild', 'frost-free'] as const;
export type WinterClass = (typeof winterClasses)[number];
export const seasonClasses = ['short', 'middle', 'long'] as const;
export type SeasonClass = (typeof seasonClasses)[number];
export const summerClasses = ['cool', 'moderate', 'warm', 'hot', 'very-hot'] as const;
export type SummerClass = (typeof summerClasses)[number];
export const airClasses = ['dry', 'fair', 'humid'] as const;
export type AirClass = (typeof airClasses)[number];
