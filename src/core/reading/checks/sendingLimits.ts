import { type Form, forms } from '../../records/common.ts';
import { type Lining, linings, type TripLimits } from '../../records/sending.ts';
import type { WrittenYard } from '../../records/yard.ts';
import { temperatureInWords } from '../../units.ts';
import { atValue, type KeyPath, type Problem } from '../problem.ts';
import type { Check } from './check.ts';

type Side = 'coldest' | 'hottest';

/** Where a limit is written; the group it would stand in where it is left out. */
function pathTo({ sending }: WrittenYard, form: Form, lining: Lining, side: Side): KeyPath {
  const written = sending.limits?.[form]?.[lining];
  const key = (['f', 'c'] as const)
    .map(unit => `${side}_${unit}` as const)
    .find(each => written?.[each] !== undefined);
  if (key) return ['sending', 'limits', form, lining, key];
  return written ? ['sending', 'limits', form, lining] : ['sending'];
}

function problem(
  file: string,
  path: KeyPath,
  got: number,
  expected: string,
  message: string,
  remedy: string,
): Problem {
  return {
    rule: 'sending-limits',
    file,
    spot: atValue(...path),
    got: temperatureInWords(got),
    expected,
    message,
    remedy,
  };
}

/** Limits of one form run from cold to hot, a liner never makes them narrower, and leaves and bare roots stand no more than a dormant pot. */
export const sendingLimits: Check = ({ yard }) => {
  if (!yard) return [];
  const { file, written, value } = yard;
  const { limits } = value.sending;
  const words = temperatureInWords;
  const problems: Problem[] = [];
  const crossed = (form: Form, lining: Lining, { coldestC, hottestC }: TripLimits) => {
    if (coldestC < hottestC) return;
    problems.push(
      problem(
        file,
        pathTo(written, form, lining, 'coldest'),
        coldestC,
        `below ${words(hottestC)}`,
        `the cold limit of ${form} in a ${lining} carton, ${words(coldestC)}, is not below its heat limit, ${words(hottestC)}`,
        'the two may be swapped, or one is in another unit; put them right.',
      ),
    );
  };
  for (const form of forms) {
    const { plain, lined } = limits[form];
    for (const lining of linings) {
      const limit = limits[form][lining];
      if (limit) crossed(form, lining, limit);
    }
    if (lined && lined.coldestC > plain.coldestC) {
      problems.push(
        problem(
          file,
          pathTo(written, form, 'lined', 'coldest'),
          lined.coldestC,
          `${words(plain.coldestC)} or colder`,
          `${form} may go colder in a plain carton, ${words(plain.coldestC)}, than in a lined one, ${words(lined.coldestC)}`,
          'the two cartons may be swapped; let the lined one stand as much cold or more.',
        ),
      );
    }
  }
  const pot = limits['dormant-pot'].plain;
  for (const form of ['leafed-pot', 'bare-root'] as const) {
    const { plain } = limits[form];
    if (plain.coldestC >= pot.coldestC) continue;
    problems.push(
      problem(
        file,
        pathTo(written, form, 'plain', 'coldest'),
        plain.coldestC,
        `${words(pot.coldestC)} or warmer`,
        `${form} may go colder, ${words(plain.coldestC)}, than a dormant tree in its pot, ${words(pot.coldestC)}`,
        form === 'leafed-pot'
          ? 'leaves are hurt long before dormant wood; raise this limit or lower that of dormant-pot.'
          : 'bare roots freeze sooner than a pot; raise this limit or lower that of dormant-pot.',
      ),
    );
  }
  return problems;
};
