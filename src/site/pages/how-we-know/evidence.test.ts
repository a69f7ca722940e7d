import { describe, expect, it } from 'vitest';
import { type EvidenceTable, rowsFrom } from '../../../core/evidence/table.ts';
import { evidenceSummary, evidenceView } from './evidence.ts';

const one = rowsFrom('First source');
const other = rowsFrom('Second source', 'measured');
const table: EvidenceTable = {
  id: 'made-up',
  title: 'Made up for the test',
  about: 'Nothing.',
  weak: null,
  rows: [
    other.number('mean error over 3 places', 0, 2.97222, 3.2, 'days'),
    other.number('first freeze: bias', 0, -0.5, 1, 'days'),
    one.number('heat', 2863, 2865.439036, 28.63, 'C-degree-days'),
    other.text('middle date', '11-09', '11-14'),
    one.number('exact', 60, 60, 0, 'days'),
    one.number('fine', 0.12, 0.1196551, 0.0005, 'rad'),
  ],
  notChecked: [],
};

describe('evidence on the page', () => {
  const view = evidenceView(table);

  it('keeps every row, sums first, the others under their source', () => {
    expect(view.groups.map(({ source, lines }) => [source, lines.length])).toEqual([
      ['First source (printed in the source)', 3],
      ['Second source (from observations)', 1],
    ]);
    const sums = view.errors.flatMap(({ errors }) => errors).filter(line => line !== null);
    const shown = sums.length + view.groups.reduce((sum, { lines }) => sum + lines.length, 0);
    expect(shown).toBe(table.rows.length);
  });

  it('sets sums over many places side by side', () => {
    expect(view.measures).toEqual(['Mean error', 'Bias']);
    expect(view.errors.map(({ over, errors }) => [over, errors.map(line => line?.got ?? null)])).toEqual([
      ['All 3 places', ['2.97', null]],
      ['First freeze', [null, '-0.5']],
    ]);
    const plain = table.rows.filter(({ what }) => !what.includes(': '));
    const another = { ...plain[0]!, what: 'bias' };
    const { errors } = evidenceView({ ...table, rows: [...plain, another] });
    expect(errors).toMatchObject([{ over: 'All 3 places', errors: [{ got: '2.97' }, { got: '2.97' }] }]);
  });

  it('prints as many digits as the comparison needs, and dates as dates', () => {
    const lines = view.groups.flatMap(group => group.lines);
    expect(lines.find(({ what }) => what === 'Heat')).toMatchObject({
      expected: '2863',
      got: '2865.4',
      within: '28.6 C-degree-days',
    });
    expect(lines.find(({ what }) => what === 'Fine')).toMatchObject({
      got: '0.119655',
      within: '0.0005 rad',
    });
    expect(lines.find(({ what }) => what === 'Middle date')).toMatchObject({
      expected: 'Nov 9',
      got: 'Nov 14',
    });
    expect(lines.find(({ what }) => what === 'Exact')?.within).toBe('');
  });

  it('does not hide a row that fails', () => {
    expect(view.failed).toBe(1);
    expect(view.verdict).toBe(
      '6 rows beside figures that others printed or observed; 1 of them outside what is allowed',
    );
    expect(evidenceSummary([view])).toMatch(/compares 6 figures with what others .* 1 of them do not hold/);
    const good = evidenceView({ ...table, rows: table.rows.filter(({ ok }) => ok) });
    expect(evidenceSummary([good])).toMatch(/All of them hold\.$/);
  });

  it('counts figures of our own apart from those that meet the world outside, and sets them last', () => {
    const mixed = evidenceView({
      ...table,
      rows: [
        rowsFrom('Our bound', 'own').number('middle of our own range', 5, 5, 1, 'days'),
        rowsFrom('Habit, no source', 'practice').number('habit', 5, 5, 1, 'days'),
        rowsFrom('Worked by hand', 'computed').number('sum', 2, 2, 0, ''),
        one.number('heat', 10, 10, 1, 'C'),
      ],
    });
    expect(mixed.worth).toEqual({ outside: 1, worked: 1, own: 2 });
    expect(mixed.groups.map(({ worth }) => worth)).toEqual(['outside', 'worked', 'own', 'own']);
    expect(evidenceSummary([mixed])).toContain('compares 1 figure with what others printed or observed');
    expect(evidenceSummary([mixed])).toContain('and 2 only restate figures of our own');
  });
});
