/** Rules about the list of published addresses, content/addresses.csv. */

import type { Rule } from './rule.ts';

export const addressRules = {
  'address-shape': {
    level: 'error',
    title: 'The address list holds addresses from the root of the site.',
    help: 'An address starts and ends with a slash, such as /lots/26-layer-01/, and may name a part of its page: /guides/first-winter/#lifting. The name of the site and the path it lives below are left out, so that the site can move.',
  },
  'address-later': {
    level: 'warning',
    title: 'An address was published on or before the day the site is made for.',
    help: 'A day to come in the address list is a slip, unless the site is made for an earlier day on purpose. Addresses of later days are not yet asked for.',
  },
  'address-order': {
    level: 'warning',
    title: 'The address list is in order of days.',
    help: 'Lines are only ever added at the end, so their days never go back. A line out of order was moved or changed by hand, or two copies of the file were put together. Put it back in its place: of two lines for one address the later one counts.',
  },
  'address-twice': {
    level: 'error',
    title: 'An address is not listed twice in a row with the same meaning.',
    help: 'A second line for an address says that something has changed: a page became a redirect, or leads elsewhere. The same thing twice comes from two copies of the file put together. Delete the later line.',
  },
  'address-gone': {
    level: 'error',
    title: 'What was published stays, or leads somewhere.',
    help: 'Somebody has the address on a label, in a letter or in a video. Put the record back; or rename it with "npm run rename", which writes where its address leads now; or add a line to content/addresses.csv with the address, the day, and the page to go to in leads_to.',
  },
  'address-taken': {
    level: 'error',
    title: 'An address that leads elsewhere is not the address of a record too.',
    help: 'The address belongs to something that was renamed, and readers are sent on. A new record with the same id would take them to the wrong page. Give the new record another id; or, if it is the old one come back, add a line with the address, the day and nothing in leads_to.',
  },
  'address-part': {
    level: 'error',
    title: 'A named part of a guide or a video stays, or leads to the part it became.',
    help: 'A part is named after its heading, or after the time of its chapter, so rewording a heading changes the address of the part, and links to it would open the page at its top. Put the heading back, or run "npm run rename -- address /guides/x/#old /guides/x/#new": links to the old name then lead to the new one. A part that is gone for good may lead to the whole page: "npm run rename -- address /guides/x/#old /guides/x/".',
  },
  'address-nowhere': {
    level: 'error',
    title: 'A redirect leads to something that is there.',
    help: 'The column leads_to names a page of the site. Correct it by adding a further line for the same address at the end of the list, with the right page.',
  },
  'address-chain': {
    level: 'warning',
    title: 'A redirect leads straight to a page.',
    help: 'The page it leads to leads on itself. The site sends readers to the last one at once, so nothing is broken. "npm run rename" writes lines that lead straight there.',
  },
  'address-loop': {
    level: 'error',
    title: 'Redirects do not lead round in a circle.',
    help: 'Nobody can ever arrive. Decide which of the addresses is the page, and add a line for it at the end of the list with nothing in leads_to, or with a page that is there.',
  },
  'code-signs': {
    level: 'error',
    title: 'A code has no sign that is easily taken for another.',
    help: 'Codes are read off labels and films and typed by hand. They are made by the build, of at least four signs, without 0 o 1 i l 2 z 5 s 8 b 9 g q u v w m and the vowels. Do not make them by hand.',
  },
  'code-two-targets': {
    level: 'error',
    title: 'A code always leads to the same thing.',
    help: 'A code is printed, so it is never given to another page. Two lines for one code are right only when the first page was renamed to the second. Delete the line that was added by hand, or the later of the two.',
  },
  'code-other-page': {
    level: 'error',
    title: 'A code leads to the page it was made for.',
    help: 'Codes are printed on labels and shown in films. The build makes the code of a page from the address with which the page is first published, so the list itself shows when a code was changed, or given to another page, by hand. Put the line back as it was: "git log -p content/addresses.csv" shows it, and the site that is online carries the list as addresses.csv. A page that has no code gets one from the next build.',
  },
  'change-line': {
    level: 'error',
    title: 'The log of changes is written by the build alone.',
    help: 'content/changes.jsonl keeps what the site has told of the list: each line is one change, as it was told. It is never typed by hand. Delete a line that was; if the file was cut off or mangled, take it back from an earlier version. The site carries a copy: where the whole file is lost, "npm run published -- restore" takes it back.',
  },
} as const satisfies Record<string, Rule>;
