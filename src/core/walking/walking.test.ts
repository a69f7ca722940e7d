import { describe, expect, test } from 'vitest';
import { day } from '../days.ts';
import { readWalk } from '../reading/walkFile.ts';
import { type BenchLot, dayQuestion, type Entry, questionsOf } from './entry.ts';
import { lotsSeen, newFileAddress, walkCsv } from './walkCsv.ts';

const lot: BenchLot = {
  id: '26-cut-03',
  name: 'Wren, #1 pot',
  pot: '#1',
  raised: 20,
  left: 12,
  countedOn: day('2026-11-07'),
  seen: {
    height_in: { text: '24', on: day('2026-10-17') },
    caliper_mm: { text: '9', on: day('2026-10-17') },
  },
};

describe('what is asked at once', () => {
  test.each<[Entry, RegExp]>([
    [{ left: '14' }, /^14 plants left, but 12 were left on 2026-11-07; count again/],
    [{ left: '11', lost: '2' }, /^11 left and 2 lost make 13, but only 12 were left/],
    [{ left: '13', returned: '2', lost: '2' }, /make 15/],
    [{ left: 'ten' }, /ten is no count of plants/],
    [{ left: '3.5' }, /3.5 is no count/],
    [
      { height_in: '61' },
      /^61 in can hardly be right: 61 in \(155 cm\) is more than .+ #1 pot .+\. 61 cm would fit\.$/,
    ],
    [{ height_in: '5' }, /it was 24 in \(61 cm\) on October 17, 2026\. /],
    [{ height_in: '610' }, /610 can hardly be right \(height, in\)\. Look at the unit\./],
    [{ caliper_mm: '90' }, /90 mm \(3.5 in\) is more than/],
    [{ caliper_mm: 'x' }, /x is no number \(stem, mm\)/],
  ])('of %j', (entry, question) => expect(questionsOf(lot, entry).join(' ')).toMatch(question));

  test.each<Entry>([
    {},
    { left: '12' },
    { left: '0' },
    { left: '13', returned: '1' },
    { left: '10', lost: '2', roots: 'holding', note: 'two split, 3 for the fair' },
    { height_in: '30', caliper_mm: '10.5' },
  ])('nothing of %j', entry => expect(questionsOf(lot, entry)).toEqual([]));

  test('of a lot nobody has counted, more than were raised', () => {
    const uncounted = { ...lot, left: 20, countedOn: null };
    expect(questionsOf(uncounted, { left: '20' })).toEqual([]);
    expect(questionsOf(uncounted, { left: '21' }).join()).toMatch(/21 plants left, but only 20 were raised/);
  });
});

describe('the day', () => {
  const made = day('2026-11-28');
  test.each([
    ['2026-11-30', null],
    ['2026-11-28', null],
    ['2026-11-24', /walk of 2026-11-24 already.+content\/walks\/2026-11-24\.csv/],
    ['2019-01-01', /clock of this device says 2019-01-01/],
    ['2027-11-30', /clock/],
  ] as const)('%s', (today, question) => {
    const asked = dayQuestion(day(today), made, day('2026-11-24'));
    if (question === null) expect(asked).toBe(null);
    else expect(asked).toMatch(question);
  });
});

describe('the file', () => {
  const entries = new Map<string, Entry>([
    ['26-cut-03', { left: '10', lost: '2', roots: 'holding', note: 'two split, "soft"' }],
    ['26-cut-04', {}],
    ['26-layer-01', { left: '4', height_in: '30', health: 'watch' }],
  ]);
  const text = walkCsv(entries);

  test('holds the lots that were looked at and the columns that were used', () => {
    expect(text).toBe(
      'lot,left,lost,height_in,roots,health,note\n26-cut-03,10,2,,holding,,"two split, ""soft"""\n26-layer-01,4,,30,,watch,\n',
    );
    expect(lotsSeen(entries)).toBe(2);
  });

  test('is read back as it was typed', () => {
    const { walk, notes, problems } = readWalk('walks/2026-11-30.csv', text);
    expect(problems).toEqual([]);
    expect(walk?.rows).toMatchObject([
      { lot: '26-cut-03', left: 10, lost: 2, roots: 'holding', health: null },
      { lot: '26-layer-01', left: 4, health: 'watch', roots: null },
    ]);
    expect(walk?.rows[1]?.heightCm).toBeCloseTo(76.2, 6);
    expect(notes.map(({ text }) => text)).toEqual(['two split, "soft"']);
  });

  test('goes into the address of a form, unless it is too long for one', () => {
    const pattern = 'https://git.example/yard/new/main/content/walks?filename={name}&value={text}';
    const address = new URL(newFileAddress(pattern, '2026-11-30.csv', text) as string);
    expect(address.searchParams.get('filename')).toBe('2026-11-30.csv');
    expect(address.searchParams.get('value')).toBe(text);
    expect(newFileAddress(pattern, '2026-11-30.csv', 'a,b\n'.repeat(1500))).toBe(null);
  });
});
