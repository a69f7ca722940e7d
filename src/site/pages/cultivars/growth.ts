/** What becomes of a tree, in words: when it first fruits, how big it gets, which pot it can stay in. */

import type { Figure, Reason } from '../../../core/records/common.ts';
import type { Cultivar } from '../../../core/records/cultivar.ts';
import type { Species } from '../../../core/records/species.ts';
import { cmToInches, LITERS_PER_US_GALLON, roundTo } from '../../../core/units.ts';
import type { Why } from '../lots/lot.ts';

/** `1 to 2`, or one number where both ends are the same. */
const span = (low: number, high: number) => (low === high ? `${low}` : `${low} to ${high}`);

function tallInWords({ low, high }: Figure): string {
  const feet = (cm: number) => roundTo(cmToInches(cm) / 12, 1);
  const meters = (cm: number) => roundTo(cm / 100, 0.5);
  return `${span(feet(low), feet(high))} ft (${span(meters(low), meters(high))} m)`;
}

function potInWords({ low, high }: Figure): string {
  const gallons = (liters: number) => roundTo(liters / LITERS_PER_US_GALLON, 1);
  const liters = (value: number) => roundTo(value, 5);
  return `${span(gallons(low), gallons(high))} gal (${span(liters(low), liters(high))} L)`;
}

function reasons(figure: Figure, text: string): Reason[] {
  const said = figure.note === null ? text : `${text} ${figure.note}`;
  return [{ text: said, standing: figure.standing, source: figure.source }];
}

const vigourReason: Readonly<Record<Cultivar['vigour'], Reason[]>> = {
  low: [{ text: 'This cultivar grows slowly and stays small: expect the lower end.', standing: 'ours' }],
  medium: [],
  high: [{ text: 'This cultivar grows strongly: expect the upper end.', standing: 'ours' }],
};

/** Questions about the grown tree; those the species record says nothing about are left out. */
export function growthWhy({ growth }: Pick<Species, 'growth'>, { vigour }: Pick<Cultivar, 'vigour'>): Why[] {
  const { firstFruitYears: fruit, heightCm, spreadCm, finalPotLiters: pot } = growth;
  const found: Why[] = [];
  if (fruit !== null) {
    found.push({
      question: 'When will it first fruit?',
      answer: `${span(fruit.low, fruit.high)} ${fruit.high === 1 ? 'year' : 'years'} after planting`,
      because: reasons(fruit, 'From planting a tree of the size we sell.'),
    });
  }
  if (heightCm !== null) {
    const wide = spreadCm === null ? '' : `, ${tallInWords(spreadCm)} wide`;
    found.push({
      question: 'How big will it get?',
      answer: `${tallInWords(heightCm)} tall${wide}`,
      because: [
        ...reasons(heightCm, 'In the ground, left to itself; pruning keeps it lower, and so does a pot.'),
        ...(spreadCm === null ? [] : reasons(spreadCm, 'The width of its crown.')),
        ...vigourReason[vigour],
      ],
    });
  }
  if (pot !== null) {
    found.push({
      question: 'Which pot can it stay in?',
      answer: potInWords(pot),
      because: [
        ...reasons(pot, 'The mix it holds; larger pots dry out more slowly and are harder to move.'),
        ...vigourReason[vigour],
      ],
    });
  }
  return found;
}
