/** A field of a record that says something else now, as a line for the person who is about to publish it. */

import { type FieldChange, type FieldPath, isFigure } from '../../core/comparison/fieldChanges.ts';
import type { RecordChange, RecordKind } from '../../core/comparison/recordChanges.ts';
import { type Day, dayInWords, monthInWords, parseDay } from '../../core/days.ts';
import { both, plural, quote } from '../../core/reading/problem.ts';
import { type Form, forms } from '../../core/records/common.ts';
import { caliperInWords, lengthInWords, roundTo, temperatureInWords } from '../../core/units.ts';
import { formWords } from '../words/words.ts';

/** Keys whose own words say too little where they stand alone. Everything else is told by its key. */
const keyWords: Record<string, string> = {
  how: 'how to order',
  leadDays: 'days before sending',
  weekdays: 'days of sending',
  notTo: 'not sent to',
  coldestC: 'coldest weather sent in',
  hottestC: 'hottest weather sent in',
  cutBackCm: 'cut back to',
  base: 'base price',
  means: 'meaning',
  body: 'text',
  flavor: 'flavor class',
  flavorClasses: 'flavor class',
  buy: 'order link',
  tmaxC: 'mean highs',
  tminC: 'mean lows',
  rainMm: 'rain by month',
  dewC: 'dew points',
  sd: 'spread of single days',
  at: '',
};

const unitEnding = /(?<=[a-z])(?:C|Mm|Cm|M|In|Lb|Sqft)$/;

/** A key of a record in words: `leafFallNightC` is `leaf fall night`. */
function keyInWords(key: string): string {
  if (forms.includes(key as Form)) return formWords[key as Form].toLowerCase();
  const known = keyWords[key];
  if (known !== undefined) return known;
  if (!/^[a-z]+(?:[A-Z][a-z]*)+$/.test(key)) return key;
  const words = key.replace(unitEnding, '').replace(/[A-Z]/g, letter => ` ${letter.toLowerCase()}`);
  return words.replace('color', 'color').replace('flavor', 'flavor').replace('vigour', 'vigor');
}

/** Keys of differences of temperature, to which no 32 is added. */
const isDifference = (path: FieldPath) => path.includes('sd') || path.at(-1) === 'hardinessOffsetC';

const weekdayNames = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];

const exact = (value: number) => String(roundTo(value, 0.001));

function numberInWords(value: number, path: FieldPath): string {
  const key = path.filter(part => /[A-Z]/.test(part)).at(-1) ?? '';
  if (path.at(-1) === 'weekdays') return weekdayNames[value - 1] ?? String(value);
  if (isDifference(path)) return `${exact(value)} C`;
  if (/C$/.test(key)) return temperatureInWords(value);
  if (/Mm$/.test(key) && key !== 'rainMm') return caliperInWords(value);
  if (/Cm$/.test(key)) return lengthInWords(value);
  return exact(value);
}

function scalarInWords(value: unknown, path: FieldPath): string {
  if (value === undefined || value === null) return 'none';
  if (typeof value === 'number') return numberInWords(value, path);
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  const text = String(value);
  if (parseDay(text)) return dayInWords(text as Day);
  return /\s/.test(text) ? quote(text) : text;
}

/** Two values in words, to more places where rounding would make them look alike. */
function pairInWords(from: unknown, to: unknown, path: FieldPath): string {
  const [a, b] = [from, to].map(value => scalarInWords(value, path));
  return a === b ? `${from} to ${to}` : `${a} to ${b}`;
}

function figureInWords(change: FieldChange): string {
  const { from, to, path } = change;
  if (!isFigure(from) || !isFigure(to)) return isFigure(to) ? 'given now' : 'taken out';
  const ends = (['low', 'value', 'high'] as const).filter(end => from[end] !== to[end]);
  if (ends.length === 0) {
    const said = (['standing', 'source', 'note'] as const).filter(key => from[key] !== to[key]);
    return `same value, other ${both(said)}`;
  }
  if (from.low === from.high && to.low === to.high) return pairInWords(from.value, to.value, path);
  const span = (figure: typeof from) =>
    figure.low === figure.high
      ? scalarInWords(figure.value, path)
      : [figure.low, figure.high].map(end => scalarInWords(end, path)).join(' - ');
  return `${span(from)} to ${span(to)}`;
}

/** Texts longer than this are told by how many of their paragraphs changed. */
const LONGEST_TOLD = 60;

