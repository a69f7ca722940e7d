/** Every gate through a small yard: what was seen, what the record says, and what the weather lets expect. */

import { describe, expect, it } from 'vitest';
import { catalogueOf, southern, tropics, type World, worldRecords } from '../../../../tests/world.ts';
import { addDays, type Day, day } from '../../days.ts';
import type { Form } from '../../records/common.ts';
import type { DailyReading } from '../../records/records.ts';
import type { FormAnswer, Gate, GateName } from '../answers.ts';

function answerOf(world: World, asOf: string, form: Form): FormAnswer {
  return catalogueOf(worldRecords(world), asOf).lots[0]!.forms.find(answer => answer.form === form)!;
}

function gateOf(world: World, asOf: string, name: GateName, form: Form = 'dormant-pot'): Gate {
  return answerOf(world, asOf, form).gates.find(gate => gate.name === name)!;
}

const wordsOf = ({ because }: { because: Gate['because'] }) => because.map(({ text }) => text).join(' ');

/** A log in which every day is alike. */
function logOf(from: string, to: string, tminC: number, tmaxC: number): DailyReading[] {
  const readings: DailyReading[] = [];
  for (let at: Day = day(from); at <= to; at = addDays(at, 1)) readings.push({ day: at, tminC, tmaxC });
  return readings;
}

describe('counted', () => {
  it('passes on a fresh count', () => {
    const world: World = { walks: { '2026-09-01': [{ left: 12 }] } };
    expect(gateOf(world, '2026-10-01', 'counted')).toMatchObject({ state: 'passed' });
  });

  it('asks for a look once the count is older than the yard allows', () => {
    const world: World = { walks: { '2026-09-01': [{ left: 12 }] } };
    expect(gateOf(world, '2026-10-16', 'counted').state).toBe('passed');
    expect(gateOf(world, '2026-10-17', 'counted').state).toBe('look');
  });

  it('is blocked when none are left, sold out or lost', () => {
    expect(wordsOf(gateOf({ walks: { '2026-09-01': [{ left: 0 }] } }, '2026-09-02', 'counted'))).toContain(
      'sold out',
    );
    const lost = gateOf({ walks: { '2026-09-01': [{ left: 0, lost: 20 }] } }, '2026-09-02', 'counted');
    expect(lost.state).toBe('blocked');
    expect(wordsOf(lost)).toContain('lost');
  });
});

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
    expect(wordsOf(gate)).toContain('by the weather of Asheville');
    expect(gate.because.some(({ standing }) => standing === 'modelled')).toBe(true);
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
    expect(wordsOf(early)).toContain("the yard's own thermometer to 5 August 2026");
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

describe('weaned', () => {
  it('takes about six weeks from severing in a warm summer', () => {
    const gate = gateOf({}, '2026-07-20', 'weaned');
    expect(gate).toMatchObject({ state: 'opens', range: { from: '2026-08-21', to: '2026-08-21' } });
    expect(gateOf({}, '2026-08-20', 'weaned').state).toBe('opens');
    expect(gateOf({}, '2026-08-21', 'weaned').state).toBe('passed');
  });

  it('takes longer in the cold', () => {
    const world: World = {
      lots: [{ severed: '2026-11-01', pottings: [{ date: '2026-11-01', container: '#1' }] }],
    };
    const gate = gateOf(world, '2026-11-02', 'weaned');
    expect(gate.range!.from > '2026-12-20').toBe(true);
    expect(gate.range!.to < '2027-01-25').toBe(true);
  });

  it('asks for a look where the species has no figure for the method', () => {
    const world: World = { lots: [{ method: 'graft' }] };
    expect(gateOf(world, '2026-12-01', 'weaned').state).toBe('look');
  });
});

