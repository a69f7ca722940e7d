import { type Ledger, ledgerOf, resolve } from '../../addresses/ledger.ts';
import { codeOf } from '../../addresses/paths.ts';
import type { AddressRow } from '../../records/address.ts';
import { addressesFile } from '../addressFile.ts';
import { atCell, type Problem, quote } from '../problem.ts';
import type { Check } from './check.ts';

/** Lines of the address list that do not go with the lines before them: signs that the file was edited by hand. */
export const addressRows: Check = ({ addresses, asOf }) => {
  const ledger = ledgerOf(addresses);
  const latest = new Map<string, AddressRow>();
  const problems: Problem[] = later(
    addresses.filter(({ since }) => since > asOf),
    asOf,
  );
  for (const [index, row] of addresses.entries()) {
    const previous = addresses[index - 1];
    const same = latest.get(row.address);
    problems.push(
      ...(previous && row.since < previous.since ? [outOfOrder(row, previous)] : []),
      ...(same ? again(ledger, row, same) : []),
    );
    latest.set(row.address, row);
  }
  return problems;
};

/** Told once: a site made for an earlier day has a whole list of them. */
function later(rows: readonly AddressRow[], asOf: string): Problem[] {
  const [first] = rows;
  if (first === undefined) return [];
  const whose = rows.length === 1 ? 'the address holds' : `this and ${rows.length - 1} more addresses hold`;
  return [
    {
      rule: 'address-later',
      file: addressesFile,
      spot: atCell(first.line, 'since'),
      got: quote(first.since),
      expected: `a day up to ${asOf}`,
      message: `${whose} from a day later than the one the site is made for, ${asOf}`,
      remedy: 'mend the day, or leave it if the site is made for an earlier day on purpose.',
    },
  ];
}

function outOfOrder({ since, line }: AddressRow, previous: AddressRow): Problem {
  return {
    rule: 'address-order',
    file: addressesFile,
    spot: atCell(line, 'since'),
    got: quote(since),
    expected: `${previous.since} or later`,
    message: `the day is earlier than that of the line before it, ${previous.since}`,
    remedy: 'move the line back to its place; new lines go to the end.',
  };
}

function again(ledger: Ledger, row: AddressRow, before: AddressRow): Problem[] {
  const spot = atCell(row.line, 'address');
  if (row.leadsTo === before.leadsTo) {
    return [
      {
        rule: 'address-twice',
        file: addressesFile,
        spot,
        got: quote(row.address),
        expected: 'an address that is not yet listed so',
        message: `${row.address} stands in line ${before.line} already, with the same meaning`,
        remedy: 'delete this line.',
      },
    ];
  }
  if (codeOf(row.address) === null || before.leadsTo === null || row.leadsTo === null) return [];
  // Renamed, and perhaps renamed back since: what counts is that both end at one page today.
  const [end, ownEnd] = [resolve(ledger, before.leadsTo), resolve(ledger, row.leadsTo)];
  if ('to' in end && 'to' in ownEnd && end.to === ownEnd.to) return [];
  return [
    {
      rule: 'code-two-targets',
      file: addressesFile,
      spot,
      got: quote(row.leadsTo),
      expected: before.leadsTo,
      message: `the code leads to ${before.leadsTo} in line ${before.line} and to ${row.leadsTo} here`,
      remedy: 'delete the line that was added by hand; a printed code must go on leading to the same thing.',
    },
  ];
}
