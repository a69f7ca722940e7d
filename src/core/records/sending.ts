/** When and how parcels leave the yard: the part `sending` of content/yard.yaml. */

import { z } from 'zod';
import type { Day } from '../days.ts';
import { fahrenheitToCelsius, inchesToCm } from '../units.ts';
import { date, type Form, forms, oneUnit, text } from './common.ts';

/** A plain corrugated carton, or one with a liner of insulation. A liner buys hours, not days. */
export const linings = ['plain', 'lined'] as const;
export type Lining = (typeof linings)[number];

/** Bounds of what can be typed, F; anything beyond them is a slip or another unit. */
interface Bounds {
  coldestF: readonly [number, number];
  hottestF: readonly [number, number];
}

const boundsOf: Readonly<Record<Form, Bounds>> = {
  'leafed-pot': { coldestF: [32, 60], hottestF: [75, 110] },
  'dormant-pot': { coldestF: [0, 45], hottestF: [55, 100] },
  'bare-root': { coldestF: [0, 45], hottestF: [55, 100] },
};

const inC = ([low, high]: readonly [number, number]) =>
  [Math.floor(fahrenheitToCelsius(low)), Math.ceil(fahrenheitToCelsius(high))] as const;

function limits({ coldestF, hottestF }: Bounds) {
  const between = ([low, high]: readonly [number, number]) => z.number().min(low).max(high).optional();
  return z
    .strictObject({
      coldest_f: between(coldestF),
      coldest_c: between(inC(coldestF)).describe('A parcel must not meet a night this cold, at either end.'),
      hottest_f: between(hottestF),
      hottest_c: between(inC(hottestF)).describe('A parcel must not meet a day this hot, at either end.'),
    })
    .check(oneUnit('coldest_f', 'coldest_c'))
    .check(oneUnit('hottest_f', 'hottest_c'));
}

function perCarton(form: Form) {
  return z
    .strictObject({
      plain: limits(boundsOf[form]).optional().describe('In a plain carton.'),
      lined: limits(boundsOf[form])
        .optional()
        .describe('In a carton with a liner; leave it out when you have none.'),
    })
    .optional();
}

const byHand = z.strictObject({
  from: date('First day.'),
  to: date('Last day.'),
  state: z
    .enum(['open', 'closed'])
    .describe('open: parcels leave whatever the model says; closed: none leave.'),
  forms: z.array(z.enum(forms)).min(1).optional().describe('Only these forms; all when left out.'),
  why: text('Why, in words customers read.', 200),
});

export const writtenSending = z.strictObject({
  weekdays: z
    .array(z.enum(['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun']))
    .min(1)
    .describe('Days parcels leave the yard.'),
  transit_days: z.int().min(1).max(14).describe('Days a parcel is on its way.'),
  coldest_f: z.number().min(-40).max(60).optional(),
  coldest_c: z
    .number()
    .min(-40)
    .max(16)
    .optional()
    .describe('No form leaves when a colder night is likely, whatever its own limits say.'),
  hottest_f: z.number().min(60).max(130).optional(),
  hottest_c: z
    .number()
    .min(15)
    .max(55)
    .optional()
    .describe('No form leaves when a hotter day is likely, whatever its own limits say.'),
  limits: z
    .strictObject({
      'leafed-pot': perCarton('leafed-pot').describe('Trees in leaf.'),
      'dormant-pot': perCarton('dormant-pot').describe('Dormant trees in their pots.'),
      'bare-root': perCarton('bare-root').describe('Dormant trees with bare roots.'),
    })
    .optional()
    .describe('What each form may meet on its way; what is left out is filled with our careful figures.'),
  by_hand: z
    .array(byHand)
    .optional()
    .describe('Weeks you open or close yourself, such as holidays of the carrier or a mild spell.'),
  cut_back_in: z.number().min(6).max(96).optional(),
  cut_back_cm: z
    .number()
    .min(15)
    .max(244)
    .optional()
    .describe('Height trees are cut back to for the carton.'),
  not_to: z
    .array(
      z.strictObject({
        region: text('State, province or country.', 60),
        why: text('Why, in plain words.', 200),
        checked: date('When this was last checked with the authority.'),
      }),
    )
    .describe('Where the yard does not send.'),
});

export type WrittenSending = z.infer<typeof writtenSending>;
type WrittenLimits = z.infer<ReturnType<typeof limits>>;