describe('sized', () => {
  const measured = (heightCm: number, caliperMm: number): World => ({
    walks: { '2026-08-01': [{ heightCm, caliperMm }] },
  });

  it('passes at the smallest size the yard sells, and stays passed: trees do not shrink', () => {
    expect(gateOf(measured(40, 6), '2026-08-02', 'sized').state).toBe('passed');
    expect(gateOf(measured(40, 6), '2027-02-02', 'sized').state).toBe('passed');
  });

  it('is blocked with what is missing', () => {
    const gate = gateOf(measured(30, 7), '2026-08-02', 'sized');
    expect(gate.state).toBe('blocked');
    expect(wordsOf(gate)).toContain('4 in (10 cm) less than the 16 in (40 cm) sold in #1');
  });

  it('asks to measure again in the growing season, not in winter', () => {
    expect(gateOf(measured(30, 7), '2026-09-25', 'sized').state).toBe('look');
    expect(gateOf(measured(30, 7), '2027-01-25', 'sized').state).toBe('blocked');
  });

  it('asks for a first measure', () => {
    expect(gateOf({}, '2026-08-02', 'sized').state).toBe('look');
    const half = gateOf({ walks: { '2026-08-01': [{ heightCm: 60 }] } }, '2026-08-02', 'sized');
    expect(half.state).toBe('look');
    expect(wordsOf(half)).toContain('stem');
  });

  it('is blocked in a pot smaller than any that is sold, and takes the limit of the next smaller class above', () => {
    const inPot = (container: string): World => ({
      ...measured(60, 9),
      lots: [{ pottings: [{ date: '2026-07-11', container }] }],
    });
    expect(gateOf(inPot('SP4'), '2026-08-02', 'sized').state).toBe('blocked');
    expect(wordsOf(gateOf(inPot('#3'), '2026-08-02', 'sized'))).toContain('sold in #1');
  });
});

describe('sound', () => {
  const health = (value: 'sound' | 'watch' | 'hold'): World => ({
    walks: { '2026-08-01': [{ health: value }] },
  });

  it('goes by the newest look at health', () => {
    expect(gateOf(health('sound'), '2026-08-02', 'sound').state).toBe('passed');
    expect(gateOf(health('watch'), '2026-08-02', 'sound').state).toBe('look');
    expect(gateOf(health('hold'), '2026-08-02', 'sound').state).toBe('blocked');
    expect(gateOf({}, '2026-08-02', 'sound').state).toBe('look');
  });

  it('wants a fresh look', () => {
    expect(gateOf(health('sound'), '2026-09-20', 'sound').state).toBe('look');
  });

  it('is blocked while the lot is held, with the reason, from its day on', () => {
    const world: World = {
      ...health('sound'),
      lots: [{ hold: { since: '2026-08-05', why: 'Waiting for a test.' } }],
    };
    expect(gateOf(world, '2026-08-04', 'sound').state).toBe('passed');
    const held = gateOf(world, '2026-08-05', 'sound');
    expect(held.state).toBe('blocked');
    expect(wordsOf(held)).toContain('Waiting for a test.');
  });
});

