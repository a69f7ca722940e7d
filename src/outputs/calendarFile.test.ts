/**
 * Checked against RFC 5545 by a small reader written here from its grammar (3.1 content lines, 3.3.4 dates, 3.3.11 text, 3.6 components),
 * which shares no code with the writer; and by ical.js, an independent parser.
 */

import fc from 'fast-check';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import type { CareTask } from '../core/care/calendar.ts';
import { addDays, day } from '../core/days.ts';
import { type CalendarFile, calendarFile } from './calendarFile.ts';

const task = (over: Partial<CareTask> = {}): CareTask => ({
  id: 'move-in-2026',
  name: 'move-in',
  title: 'Move the pot into storage',
  range: { from: day('2026-10-30'), to: day('2026-11-04') },
  trigger: 'Leaves down; a few nights of 24 F (-4.5 C), and before worse.',
  because: [{ text: 'Roots are hurt.', standing: 'ours' }],
  tools: ['a dolly'],
  cautions: [],
  ...over,
});

const file = (over: Partial<CalendarFile> = {}): CalendarFile => ({
  id: 'overwintering-pot.minneapolis-mn',
  host: 'kettlewise.example',
  title: 'Winter for a tree in a pot: Minneapolis',
  stamp: day('2026-11-25'),
  tasks: [task()],
  url: 'https://kettlewise.example/guides/overwintering-pot/minneapolis-mn/',
  alarms: false,
  ...over,
});

interface Line {
  name: string;
  parameters: string;
  value: string;
}

