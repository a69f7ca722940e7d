/**
 * A care calendar as an iCalendar file. RFC 5545: all-day events (3.6.1, 3.8.2.2 end not included), text escapes (3.3.11), lines of at
 * most 75 octets ended by CRLF (3.1), one UID for each event (3.8.4.7). RFC 7986 names the calendar (5.1). The stamp comes from the
 * content, never from a clock, so the same calendar gives the same bytes.
 */

import type { CareTask } from '../core/care/calendar.ts';
import { addDays, type Day } from '../core/days.ts';
import type { Reason } from '../core/records/common.ts';

export interface CalendarFile {
  /** Stable name of what the calendar is about, such as `overwintering-pot.minneapolis-mn`; letters, digits, points and hyphens. */
  id: string;
  /** Domain of the yard, which makes the ids of its events unique in the world. */
  host: string;
  /** Name people see in their calendar. */
  title: string;
  /** Day of the content the calendar was made from. */
  stamp: Day;
  tasks: readonly CareTask[];
  /** Page the tasks come from; null when it has no address. */
  url: string | null;
  /** Remind people on the morning of the day before a task starts. */
  alarms: boolean;
}

const LONGEST_LINE_OCTETS = 75;

/** RFC 5545 3.3.11: backslash, semicolon and comma are escaped, line breaks written as `\n`; other control characters do not exist. */
function escaped(text: string): string {
  return text.replace(/\r\n|[\\;,\p{Cc}]/gu, sign => {
    if (sign === '\r\n' || sign === '\r' || sign === '\n') return '\\n';
    return sign === '\\' || sign === ';' || sign === ',' ? `\\${sign}` : ' ';
  });
}

/** Octets of a character in UTF-8 (RFC 3629). */
function octetsOf(character: string): number {
  const code = character.codePointAt(0) as number;
  return code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
}

/** Whether every character is one octet; nearly every line is, and such a line is cut by its length. */
const isPlain = (line: string) => /^[ -~]*$/.test(line);

function foldedPlain(line: string): string {
  let lines = line.slice(0, LONGEST_LINE_OCTETS);
  for (let from = LONGEST_LINE_OCTETS; from < line.length; from += LONGEST_LINE_OCTETS - 1) {
    lines += `\r\n ${line.slice(from, from + LONGEST_LINE_OCTETS - 1)}`;
  }
  return lines;
}

/** Cuts a line to 75 octets and goes on behind a space, never within a character (3.1). */
function folded(line: string): string {
  if (isPlain(line)) return foldedPlain(line);
  const lines: string[] = [];
  let current = '';
  let octets = 0;
  for (const character of line) {
    const size = octetsOf(character);
    if (octets + size > LONGEST_LINE_OCTETS) {
      lines.push(current);
      current = ' ';
      octets = 1;
    }
    current += character;
    octets += size;
  }
  return [...lines, current].join('\r\n');
}

const basicDate = (day: Day) => day.replaceAll('-', '');

const standingWords: Record<Reason['standing'], string> = {
  seen: 'seen',
  published: 'published',
  memory: 'from memory of the source named',
  practice: 'common practice',
  fitted: 'our figure, fitted to dated observations',
  ours: 'our working figure',
  modeled: 'from the climate of the place',
};

function description({ trigger, because, tools, cautions }: CareTask): string {
  return [
    trigger,
    ...because.map(({ text, standing }) => `Why: ${text} (${standingWords[standing]})`),
    ...(tools.length > 0 ? [`You need: ${tools.join(', ')}.`] : []),
    ...cautions.map(({ title, text }) => `Take care. ${title}: ${text}`),
  ].join('\n');
}

function eventLines(task: CareTask, file: CalendarFile): string[] {
  const { id, host, stamp, url, alarms } = file;
  return [
    'BEGIN:VEVENT',
    `UID:${task.id}.${id}@${host}`,
    `DTSTAMP:${basicDate(stamp)}T000000Z`,
    `DTSTART;VALUE=DATE:${basicDate(task.range.from)}`,
    `DTEND;VALUE=DATE:${basicDate(addDays(task.range.to, 1))}`,
    `SUMMARY:${escaped(task.title)}`,
    `DESCRIPTION:${escaped(description(task))}`,
    ...(url === null ? [] : [`URL:${url}`]),
    'TRANSP:TRANSPARENT',
    ...(alarms
      ? [
          'BEGIN:VALARM',
          'ACTION:DISPLAY',
          `DESCRIPTION:${escaped(task.title)}`,
          'TRIGGER:-PT15H',
          'END:VALARM',
        ]
      : []),
    'END:VEVENT',
  ];
}

/** The text of a `.ics` file. Tasks must have unique ids; the file of no tasks is a calendar without events. */
export function calendarFile(file: CalendarFile): string {
  return [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Leafdrop//Care calendar//EN',
    'CALSCALE:GREGORIAN',
    'METHOD:PUBLISH',
    `NAME:${escaped(file.title)}`,
    `X-WR-CALNAME:${escaped(file.title)}`,
    ...file.tasks.flatMap(task => eventLines(task, file)),
    'END:VCALENDAR',
  ]
    .map(line => `${folded(line)}\r\n`)
    .join('');
}
