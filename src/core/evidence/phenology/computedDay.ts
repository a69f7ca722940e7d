/** What the core computes for an observation: the middle day over weather years of the place. */
import { DAYS_PER_YEAR, daysForward, wrapDoy } from '../../climate/calendar.ts';
import type { WeatherYears } from '../../climate/weatherYears.ts';
import { monthDay } from '../../days.ts';
import { ripeningOdds } from '../../match/ripeningOdds.ts';
import { chillNeed } from '../../phenology/chill.ts';
import { endOfSeasonFigures } from '../../phenology/endOfSeason.ts';
import { ripeningNeed } from '../../phenology/fruit.ts';
import { heatCountsFrom } from '../../phenology/heatStart.ts';
import { leafFall, leafFallFigures } from '../../phenology/leafFall.ts';
import { middleOf } from '../../phenology/seenDate.ts';
import type { Species } from '../../records/species.ts';
import type { Observation } from './observation.ts';

/** `doy` null: it happens in fewer than one year in ten. */
export type ComputedDay = { readonly doy: number | null } | { readonly notComputed: string };

const from = new WeakMap<WeatherYears, Map<string, number>>();

/** From which day heat counts at a place, found once for each species: it costs more than the rest. */
function heatFromAt(years: WeatherYears, species: Species): number {
  const bySpecies = from.get(years) ?? new Map<string, number>();
  from.set(years, bySpecies);
  const known = bySpecies.get(species.id);
  if (known !== undefined) return known;
  const [found] = heatCountsFrom(years, [chillNeed(species)], null) as [number];
  bySpecies.set(species.id, found);
  return found;
}

/** The middle day of leaf fall over the seasons of the weather years; null where most keep their leaves. */
function leafFallDay(years: WeatherYears, species: Species): number | null {
  const makeRule = leafFall(leafFallFigures(species));
  const days = Array.from({ length: years.count }, (_, season) => {
    const rule = makeRule();
    for (let day = 0; day < DAYS_PER_YEAR; day += 1) {
      const at = season * DAYS_PER_YEAR + day;
      if (rule(years.tminC[at] as number, years.tmaxC[at] as number, day)) return day;
    }
    return DAYS_PER_YEAR;
  }).sort((a, b) => a - b);
  const middle = days[days.length >> 1] as number;
  return middle === DAYS_PER_YEAR ? null : wrapDoy(years.firstDoy + middle);
}

/** The middle day on which an observed event comes by the model. */
export function computedDay(
  years: WeatherYears,
  species: Species,
  { event, crop, class: name }: Pick<Observation, 'event' | 'crop' | 'class'>,
): ComputedDay {
  const rules = {
    heatFrom: heatFromAt(years, species),
    budbreakHeat: species.budbreakHeat.value,
    leafDamageC: species.leafDamageC.value,
    end: endOfSeasonFigures(species),
  };
  const odds = (needs: Parameters<typeof ripeningOdds>[3][number]['needs']) =>
    ripeningOdds(
      years,
      species.heatBaseC.value,
      species.heatCapC.value,
      [{ rules, needs, headStart: null }],
      [0],
    );
  if (event === 'leaf-fall') return { doy: leafFallDay(years, species) };
  if (event === 'budbreak' || event === 'leafout') return { doy: odds([])[0]?.budbreak?.p50 ?? null };
  if (event === 'full-bloom') {
    if (species.bloom === null)
      return { notComputed: 'the fruit of the species is timed by heat, not by bloom' };
    const need = { by: 'bloom', bloomHeat: species.bloom.heat.value, days: 0, leastHeat: 0 } as const;
    return { doy: odds([need])[0]?.bloom?.p50 ?? null };
  }
  if (crop === null) return { notComputed: 'the row does not say which crop it is of' };
  if (name === null) return { notComputed: 'the row does not say which ripening class it is of' };
  const need = ripeningNeed(species, crop, name);
  if (need === null)
    return { notComputed: `the species has no figure for a ${crop} crop of the class ${name}` };
  return { doy: odds([need])[0]?.outdoors[0]?.dates?.p50 ?? null };
}

/** Days by which a computed day lies after the middle of the observed range; negative when before it. */
export function errorDays(doy: number, observed: Pick<Observation, 'from' | 'to'>): number {
  const { doy: first, half } = middleOf(observed);
  const after = daysForward(first, doy);
  return (after > DAYS_PER_YEAR / 2 ? after - DAYS_PER_YEAR : after) - half;
}

export const monthDayOf = (doy: number) => monthDay(wrapDoy(doy));
