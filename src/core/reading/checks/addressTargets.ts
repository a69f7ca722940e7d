import { type Ledger, ledgerOf, pageOf, resolve } from '../../addresses/ledger.ts';
import { codeOf } from '../../addresses/paths.ts';
import type { AddressRow } from '../../records/address.ts';
import { addressesFile } from '../addressFile.ts';
import type { Draft } from '../draft.ts';
import { nearest } from '../nearest.ts';
import { atCell, meant, type Problem, quote, remedyOf } from '../problem.ts';
import { isKnown, knownAddresses } from './addressRecords.ts';
import type { Check } from './check.ts';

/** Where the address list sends readers: to something that is there, straight, and not round in a circle. */
export const addressTargets: Check = draft => {
  const ledger = ledgerOf(draft.addresses);
  const told = new Set<string>();
  return [...ledger.latest.values()].flatMap(row => {
    if (row.leadsTo === null) return [];
    const end = resolve(ledger, row.address);
    if ('loop' in end) {
      const key = end.loop.toSorted().join(' ');
      if (told.has(key)) return [];
      told.add(key);
      return [loop(ledger, end.loop)];
    }
    return [...nowhere(draft, ledger, row, end.to), ...chain(row, end)];
  });
};

/** Told at the line that was added last, which closed the circle. */
function loop({ latest }: Ledger, addresses: readonly string[]): Problem {
  const line = Math.max(...addresses.map(address => latest.get(address)?.line ?? 0));
  return {
    rule: 'address-loop',
    file: addressesFile,
    spot: atCell(line, 'leads_to'),
    got: quote(addresses.join(' ')),
    expected: 'a page at the end',
    message: `readers are sent round in a circle: ${[...addresses, addresses[0]].join(' to ')}`,
    remedy: 'add a line that sends one of them to a page that is there.',
  };
}

/** The address of a record at the start of the address of a page below it. */
const belowRecord = /^\/(?:cultivars|lots|guides|videos|places)\/[^/]+\//;

/** Whether the line of a missing record itself is told as gone, or leads on, which then holds for what was made of it. */
function isToldOf(row: AddressRow | undefined, { asOf }: Draft): boolean {
  return row !== undefined && (row.leadsTo !== null || row.since <= asOf);
}

function nowhere(draft: Draft, { latest }: Ledger, row: AddressRow, to: string): Problem[] {
  const page = pageOf(to);
  // Pages below a record, such as a guide for a place, are known as soon as the record is; the build asks for the page itself.
  const record = belowRecord.exec(page)?.[0];
  const known = latest.get(page)?.leadsTo === null || (record !== undefined && isKnown(draft, record));
  if (known || (record !== undefined && isToldOf(latest.get(record), draft))) return [];
  return [
    {
      rule: 'address-nowhere',
      file: addressesFile,
      spot: atCell(row.line, 'leads_to'),
      got: quote(to),
      expected: 'a page of the site',
      message: `${row.address} leads to ${to}, and there is no such page`,
      remedy: remedyOf(
        meant(nearest(page, knownAddresses(draft))),
        'Add a line for the same address at the end of the list, with the right page.',
      ),
    },
  ];
}

function chain(row: AddressRow, { to, hops }: { to: string; hops: number }): Problem[] {
  if (hops < 2 || codeOf(row.address) !== null) return [];
  return [
    {
      rule: 'address-chain',
      file: addressesFile,
      spot: atCell(row.line, 'leads_to'),
      got: quote(row.leadsTo ?? ''),
      expected: to,
      message: `${row.address} leads to ${row.leadsTo}, which leads on; readers are sent straight to ${to}`,
      remedy: 'nothing has to be done.',
    },
  ];
}
