import { describe, expect, it } from 'vitest';
import { gateOf, logOf, wordsOf } from '../../../../tests/askGate.ts';
import { catalogueOf, type World, worldRecords } from '../../../../tests/world.ts';

describe('rooted', () => {
  const potted = '2026-07-11';

  it('passes on roots seen holding, for a pot', () => {
    const world: World = { walks: { '2026-08-20': [{ roots: 'holding' }] } };
    expect(gateOf(world, '2026-08-21', 'rooted')).toMatchObject({ state: 'passed', range: null });
  });

  it('opens by warm days after potting while nobody has looked', () => {
    const gate = gateOf({}, '2026-07-20', 'rooted');
    expect(gate.state).toBe('opens');
    // July at Asheville has a mean of 21.9 C: 21 to 28 warm days take about 25 to 33 days.
    expect(gate.range!.from > '2026-07-29').toBe(true);
    expect(gate.range!.to < '2026-08-25').toBe(true);
    expect(wordsOf(gate)).toContain('going by the weather of Asheville');
    expect(gate.because.some(({ standing }) => standing === 'modeled')).toBe(true);
  });

  it('asks for a look when the model expects roots and nobody has seen them: never passes by the model', () => {
    for (const asOf of ['2026-09-10', '2026-11-10', '2027-06-10']) {
      expect(gateOf({}, asOf, 'rooted').state).toBe('look');
    }
  });

  it('says so when what was seen is behind the model', () => {
    const gate = gateOf({ walks: { '2026-09-15': [{ roots: 'showing' }] } }, '2026-09-20', 'rooted');
    expect(gate.state).toBe('look');
    expect(wordsOf(gate)).toContain('behind the model');
  });

  it('counts anew from a day without roots that came later than expected', () => {
    const before = gateOf({}, '2026-08-12', 'rooted').range!;
    const gate = gateOf({ walks: { '2026-08-12': [{ roots: 'none' }] } }, '2026-08-12', 'rooted');
    expect(gate.state).toBe('opens');
    expect(gate.range!.from > before.to).toBe(true);
    expect(wordsOf(gate)).toContain('counted anew');
  });

  it('does not trust roots seen before the lot was potted on', () => {
    const world: World = {
      lots: [
        {
          pottings: [
            { date: potted, container: '#1' },
            { date: '2026-09-10', container: '#3' },
          ],
        },
      ],
      walks: { '2026-09-01': [{ roots: 'full' }] },
    };
    expect(gateOf(world, '2026-09-05', 'rooted').state).toBe('passed');
    expect(gateOf(world, '2026-09-12', 'rooted').state).toBe('opens');
  });

  it('lets the yard’s own thermometer decide up to today', () => {
    const cold = { log: logOf(potted, '2026-08-05', 9, 15) };
    const warm = { log: logOf(potted, '2026-08-05', 20, 28) };
    const [late, early] = [gateOf(cold, '2026-08-05', 'rooted'), gateOf(warm, '2026-08-05', 'rooted')];
    expect(late.range!.from > early.range!.to).toBe(true);
    expect(wordsOf(early)).toContain("the yard's own thermometer up to August 5, 2026");
  });

  it('tells of a layer still on its mother when it can be cut and then hold', () => {
    const records = worldRecords({ lots: [{ pottings: [] }] });
    records.lots = records.lots.map(lot => ({ ...lot, severed: null }));
    const gate = catalogueOf(records, '2026-06-20').lots[0]!.forms[0]!.gates.find(
      ({ name }) => name === 'rooted',
    )!;
    expect(gate.state).toBe('opens');
    expect(gate.range!.from > '2026-07-20').toBe(true);
    expect(wordsOf(gate)).toContain('still hang on the mother plant');
  });

  describe('for bare-root', () => {
    it('passes on full roots', () => {
      const world: World = { walks: { '2026-11-20': [{ roots: 'full' }] } };
      expect(gateOf(world, '2026-11-21', 'rooted', 'bare-root').state).toBe('passed');
    });

    it('opens about six months after severing for roots that hold', () => {
      const world: World = { walks: { '2026-09-20': [{ roots: 'holding' }] } };
      const gate = gateOf(world, '2026-09-21', 'rooted', 'bare-root');
      expect(gate).toMatchObject({ state: 'opens', range: { from: '2027-01-07', to: '2027-01-07' } });
      expect(gate.because.at(-1)!.standing).toBe('practice');
      expect(gateOf(world, '2027-01-07', 'rooted', 'bare-root').state).toBe('passed');
    });

    it('wants a look when roots were seen not full after that', () => {
      const world: World = { walks: { '2027-01-20': [{ roots: 'holding' }] } };
      expect(gateOf(world, '2027-01-21', 'rooted', 'bare-root').state).toBe('look');
    });
  });
});