function textInWords(from: string, to: string): string {
  const paragraphs = (text: string) => text.split(/\n\s*\n/).map(part => part.trim());
  const [then, now] = [paragraphs(from), paragraphs(to)];
  const fresh = now.filter(part => !then.includes(part));
  const first = fresh[0] ?? then.find(part => !now.includes(part)) ?? now[0] ?? '';
  const many = now.length > 1 || then.length > 1;
  const where = many ? `, ${plural(Math.max(fresh.length, 1), 'paragraph')}` : '';
  return `reworded${where}: ${quote(first.replace(/\s+/g, ' '))}`;
}

function listInWords(from: readonly unknown[], to: readonly unknown[], path: FieldPath): string {
  if (from.length === 12 && to.length === 12 && [...from, ...to].every(value => typeof value === 'number')) {
    const months = to.flatMap((value, index) => (value === from[index] ? [] : index));
    const first = months[0]!;
    return `${plural(months.length, 'month')}, ${monthInWords(first + 1)} ${pairInWords(from[first], to[first], path)}`;
  }
  if ([...from, ...to].every(value => typeof value === 'number') && path.at(-1) !== 'weekdays') {
    return `${from.join(', ')} to ${to.join(', ')}`;
  }
  const texts = (items: readonly unknown[]) =>
    items.map(item => (typeof item === 'object' ? JSON.stringify(item) : scalarInWords(item, path)));
  const [then, now] = [texts(from), texts(to)];
  const [added, gone] = [now.filter(item => !then.includes(item)), then.filter(item => !now.includes(item))];
  const parts = [
    ...(added.length > 0 ? [`${both(added)} added`] : []),
    ...(gone.length > 0 ? [`${both(gone)} taken out`] : []),
  ];
  return parts.length > 0 ? parts.join(', ') : 'in another order';
}

function valueInWords(change: FieldChange): string {
  const { from, to, path } = change;
  if (isFigure(from) || isFigure(to)) return figureInWords(change);
  if (Array.isArray(from) && Array.isArray(to)) return listInWords(from, to, path);
  const isThing = (value: unknown) => typeof value === 'object' && value !== null;
  if (isThing(to) || isThing(from))
    return to === undefined ? 'taken out' : from === undefined ? 'new' : 'changed';
  if (typeof from === 'string' && typeof to === 'string') {
    if (from.includes('\n') || to.includes('\n') || Math.max(from.length, to.length) > LONGEST_TOLD) {
      return textInWords(from, to);
    }
  }
  return pairInWords(from, to, path);
}

type Sentence = (change: FieldChange, all: RecordChange) => string | null;
const why = (value: unknown) => (value as { why: string }).why;

/** What has a sentence of its own, by kind and first key. */
const sentences: Record<string, Sentence> = {
  'cultivar retired': ({ to }) =>
    to === undefined ? 'raised again' : `no longer raised, since ${dayInWords(to as Day)}`,
  'lot hold': ({ from, to, path }) => {
    if (path.length > 1) return null;
    if (to === undefined) return `no longer held (was: ${why(from)})`;
    return `held since ${dayInWords((to as { since: Day }).since)}: ${why(to)}`;
  },
  'lot price': ({ from, to, path }) => {
    if (path.length > 1) return null;
    return to === undefined ? 'price of its own taken back' : from === undefined ? 'price of its own' : null;
  },
  'yard sending': ({ from, to, path: [, key, region] }) => {
    if (key !== 'notTo' || region === undefined) return null;
    if (to === undefined) return `sent to ${region} again`;
    return from === undefined ? `no longer sent to ${region}: ${why(to)}` : null;
  },
};

/** One changed field: `ordering, days before sending: 3 to 4`. */
function fieldInWords(change: FieldChange, record: RecordChange): string {
  const own = sentences[`${record.kind} ${change.path[0]}`]?.(change, record);
  if (own) return own;
  const where = change.path
    .map(keyInWords)
    .filter(words => words !== '')
    .join(', ');
  return `${where}: ${valueInWords(change)}`;
}

const titles: Record<RecordKind, string> = {
  yard: 'The yard: ordering, sending, prices and words',
  species: 'Species figures (verdicts, dates and readiness follow from them)',
  cultivar: 'Cultivars',
  lot: 'What lots say of themselves',
  guide: 'Guides',
  video: 'Videos',
  place: 'Places',
};

/** The changed records by kind, with a title and a line for each field. */
export function recordSections(records: readonly RecordChange[]): { title: string; lines: string[] }[] {
  const lineOf = (record: RecordChange, change: FieldChange) => {
    const what = record.kind === 'lot' ? `${record.id} ${record.name}` : record.name;
    const told = fieldInWords(change, record);
    return record.kind === 'yard' ? told : `${what}, ${told}`;
  };
  return (Object.keys(titles) as RecordKind[]).map(kind => ({
    title: titles[kind],
    lines: records
      .filter(record => record.kind === kind)
      .flatMap(record => record.fields.map(change => lineOf(record, change))),
  }));
}