describe('leafed', () => {
  const inLeaf: World = {
    walks: {
      '2026-08-20': [{ leaves: 'full', where: 'outdoors' }],
      '2026-09-10': [{ leaves: 'full', where: 'outdoors' }],
    },
  };
  const gate = (world: World, asOf: string) => gateOf(world, asOf, 'leafed', 'leafed-pot');

  it('passes in full leaf, hardened outdoors, and tells when leaves may come down', () => {
    const passed = gate(inLeaf, '2026-09-12');
    expect(passed.state).toBe('passed');
    expect(passed.closes! > '2026-09-30').toBe(true);
    expect(passed.closes! < '2026-11-15').toBe(true);
  });

  it('opens ten days after it came outdoors', () => {
    const world: World = { walks: { '2026-09-01': [{ leaves: 'full', where: 'outdoors' }] } };
    expect(gate(world, '2026-09-05')).toMatchObject({
      state: 'opens',
      range: { from: '2026-09-11', to: '2026-09-11' },
    });
  });

  it('is blocked under cover unless hardened before', () => {
    const world: World = { walks: { '2026-09-01': [{ leaves: 'full', where: 'tunnel' }] } };
    expect(gate(world, '2026-09-05').state).toBe('blocked');
    const carriedIn: World = {
      walks: { ...inLeaf.walks, '2026-10-20': [{ leaves: 'full', where: 'tunnel' }] },
    };
    expect(gate(carriedIn, '2026-11-05').state).toBe('passed');
    expect(gate(carriedIn, '2026-11-10').state).toBe('blocked');
  });

  it('does not promise leaves that the weather has taken since', () => {
    const world: World = { ...inLeaf, log: logOf('2026-09-10', '2026-10-05', -4, 9) };
    const lost = gate(world, '2026-10-05');
    expect(lost.state).toBe('opens');
    expect(lost.range!.from > '2027-03-01').toBe(true);
  });

  it('wants a look when leaves were seen too long ago', () => {
    expect(gate({ ...inLeaf, log: logOf('2026-09-10', '2026-10-26', 8, 18) }, '2026-10-26').state).toBe(
      'look',
    );
  });

  it('opens again in spring for a bare tree, and wants a look after that', () => {
    const world: World = { walks: { '2026-12-01': [{ leaves: 'bare' }] } };
    const bare = gate(world, '2026-12-05');
    expect(bare.state).toBe('opens');
    expect(bare.range!.from > '2027-04-01').toBe(true);
    expect(bare.range!.to < '2027-06-15').toBe(true);
    expect(gate(world, '2027-06-20').state).toBe('look');
  });
});

