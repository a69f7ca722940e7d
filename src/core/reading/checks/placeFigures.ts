import { placeFaults } from '../../climate/placeFaults.ts';
import { atValue, type KeyPath, remedyOf, smallFirst } from '../problem.ts';
import type { RuleId } from '../rules.ts';
import type { Check } from './check.ts';

/** What does not fit together in a place record, as the climate core sees it. */
export const placeFigures: Check = ({ places }) =>
  places.flatMap(({ file, written, value }) =>
    placeFaults(written, value).map(({ rule, path, got, expected, message, remedy }) => ({
      rule: rule === 'place-units' ? 'two-units' : (rule satisfies RuleId),
      file,
      spot: atValue(...keysOf(path)),
      got,
      expected,
      message: smallFirst(message.replace(/\.$/, '')),
      remedy: remedyOf(/^latitude /.test(expected) ? `did you mean ${expected}? ` : '', remedy),
    })),
  );

function keysOf(path: string): KeyPath {
  if (path === '') return [];
  return path.split('.').map(key => (/^\d+$/.test(key) ? Number(key) : key));
}
