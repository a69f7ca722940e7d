/** The forms a tree is sold in. Apart from the schemas of records, so that pages can use the list without them. */

export const forms = ['leafed-pot', 'dormant-pot', 'bare-root'] as const;
export type Form = (typeof forms)[number];