describe('dormant', () => {
  const bare: World = {
    walks: {
      '2026-11-01': [{ leaves: 'falling', wood: 'part' }],
      '2026-11-15': [{ leaves: 'bare', wood: 'brown' }],
    },
  };
  const gate = (world: World, asOf: string) => gateOf(world, asOf, 'dormant');

  it('passes once a bare tree with ripe wood has met its cold days', () => {
    const world: World = { ...bare, log: logOf('2026-11-01', '2026-11-25', 0, 8) };
    expect(gate(world, '2026-11-20').state).toBe('opens');
    expect(gate(world, '2026-11-21').state).toBe('passed');
  });

  it('calls a bare tree that has not met cold leafless, not yet dormant', () => {
    const world: World = { ...bare, log: logOf('2026-11-01', '2026-11-20', 9, 19) };
    const waiting = gate(world, '2026-11-20');
    expect(waiting.state).toBe('opens');
    expect(wordsOf(waiting)).toContain('Leafless, not yet dormant.');
    expect(wordsOf(waiting)).toContain('0 cold days in 20 logged');
  });

  it('does not take leaves stripped by one frost for dormancy', () => {
    const world: World = {
      walks: { '2026-10-12': [{ leaves: 'bare', wood: 'brown' }] },
      log: [...logOf('2026-10-01', '2026-10-10', 8, 20), ...logOf('2026-10-11', '2026-10-11', -3, 12)],
    };
    expect(gate(world, '2026-10-12').state).toBe('opens');
  });

  it('is blocked by green wood, and wants a look once that was seen long ago', () => {
    const world: World = { walks: { '2026-11-15': [{ leaves: 'bare', wood: 'green' }] } };
    expect(gate(world, '2026-12-01').state).toBe('blocked');
    expect(gate(world, '2027-01-15').state).toBe('look');
  });

  it('wants a look at wood nobody has seen', () => {
    expect(gate({ walks: { '2026-11-15': [{ leaves: 'bare' }] } }, '2026-12-20').state).toBe('look');
  });

  it('opens in late autumn for a tree in leaf, and wants a look when it should be asleep', () => {
    const world: World = { walks: { '2026-09-10': [{ leaves: 'full', where: 'outdoors' }] } };
    const ahead = gate(world, '2026-09-12');
    expect(ahead.state).toBe('opens');
    expect(ahead.range!.from > '2026-11-01').toBe(true);
    expect(ahead.range!.to < '2027-01-10').toBe(true);
    expect(gate(world, '2027-01-20').state).toBe('look');
  });

  it('opens next autumn for leaves seen in spring: a late frost does not count', () => {
    const world: World = {
      walks: { '2027-04-25': [{ leaves: 'full', where: 'outdoors' }] },
      log: logOf('2027-04-26', '2027-05-02', -4, 10),
    };
    const ahead = gate(world, '2027-05-02');
    expect(ahead.state).toBe('opens');
    expect(ahead.range!.from > '2027-10-15').toBe(true);
  });

  it('wants a look once buds may have broken, and trusts a fresh one', () => {
    expect(gate(bare, '2027-02-01').state).toBe('passed');
    expect(gate(bare, '2027-04-20').state).toBe('look');
    const late: World = { walks: { ...bare.walks, '2027-04-18': [{ leaves: 'bare' }] } };
    expect(gate(late, '2027-04-20').state).toBe('passed');
    expect(gate(late, '2027-04-28').state).toBe('look');
  });

  it('says that it never gets cold enough where that is so', () => {
    const world: World = { ...bare, home: tropics };
    const blocked = gate(world, '2026-12-20');
    expect(blocked.state).toBe('blocked');
    expect(wordsOf(blocked)).toContain('in fewer than 1 of 10 years');
  });

  it('turns with the year south of the equator', () => {
    const world: World = {
      home: southern,
      walks: { '2026-04-10': [{ leaves: 'full', where: 'outdoors' }] },
      lots: [
        { started: '2025-12-06', severed: '2026-01-11', pottings: [{ date: '2026-01-11', container: '#1' }] },
      ],
    };
    const ahead = gate(world, '2026-04-12');
    expect(ahead.state).toBe('opens');
    expect(ahead.range!.from > '2026-05-01').toBe(true);
    expect(ahead.range!.to < '2026-08-01').toBe(true);
    const leaves = gateOf(
      { ...world, walks: { '2026-07-10': [{ leaves: 'bare' }] } },
      '2026-07-12',
      'leafed',
      'leafed-pot',
    );
    expect(leaves.range!.from > '2026-09-15').toBe(true);
    expect(leaves.range!.to < '2027-01-01').toBe(true);
  });
});

describe('lifting', () => {
  const gate = (world: World, asOf: string) => gateOf(world, asOf, 'lifting', 'bare-root');
  const bare: World = { walks: { '2026-11-15': [{ leaves: 'bare', wood: 'brown' }] } };

  it('passes once the soil is cold, until buds may break', () => {
    const world: World = { ...bare, log: logOf('2026-11-01', '2026-11-20', 0, 8) };
    const passed = gate(world, '2026-11-20');
    expect(passed.state).toBe('passed');
    expect(passed.closes! > '2027-03-01').toBe(true);
  });

  it('opens later in a warm autumn', () => {
    const world: World = { ...bare, log: logOf('2026-11-01', '2026-11-20', 10, 20) };
    expect(gate(world, '2026-11-20').state).toBe('opens');
  });

  it('opens next autumn once buds may have broken', () => {
    const ahead = gate(bare, '2027-05-01');
    expect(ahead.state).toBe('opens');
    expect(ahead.range!.from > '2027-10-15').toBe(true);
  });

  it('passes for a lot that is lifted, as long as bare roots keep', () => {
    const world: World = { ...bare, lots: [{ lifted: '2026-12-01' }] };
    expect(gate(world, '2027-01-30').state).toBe('passed');
    const spent = gate(world, '2027-01-31');
    expect(spent.state).toBe('blocked');
    expect(wordsOf(spent)).toContain('pot them up');
  });
});