/** What a parcel may meet on its way, C. A night at or below the one, or a day at or above the other, breaks it. */
export interface TripLimits {
  coldestC: number;
  hottestC: number;
}

/** A span of days that the grower has opened or closed. */
export interface ByHand {
  from: Day;
  to: Day;
  state: 'open' | 'closed';
  forms: readonly Form[];
  why: string;
}

export interface SendingRules {
  /** ISO weekdays, 1 Monday to 7 Sunday. */
  weekdays: number[];
  transitDays: number;
  /** Per form and carton; `lined` is null where the yard has no such carton. */
  limits: Record<Form, { plain: TripLimits; lined: TripLimits | null }>;
  byHand: ByHand[];
  cutBackCm: number;
  notTo: { region: string; why: string; checked: Day }[];
}

const fahrenheit = (coldestF: number, hottestF: number): TripLimits => ({
  coldestC: fahrenheitToCelsius(coldestF),
  hottestC: fahrenheitToCelsius(hottestF),
});

/**
 * Careful limits where the yard gives none. Standing: ours; no carrier publishes a limit, and no trial stands behind these.
 * Leaves are damaged at 30 F. Dormant wood stands more, but warmth above 80 F starts a tree. Wet bare roots cool through
 * within hours in a plain carton, so they get the most room; a liner, which slows that to half, brings them to the limit of a pot.
 */
const carefulLimits: Readonly<Record<Form, Readonly<Record<Lining, TripLimits>>>> = {
  'leafed-pot': { plain: fahrenheit(35, 95), lined: fahrenheit(35, 95) },
  'dormant-pot': { plain: fahrenheit(20, 80), lined: fahrenheit(20, 80) },
  'bare-root': { plain: fahrenheit(28, 80), lined: fahrenheit(20, 80) },
};

/** Trees are cut back to about 30 in for sending. Common practice, no source. */
export const defaultCutBackCm = inchesToCm(30);

const weekdayNumbers = { mon: 1, tue: 2, wed: 3, thu: 4, fri: 5, sat: 6, sun: 7 } as const;

function toC(inC: number | undefined, inF: number | undefined): number | undefined {
  return inC ?? (inF === undefined ? undefined : fahrenheitToCelsius(inF));
}

/** The limits of a form in a carton: its own, else the careful ones, and never beyond those for all forms. */
function limitsIn(
  form: Form,
  lining: Lining,
  written: WrittenLimits | undefined,
  forAll: Partial<TripLimits>,
): TripLimits {
  const careful = carefulLimits[form][lining];
  const coldestC = toC(written?.coldest_c, written?.coldest_f) ?? careful.coldestC;
  const hottestC = toC(written?.hottest_c, written?.hottest_f) ?? careful.hottestC;
  return {
    coldestC: Math.max(coldestC, forAll.coldestC ?? coldestC),
    hottestC: Math.min(hottestC, forAll.hottestC ?? hottestC),
  };
}

/** The rules with defaults filled and every limit in C and cm. */
export function normaliseSending(written: WrittenSending): SendingRules {
  const forAll: Partial<TripLimits> = {};
  const coldestC = toC(written.coldest_c, written.coldest_f);
  const hottestC = toC(written.hottest_c, written.hottest_f);
  if (coldestC !== undefined) forAll.coldestC = coldestC;
  if (hottestC !== undefined) forAll.hottestC = hottestC;
  const limitsOf = (form: Form) => {
    const given = written.limits?.[form];
    return {
      plain: limitsIn(form, 'plain', given?.plain, forAll),
      lined: given?.lined ? limitsIn(form, 'lined', given.lined, forAll) : null,
    };
  };
  return {
    weekdays: written.weekdays.map(name => weekdayNumbers[name]),
    transitDays: written.transit_days,
    limits: {
      'leafed-pot': limitsOf('leafed-pot'),
      'dormant-pot': limitsOf('dormant-pot'),
      'bare-root': limitsOf('bare-root'),
    },
    byHand: (written.by_hand ?? []).map(span => ({
      from: span.from as Day,
      to: span.to as Day,
      state: span.state,
      forms: span.forms ?? forms,
      why: span.why,
    })),
    cutBackCm:
      written.cut_back_cm ??
      (written.cut_back_in === undefined ? defaultCutBackCm : inchesToCm(written.cut_back_in)),
    notTo: written.not_to.map(({ region, why, checked }) => ({ region, why, checked: checked as Day })),
  };
}
