/** From which day growth counts: budbreak, or the morning after the last spring freeze that costs the new shoots. */
import type { YearOfDays } from './growingYear.ts';

/**
 * Index of the first day that counts toward bloom and ripening. A night at or below `leafDamageC` between budbreak and midsummer
 * sets the tree back to budbreak; null where no freeze is looked at.
 */
export function growthStartsOn(
  { tminC, from }: Pick<YearOfDays, 'tminC' | 'from'>,
  budbreak: number,
  leafDamageC: number | null,
  midsummer: number,
): number {
  if (leafDamageC === null) return budbreak;
  let day = midsummer - 1;
  while (day >= budbreak && (tminC[from + day] as number) > leafDamageC) day -= 1;
  return Math.max(budbreak, day + 1);
}
