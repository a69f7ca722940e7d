/** A care guide. File: content/guides/ID.md. */

import { z } from 'zod';
import { type Form, forms, id, text } from './common.ts';

export const guideKinds = [
  'arrival',
  'overwintering-pot',
  'overwintering-ground',
  'waking',
  'establishing',
  'growing-on',
  'propagation',
  'pruning',
] as const;
export type GuideKind = (typeof guideKinds)[number];

export const writtenGuide = z.strictObject({
  title: text('Title of the guide.', 100),
  kind: z.enum(guideKinds).describe('What the guide is about.'),
  summary: text('One or two sentences for lists and search.', 300),
  species: z
    .array(id('Id of a file in content/species.'))
    .describe('Species it is for; [] for all.')
    .optional(),
  forms: z.array(z.enum(forms)).describe('Forms of sale it is for; left out for all.').optional(),
});

export type WrittenGuide = z.infer<typeof writtenGuide>;

export interface Guide {
  id: string;
  title: string;
  kind: GuideKind;
  summary: string;
  /** Empty: all species. */
  species: string[];
  /** Empty: all forms. */
  forms: Form[];
  body: string;
  bodyLine: number;
}

/** A guide with defaults filled. */
export function normaliseGuide(
  id: string,
  written: WrittenGuide,
  body: { text: string; line: number },
): Guide {
  return {
    id,
    title: written.title,
    kind: written.kind,
    summary: written.summary,
    species: written.species ?? [],
    forms: written.forms ?? [],
    body: body.text,
    bodyLine: body.line,
  };
}
