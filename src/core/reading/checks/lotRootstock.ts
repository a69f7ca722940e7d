import type { LotEntry } from '../draft.ts';
import { atKey, atValue, type Problem, quote } from '../problem.ts';
import type { Check } from './check.ts';

/** A grafted lot names its rootstock; layers and cuttings stand on their own roots; divisions come from own-rooted trees. */
export const lotRootstock: Check = ({ lots }) => lots.flatMap(lotProblems);

const called = { 'air-layer': 'an air layer', cutting: 'a cutting' } as const;

function lotProblems({ file, index, value }: LotEntry): Problem[] {
  const { method, rootstock } = value;
  if (method === 'graft') {
    if (rootstock !== null) return [];
    return [
      {
        rule: 'lot-rootstock',
        file,
        spot: atValue(index, 'method'),
        got: 'graft without rootstock',
        expected: 'a rootstock',
        message: 'a grafted lot does not say what it is grafted on',
        remedy: 'add a line "rootstock: ..." with the rootstock\'s name.',
      },
    ];
  }
  if (rootstock === null) return [];
  const spot = atKey(index, 'rootstock');
  if (method === 'division') {
    return [
      {
        rule: 'division-grafted',
        file,
        spot,
        got: quote(rootstock),
        expected: 'no rootstock',
        message: 'a division of a grafted tree is a plant of the rootstock, not of the cultivar',
        remedy:
          'take the rootstock out if the mother tree stands on its own roots; else do not sell the lot as this cultivar.',
      },
    ];
  }
  return [
    {
      rule: 'lot-rootstock',
      file,
      spot,
      got: quote(rootstock),
      expected: 'no rootstock',
      message: `${called[method]} stands on its own roots, yet a rootstock is given`,
      remedy: 'take the rootstock out, or write "method: graft".',
    },
  ];
}
