/** What a change of the content does to the public site, in words for the person who is about to publish it. */

import type { Comparison } from '../../core/comparison/comparison.ts';
import type { FileChanges } from '../../core/comparison/fileChanges.ts';
import type { CountChange, NamedLot } from '../../core/comparison/lotChanges.ts';
import type { PriceCause, PriceChange } from '../../core/comparison/priceChanges.ts';
import type { ProblemChanges } from '../../core/comparison/problemChanges.ts';
import { type Day, dayInWords, rangeInWords } from '../../core/days.ts';
import { priceInWords } from '../../core/money.ts';
import type { Diagnostic } from '../../core/reading/diagnostic.ts';
import { both, plural, smallFirst } from '../../core/reading/problem.ts';
import { formatDiagnostic } from '../../core/reading/report.ts';
import type { Form } from '../../core/records/common.ts';
import { formWords } from '../words/words.ts';
import { recordSections } from './changedFields.ts';

export interface ChangeReport {
  against: { asked: string; short: string; day: string; subject: string };
  /** The days both sides were computed for. */
  asOf: { before: Day; after: Day };
  /** How the content folder is shown. */
  folder: string;
  /** What stands in the way of publishing the working copy. */
  errors: Diagnostic[];
  /** Files with errors that were taken as they were before, so that the rest could be compared. */
  setAside: string[];
  /** What was wrong with the earlier version; nothing is compared then. */
  errorsBefore: number;
  /** Null when one of the sides cannot be computed. */
  comparison: Comparison | null;
  problems: ProblemChanges;
  files: FileChanges;
  /** Photographs with another picture under the same name, and the records that show them. */
  photos: { file: string; shownBy: string[] }[];
}

interface Section {
  title: string;
  lines: string[];
}

const formIn = (form: Form) => smallFirst(formWords[form]);
const formsIn = (forms: readonly Form[]) => both(forms.map(formIn));
const nameOf = ({ lot, cultivar }: NamedLot) => `${lot} ${cultivar}`;

function whereTheyWent({ sold, lost, returned }: CountChange): string {
  const parts = [
    ...(sold > 0 ? [`${sold} sold`] : []),
    ...(lost > 0 ? [`${lost} lost`] : []),
    ...(returned > 0 ? [`${returned} returned`] : []),
  ];
  return parts.length > 0 ? both(parts) : 'count put right';
}

function causeInWords(each: PriceCause): string {
  if (each.cause === 'size') return `size ${each.from} to ${each.to}`;
  if (each.cause === 'scarcity') return `scarcity ${each.from} to ${each.to}`;
  if (each.cause === 'base')
    return `base price of ${each.species} ${each.from ?? 'none'} to ${each.to ?? 'none'}`;
  if (each.cause === 'settings') return 'the price rules in yard.yaml';
  if (each.cause === 'floor') return 'the least such a tree may be sold for';
  if (each.to === null) return 'the price of its own was taken back';
  return `a price of its own (${each.why})`;
}

function priceLine(change: PriceChange): string {
  const { form, from, to, causes } = change;
  return `${nameOf(change)}, ${formIn(form)}: ${priceInWords(from)} to ${priceInWords(to)}, by ${both(causes.map(causeInWords))}`;
}

const stateWords = {
  ready: 'ready',
  opens: 'opens later',
  blocked: 'held back',
  look: 'somebody has to look at it',
} as const;

function stockSections(comparison: Comparison): Section[] {
  const { opened, removed, soldOut, back, ready, notReady, waiting, prices, counts, openings, reasons } =
    comparison;
  return [
    {
      title: 'Lots whose records are gone (a sold lot stays in its file: its page says so)',
      lines: removed.map(nameOf),
    },
    {
      title: 'Lots opened',
      lines: opened.map(
        each =>
          `${nameOf(each)}: ${plural(each.left, 'plant')}, ${each.ready.length > 0 ? `ready: ${formsIn(each.ready)}` : 'not ready yet'}`,
      ),
    },
    { title: 'Sold out', lines: soldOut.map(each => `${nameOf(each)}: ${whereTheyWent(each)}`) },
    { title: 'On the list again', lines: back.map(each => `${nameOf(each)}: ${each.to} left`) },
    { title: 'Ready', lines: ready.map(each => `${nameOf(each)}: ${formIn(each.form)}`) },
    {
      title: 'No longer ready',
      lines: notReady.map(each => `${nameOf(each)}: ${formIn(each.form)}, ${stateWords[each.to]}`),
    },
    { title: 'Prices', lines: prices.map(priceLine) },
    {
      title: 'Counts',
      lines: counts.map(each => `${nameOf(each)}: ${each.from} to ${each.to} (${whereTheyWent(each)})`),
    },
    {
      title: 'Opens on other days',
      lines: openings.map(
        each =>
          `${nameOf(each)}: ${formIn(each.form)}, ${rangeInWords(each.to)} (was ${rangeInWords(each.from)})`,
      ),
    },
    {
      title: 'Waiting for something else',
      lines: waiting.map(
        each =>
          `${nameOf(each)}: ${formIn(each.form)}, ${stateWords[each.to]} (${stateWords[each.from]} before)`,
      ),
    },
    { title: 'Lots with other reasons on their page', lines: reasons.map(nameOf) },
  ];
}

