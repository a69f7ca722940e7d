import { isCodeOf } from '../../addresses/codes.ts';
import { type Ledger, ledgerOf, pageOf, resolve } from '../../addresses/ledger.ts';
import { codeOf, recordOf } from '../../addresses/paths.ts';
import type { AddressRow } from '../../records/address.ts';
import { addressesFile } from '../addressFile.ts';
import { atCell, type Problem, quote } from '../problem.ts';
import { knownAddresses } from './addressRecords.ts';
import type { Check } from './check.ts';

/** The line with which each code was first published, with its code. */
function firstLines(rows: readonly AddressRow[]): Map<string, AddressRow & { leadsTo: string }> {
  const first = new Map<string, AddressRow & { leadsTo: string }>();
  for (const row of rows) {
    const code = codeOf(row.address);
    if (code === null || row.leadsTo === null || first.has(code)) continue;
    first.set(code, { ...row, leadsTo: row.leadsTo });
  }
  return first;
}

/** Addresses by the page on which a reader of them ends. */
function addressesByEnd(ledger: Ledger, addresses: Iterable<string>): Map<string, string[]> {
  const byEnd = new Map<string, string[]>();
  for (const address of addresses) {
    const end = resolve(ledger, address);
    if (!('to' in end)) continue;
    const page = pageOf(end.to);
    byEnd.set(page, [...(byEnd.get(page) ?? []), address]);
  }
  return byEnd;
}

/**
 * A code leads to the page it was made for. Codes follow from the address a page is first published with, so a line that was written or changed by
 * hand is known without an earlier version of the list, but for one in 65,536. Where the address in the line is another name of the same page,
 * the printed code leads right, and nothing is said. Later lines of a code are judged by `addressRows`.
 */
export const addressCodes: Check = draft => {
  const suspect = [...firstLines(draft.addresses)].filter(([code, { leadsTo }]) => !isCodeOf(code, leadsTo));
  if (suspect.length === 0) return [];
  const ledger = ledgerOf(draft.addresses);
  const listed = [...ledger.latest.keys()].filter(address => recordOf(address) !== null);
  const addresses = new Set([...listed, ...knownAddresses(draft)]);
  const byEnd = addressesByEnd(ledger, addresses);
  return suspect.flatMap(([code, row]) => {
    const end = resolve(ledger, row.leadsTo);
    const names = 'to' in end ? (byEnd.get(pageOf(end.to)) ?? []) : [];
    if (names.some(name => isCodeOf(code, name))) return [];
    const owner = [...addresses].find(address => isCodeOf(code, address));
    return [otherPage(code, row, owner)];
  });
};

function otherPage(code: string, { leadsTo, line }: AddressRow, owner: string | undefined): Problem {
  return {
    rule: 'code-other-page',
    file: addressesFile,
    spot: atCell(line, 'leads_to'),
    got: quote(leadsTo ?? ''),
    expected: owner ?? 'the page that the code was made for',
    message:
      owner === undefined
        ? `the code ${quote(code)} was not made for ${leadsTo}: the line was written or changed by hand`
        : `the code ${quote(code)} was made for ${owner}, and here it leads to ${leadsTo}`,
    remedy:
      owner === undefined
        ? `put the line back as it was published (git log -p content/${addressesFile} shows it), or delete it if it never was; the build makes the code itself.`
        : `it may be printed, so let it lead to ${owner} again; the build makes a code of its own for ${leadsTo}.`,
  };
}
