import { ledgerOf } from '../../addresses/ledger.ts';
import { recordMoved } from '../../addresses/moved.ts';
import { type RecordKind, recordAddress, recordFolders, recordOf } from '../../addresses/paths.ts';
import type { AddressRow } from '../../records/address.ts';
import { addressesFile } from '../addressFile.ts';
import type { Draft } from '../draft.ts';
import { nearest } from '../nearest.ts';
import { atCell, type Problem, plural, quote } from '../problem.ts';
import type { Check } from './check.ts';

const kinds = Object.keys(recordFolders) as RecordKind[];

/** Whether an address of a record has its record. Where not all lots could be read, nobody can say that one is missing. */
export function isKnown({ ids, allLotsKnown }: Draft, address: string): boolean {
  const record = recordOf(address);
  if (record === null) return false;
  return ids[record.kind].has(record.id) || (record.kind === 'lot' && !allLotsKnown);
}

/** Addresses of all records. */
export function knownAddresses({ ids }: Draft): Set<string> {
  return new Set(kinds.flatMap(kind => [...ids[kind]].map(id => recordAddress(kind, id))));
}

/** What was published is there or leads on, and what leads on is not there as well. */
export const addressRecords: Check = draft =>
  [...ledgerOf(draft.addresses).latest.values()].flatMap(row => {
    const record = recordOf(row.address);
    if (record === null) return [];
    const there = isKnown(draft, row.address);
    if (row.leadsTo === null) return there || row.since > draft.asOf ? [] : [gone(draft, row, record.kind)];
    return draft.ids[record.kind].has(record.id) ? [taken(row, record.kind)] : [];
  });

/** How many listed addresses stand or fall with a record: its parts, guides for a place, and what else lies below it. They follow its own line. */
function madeOf({ addresses }: Draft, address: string, kind: RecordKind): number {
  const moved = recordMoved({ kind, from: recordOf(address)!.id, to: 'another' });
  const standing = [...ledgerOf(addresses).latest.values()].filter(({ leadsTo }) => leadsTo === null);
  return standing.filter(row => row.address !== address && moved(row.address) !== null).length;
}

function gone(draft: Draft, { address, since, line }: AddressRow, kind: RecordKind): Problem {
  const near = nearest(address, knownAddresses(draft));
  const made = madeOf(draft, address, kind);
  return {
    rule: 'address-gone',
    file: addressesFile,
    spot: atCell(line, 'address'),
    got: `no ${kind} for ${quote(address)}`,
    expected: `the ${kind}, or where its address leads`,
    message: `${address} was published on ${since}, and its ${kind} is gone${made === 0 ? '' : `, with ${plural(made, 'more address', 'more addresses')} made from it`}`,
    remedy: `put the ${kind} back, or tell where ${made === 0 ? 'the address leads' : 'they all lead'} now: npm run rename -- address ${address} ${near ?? '/other/page/'}.`,
  };
}

function taken({ address, leadsTo, line }: AddressRow, kind: RecordKind): Problem {
  return {
    rule: 'address-taken',
    file: addressesFile,
    spot: atCell(line, 'address'),
    got: quote(address),
    expected: 'an address without a record',
    message: `${address} leads to ${leadsTo}, and there is a ${kind} of that name too`,
    remedy: `give the ${kind} another id, or add a line with ${address}, the day and nothing behind it.`,
  };
}