function speciesSections({ species: { added, removed } }: Comparison): Section[] {
  return [
    { title: 'Species', lines: [...added.map(id => `new: ${id}`), ...removed.map(id => `gone: ${id}`)] },
  ];
}

/** What of the change customers can see: all of the report but problems and files. */
function shownSections({ comparison, photos }: ChangeReport): Section[] {
  const addresses = comparison?.addresses;
  const sections: Section[] = [
    ...(comparison ? [...stockSections(comparison), ...speciesSections(comparison)] : []),
    ...recordSections(comparison?.records ?? []),
    {
      title: 'Photographs exchanged',
      lines: photos.map(
        ({ file, shownBy }) =>
          `${file}: ${shownBy.length > 0 ? `shown by ${both(shownBy)}` : 'shown nowhere'}`,
      ),
    },
    { title: 'New addresses', lines: addresses?.gained ?? [] },
    {
      title: 'Addresses that lead elsewhere now',
      lines: (addresses?.redirected ?? []).map(({ from, to }) => `${from} to ${to}`),
    },
  ];
  return sections.filter(({ lines }) => lines.length > 0);
}

/** Everything there is to tell, most important first; sections without a line are left out. */
function reportSections(report: ChangeReport): Section[] {
  const { comparison, errors, problems, files, folder } = report;
  const problemLines = (all: readonly Diagnostic[]) => all.map(each => formatDiagnostic(each, folder));
  const addresses = comparison?.addresses;
  const sections: Section[] = [
    { title: 'Errors: nothing can be published before these are put right', lines: problemLines(errors) },
    {
      title: 'Addresses that would lead nowhere (npm run rename keeps the old one working)',
      lines: addresses?.lost ?? [],
    },
    { title: 'New warnings', lines: problemLines(problems.gained) },
    ...shownSections(report),
    { title: 'Warnings that are gone', lines: problemLines(problems.gone) },
    {
      title: 'Files',
      lines: [
        ...files.added.map(path => `new: ${path}`),
        ...files.changed.map(path => `changed: ${path}`),
        ...files.removed.map(path => `removed: ${path}`),
      ],
    },
  ];
  return sections.filter(({ lines }) => lines.length > 0);
}

/** What is compared with what, in sentences. */
function reportHead(report: ChangeReport): string[] {
  const { against, asOf, comparison, errors, setAside, errorsBefore } = report;
  const days =
    asOf.before === asOf.after
      ? `Both computed for ${dayInWords(asOf.after)}.`
      : `Before computed for ${dayInWords(asOf.before)}, after for ${dayInWords(asOf.after)}.`;
  const head = [`Compared with ${against.short} of ${against.day}, "${against.subject}". ${days}`];
  if (errors.length > 0) head.push(`${plural(errors.length, 'error')}: this cannot be published.`);
  if (setAside.length > 0 && comparison) {
    head.push(`To show the rest, ${both(setAside)} ${setAside.length === 1 ? 'is' : 'are'} taken as before.`);
  }
  if (errorsBefore > 0) {
    head.push(
      `The earlier version does not pass the check (${plural(errorsBefore, 'error')}), so what the site showed is not known and only files are compared.`,
    );
  } else if (!comparison)
    head.push('What would change on the site can only be told once the errors are gone.');
  if (comparison) {
    const { before, after } = comparison.sizes;
    head.push(
      `On the list: ${plural(after.lots, 'lot')} (${before.lots} before), ${plural(after.plants, 'plant')} (${before.plants}), ${after.ready} ready (${before.ready}).`,
    );
  }
  const { added, changed, removed } = report.files;
  if (added.length + changed.length + removed.length === 0) head.push('No file differs.');
  else if (comparison && shownSections(report).length === 0) head.push('The site shows the same as before.');
  return head;
}

/** As many lines of one kind as a person reads on a phone. Standing: ours. */
const MOST_LINES = 12;

function shortened(lines: readonly string[], more: string): string[] {
  if (lines.length <= MOST_LINES) return [...lines];
  return [...lines.slice(0, MOST_LINES - 1), `and ${lines.length - MOST_LINES + 1} more${more}`];
}

/** Plain text for a terminal. */
export function reportText(report: ChangeReport): string {
  const sections = reportSections(report).map(({ title, lines }) =>
    [`${title} (${lines.length}):`, ...shortened(lines, ' (--json lists all)').map(text => `  ${text}`)].join(
      '\n',
    ),
  );
  return [reportHead(report).join('\n'), ...sections].join('\n\n');
}

/** Text that shows as it is in Markdown, whatever was typed into a record. */
function plainInMarkdown(text: string): string {
  return text
    .replace(/[\\`*_{}[\]<>#|~!&@]/g, sign => `&#${sign.codePointAt(0)};`)
    .replace(/:\/\//g, '&#58;//');
}

/** Markdown for a pull request or the summary of a workflow. */
export function reportMarkdown(report: ChangeReport): string {
  const sections = reportSections(report).map(({ title, lines }) =>
    [
      `### ${title} (${lines.length})`,
      '',
      ...shortened(lines, '').map(text => `- ${plainInMarkdown(text)}`),
    ].join('\n'),
  );
  const head = reportHead(report).map(plainInMarkdown).join('  \n');
  return ['## What this changes on the site', head, ...sections].join('\n\n');
}