/** Unfolds and takes apart content lines; throws on anything the grammar does not have. */
function read(text: string): Line[] {
  if (!text.endsWith('\r\n')) throw new Error('the last line is not ended');
  if (/[^\r]\n|\r[^\n]/.test(text)) throw new Error('a line break is not CRLF');
  return text
    .slice(0, -2)
    .replace(/\r\n[ \t]/g, '')
    .split('\r\n')
    .map(line => {
      const match = /^([A-Z][A-Z0-9-]*)((?:;[A-Z-]+=[^;:",]+)*):(.*)$/s.exec(line);
      if (!match) throw new Error(`no content line: ${line}`);
      return { name: match[1]!, parameters: match[2]!, value: match[3]! };
    });
}

/** TEXT back to words: only the four escapes of the standard exist. */
function unescaped(value: string): string {
  if (/\\(?![\\;,nN])|(?<!\\)(?:\\\\)*[;,]/.test(value)) throw new Error(`badly escaped: ${value}`);
  return value.replace(/\\([\\;,nN])/g, (_, mark: string) => (mark.toLowerCase() === 'n' ? '\n' : mark));
}

const octets = (line: string) => new TextEncoder().encode(line).length;
const values = (lines: Line[], name: string) =>
  lines.filter(line => line.name === name).map(({ value }) => value);

describe('calendarFile', () => {
  it('writes an all-day range whose end is not included', () => {
    const lines = read(calendarFile(file()));
    const start = lines.find(({ name }) => name === 'DTSTART')!;
    expect([start.parameters, start.value]).toEqual([';VALUE=DATE', '20261030']);
    expect(values(lines, 'DTEND')).toEqual(['20261105']);
    expect(values(lines, 'DTSTAMP')).toEqual(['20261125T000000Z']);
    expect(values(lines, 'UID')).toEqual([
      'move-in-2026.overwintering-pot.minneapolis-mn@kettlewise.example',
    ]);
    expect(unescaped(values(lines, 'DESCRIPTION')[0]!)).toBe(
      'Leaves down; a few nights of 24 F (-4.5 C), and before worse.\nWhy: Roots are hurt. (our working figure)\nYou need: a dolly.',
    );
  });

  it('opens and closes every component in turn', () => {
    const lines = read(
      calendarFile(file({ alarms: true, tasks: [task(), task({ id: 'wake-2026', name: 'wake' })] })),
    );
    const open: string[] = [];
    for (const { name, value } of lines) {
      if (name === 'BEGIN') open.push(value);
      if (name === 'END') expect(open.pop()).toBe(value);
    }
    expect(open).toEqual([]);
    expect(values(lines, 'BEGIN')).toEqual(['VCALENDAR', 'VEVENT', 'VALARM', 'VEVENT', 'VALARM']);
    expect(lines.slice(0, 3).map(({ name }) => name)).toEqual(['BEGIN', 'VERSION', 'PRODID']);
    // RFC 5545 3.3.6: a duration with a time part has a T, and at least one number behind it.
    for (const trigger of values(lines, 'TRIGGER')) expect(trigger).toMatch(/^-PT\d+H$/);
  });

  it('is a calendar without tasks too', () => {
    expect(values(read(calendarFile(file({ tasks: [], url: null }))), 'BEGIN')).toEqual(['VCALENDAR']);
  });

  it('keeps any text whole, in lines of at most 75 octets ended by CRLF, the same at every run', () => {
    const anyText = fc
      .string({ unit: 'grapheme', maxLength: 300 })
      .map(words => words.replace(/(?!\n)\p{Cc}/gu, ''));
    fc.assert(
      fc.property(
        fc.array(anyText, { minLength: 1, maxLength: 4 }),
        fc.nat(400),
        fc.nat(60),
        (words, from, length) => {
          const tasks = words.map((title, index) => {
            const start = addDays(day('2026-01-01'), from);
            return task({
              id: `wake-${index}`,
              title,
              trigger: title,
              range: { from: start, to: addDays(start, length) },
            });
          });
          const written = calendarFile(file({ tasks, title: words[0]! }));
          for (const line of written.split('\r\n')) expect(octets(line)).toBeLessThanOrEqual(75);
          const lines = read(written);
          expect(values(lines, 'SUMMARY').map(unescaped)).toEqual(words);
          expect(unescaped(values(lines, 'NAME')[0]!)).toBe(words[0]);
          const ids = values(lines, 'UID');
          expect(new Set(ids).size).toBe(tasks.length);
          expect(calendarFile(file({ tasks, title: words[0]! }))).toBe(written);
        },
      ),
      { seed: 5545, numRuns: 500 },
    );
  });

  it('is read back by an independent parser', () => {
    const tasks = [
      task(),
      task({ id: 'wake-2026', title: 'Wake; early, “softly” \\o/', trigger: 'One.\nTwo, three; four.' }),
    ];
    const parsed = new ICAL.Component(ICAL.parse(calendarFile(file({ tasks, alarms: true }))));
    const events = parsed.getAllSubcomponents('vevent').map(component => new ICAL.Event(component));
    expect(events.map(({ uid }) => uid)).toEqual(
      tasks.map(({ id }) => `${id}.overwintering-pot.minneapolis-mn@kettlewise.example`),
    );
    for (const event of events) {
      expect([event.startDate.isDate, String(event.startDate), String(event.endDate)]).toEqual([
        true,
        '2026-10-30',
        '2026-11-05',
      ]);
    }
    expect(events.map(({ summary }) => summary)).toEqual(tasks.map(({ title }) => title));
    expect(events[1]?.description).toMatch(/^One\.\nTwo, three; four\.\n/);
    // 15 hours before midnight of the first day: nine in the morning of the day before.
    const alarm = parsed.getAllSubcomponents('vevent')[0]?.getFirstSubcomponent('valarm');
    expect(String(alarm?.getFirstPropertyValue('trigger'))).toBe('-PT15H');
  });

  it('never cuts a character in two', () => {
    const title = 'é'.repeat(200) + '🌳'.repeat(60);
    const written = calendarFile(file({ tasks: [task({ title })] }));
    for (const line of written.split('\r\n')) {
      expect(octets(line)).toBeLessThanOrEqual(75);
      expect(line).not.toMatch(/[\ud800-\udbff]$/);
    }
    expect(values(read(written), 'SUMMARY').map(unescaped)).toEqual([title]);
  });
});
