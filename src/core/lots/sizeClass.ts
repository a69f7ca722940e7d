/** The class a plant is graded and priced as: its pot's, moved by what was measured, one step at most. */

import { type Day, dayInWords, later } from '../days.ts';
import type { Answer, Reason } from '../records/common.ts';
import { containerClasses, potWithArticle } from '../records/container.ts';
import type { Lot } from '../records/lot.ts';
import { caliperInWords, lengthInWords } from '../units.ts';
import type { LotSigns, Seen, SizeClass } from './answers.ts';

/**
 * The least height and stem of a plant that fills each class, by place in `containerClasses`. Our working figures, chosen for
 * young fruit trees on their own roots; they grow with the class, so that a larger plant never grades smaller.
 */
export const gradeBands: readonly { heightCm: number; caliperMm: number }[] = [
  { heightCm: 0, caliperMm: 0 },
  { heightCm: 8, caliperMm: 2 },
  { heightCm: 12, caliperMm: 3 },
  { heightCm: 18, caliperMm: 4 },
  { heightCm: 30, caliperMm: 5.5 },
  { heightCm: 45, caliperMm: 7 },
  { heightCm: 75, caliperMm: 10 },
  { heightCm: 100, caliperMm: 13 },
  { heightCm: 130, caliperMm: 17 },
  { heightCm: 160, caliperMm: 23 },
  { heightCm: 190, caliperMm: 30 },
  { heightCm: 230, caliperMm: 38 },
  { heightCm: 270, caliperMm: 50 },
  { heightCm: 310, caliperMm: 62 },
];

/** The highest class whose bands all given measures reach; null when nothing was measured. */
function gradeOf(heightCm: number | null, caliperMm: number | null): number | null {
  if (heightCm === null && caliperMm === null) return null;
  return gradeBands.findLastIndex(
    band =>
      (heightCm === null || heightCm >= band.heightCm) && (caliperMm === null || caliperMm >= band.caliperMm),
  );
}

function newestDay(...measures: (Seen<unknown> | null)[]): Day | null {
  return measures.reduce<Day | null>((newest, measure) => {
    if (!measure || !newest) return measure?.on ?? newest;
    return later(newest, measure.on);
  }, null);
}

function measureReasons({ heightCm, caliperMm }: LotSigns): Reason[] {
  const reasons: Reason[] = [];
  if (heightCm) {
    reasons.push({
      text: `Height ${lengthInWords(heightCm.value)} on ${dayInWords(heightCm.on)}.`,
      standing: 'seen',
    });
  }
  if (caliperMm) {
    reasons.push({
      text: `Stem ${caliperInWords(caliperMm.value)} on ${dayInWords(caliperMm.on)}.`,
      standing: 'seen',
    });
  }
  return reasons;
}

function verdict(potIndex: number, classIndex: number, grade: number | null): Reason {
  const name = containerClasses[classIndex]!.name;
  if (grade === null) return { text: 'Not measured yet: graded by its pot.', standing: 'seen' };
  if (classIndex === potIndex) {
    return { text: `Height and stem are true to its pot: graded ${name}.`, standing: 'ours' };
  }
  const way = classIndex > potIndex ? 'large' : 'small';
  return {
    text: `Height and stem are ${way} for its pot: graded one size ${way === 'large' ? 'over' : 'under'} it, as ${name}.`,
    standing: 'ours',
  };
}

/**
 * The size class of a lot on a day. A lot that never stood in a pot is graded by height and stem alone; unmeasured, it counts
 * as the yard's base size.
 */
export function sizeOf(lot: Lot, signs: LotSigns, asOf: Day, baseClassIndex: number): Answer<SizeClass> {
  const { heightCm, caliperMm } = signs;
  const potting = lot.pottings.findLast(({ date }) => date <= asOf) ?? null;
  const grade = gradeOf(heightCm?.value ?? null, caliperMm?.value ?? null);
  const because: Reason[] = [];
  let classIndex: number;
  if (potting) {
    const { written, classIndex: potIndex, exact } = potting.container;
    classIndex = grade === null ? potIndex : Math.min(Math.max(grade, potIndex - 1), potIndex + 1);
    const nearest = exact ? '' : `, nearest class ${containerClasses[potIndex]!.name}`;
    because.push({
      text: `In ${potWithArticle(written)}${nearest} since ${dayInWords(potting.date)}.`,
      standing: 'seen',
    });
    because.push(...measureReasons(signs), verdict(potIndex, classIndex, grade));
  } else {
    classIndex = grade ?? baseClassIndex;
    because.push({ text: 'Has not stood in a pot.', standing: 'seen' }, ...measureReasons(signs));
    because.push(
      grade === null
        ? { text: `Not measured yet: taken as ${containerClasses[classIndex]!.name}.`, standing: 'ours' }
        : { text: `Graded by height and stem as ${containerClasses[classIndex]!.name}.`, standing: 'ours' },
    );
  }
  const graded = potting ? Math.sign(classIndex - potting.container.classIndex) : null;
  return {
    answer: {
      name: containerClasses[classIndex]!.name,
      classIndex,
      againstPot: graded as SizeClass['againstPot'],
      container: potting?.container.written ?? null,
      heightCm: heightCm?.value ?? null,
      caliperMm: caliperMm?.value ?? null,
      measuredOn: newestDay(heightCm, caliperMm),
    },
    because,
  };
}
