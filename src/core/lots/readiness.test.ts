/** How gates make the answer about a form, and which season it is about. */

import { describe, expect, it } from 'vitest';
import { answerOf, wordsOf } from '../../../tests/askGate.ts';
import { catalogueOf, type Line, type World, worldRecords } from '../../../tests/world.ts';
import { later } from '../days.ts';

const asleep: Line = {
  left: 9,
  roots: 'full',
  leaves: 'bare',
  wood: 'brown',
  health: 'sound',
  where: 'outdoors',
  heightCm: 60,
  caliperMm: 9,
};
const winter = (differs: Line = {}): World => ({
  walks: { '2026-11-10': [{ leaves: 'falling' }], '2026-12-10': [{ ...asleep, ...differs }] },
});

describe('the state of a form', () => {
  it('is ready when every gate has passed, with their reasons', () => {
    const answer = answerOf(winter(), '2026-12-20', 'dormant-pot');
    expect(answer.state).toBe('ready');
    expect(answer.gates.map(({ name }) => name)).toEqual([
      'counted',
      'rooted',
      'weaned',
      'sized',
      'sound',
      'dormant',
    ]);
    expect(wordsOf(answer)).toContain('Roots full on the walk of December 10, 2026.');
  });

  it('is blocked by one gate, with its reasons only', () => {
    const answer = answerOf(winter({ health: 'hold', heightCm: null }), '2026-12-20', 'dormant-pot');
    expect(answer.state).toBe('blocked');
    expect(answer.because).toEqual([
      { text: 'Held back for their health on the walk of December 10, 2026.', standing: 'seen' },
    ]);
  });

  it('waits for a look where that is all that is missing', () => {
    expect(answerOf(winter({ health: null }), '2026-12-20', 'dormant-pot').state).toBe('look');
  });

  it('opens on a day to come, and tells what wants a look before', () => {
    const answer = answerOf(winter({ health: null }), '2026-12-20', 'leafed-pot');
    expect(answer.state).toBe('opens');
    expect(wordsOf(answer)).toMatch(/In full leaf.*Nobody has noted yet whether the plants are sound/);
  });

  it('opens when its last gate does', () => {
    const world: World = {
      walks: { '2026-07-12': [{ left: 20, health: 'sound', leaves: 'full', where: 'shade' }] },
    };
    const { range, gates } = answerOf(world, '2026-07-20', 'leafed-pot');
    const opening = gates.flatMap(gate => (gate.range ? [gate.range] : []));
    expect(opening.length).toBeGreaterThan(1);
    expect(range!.from).toBe(opening.map(({ from }) => from).reduce(later));
    expect(range!.to).toBe(opening.map(({ to }) => to).reduce(later));
  });
});

describe('the season of a form', () => {
  /** A cutting struck in winter: bare, and awake long before it has roots. */
  const cutting: World = {
    lots: [{ method: 'cutting', started: '2027-02-20', pottings: [{ date: '2027-02-20', container: '#1' }] }],
    walks: {
      '2027-02-20': [
        { left: 20, leaves: 'bare', wood: 'brown', health: 'sound', heightCm: 45, caliperMm: 7 },
      ],
    },
  };

  it('is the next one when the present will be over by the time everything else is ready', () => {
    const dormant = answerOf(cutting, '2027-02-25', 'dormant-pot');
    expect(dormant.state).toBe('opens');
    expect(dormant.range!.from > '2027-10-15').toBe(true);
    const leafed = answerOf(cutting, '2027-02-25', 'leafed-pot');
    expect(leafed.range!.from > '2027-04-15').toBe(true);
    expect(leafed.range!.to < '2027-09-01').toBe(true);
  });

  it('is judged by the weather for a day to come, not by a look today', () => {
    const { walks: _walks, ...unseen } = cutting;
    const dormant = answerOf(unseen, '2027-02-25', 'dormant-pot');
    expect(dormant.range!.from > '2027-10-15').toBe(true);
    expect(dormant.gates.at(-1)!.state).toBe('opens');
  });

  it('ends the span in which a form opens, and says so', () => {
    // Potted late in summer: roots hold in September or, in a cool year, October; leaves may fall from early October on.
    const pottedOn = (date: string): World => ({
      lots: [{ severed: '2026-07-11', pottings: [{ date, container: '#1' }] }],
      walks: {
        '2026-08-20': [{ where: 'outdoors' }],
        '2026-09-05': [
          { left: 20, leaves: 'full', where: 'outdoors', health: 'sound', heightCm: 60, caliperMm: 9 },
        ],
      },
    });
    const answer = answerOf(pottedOn('2026-08-18'), '2026-09-06', 'leafed-pot');
    const leafed = answer.gates.find(({ name }) => name === 'leafed')!;
    expect(answer.state).toBe('opens');
    expect(answer.range!.to < leafed.closes!).toBe(true);
    expect(wordsOf(answer)).toContain('it waits for the next season');
    // A week later most years have no leaves left by the time roots hold.
    expect(answerOf(pottedOn('2026-08-25'), '2026-09-06', 'leafed-pot').range!.from > '2027-04-01').toBe(
      true,
    );
  });
});

describe('what to look at next', () => {
  const nextOf = (world: World, asOf: string) => catalogueOf(worldRecords(world), asOf).lots[0]!.lookNext;

  it('lists what a form waits for', () => {
    expect(nextOf(winter({ health: null, heightCm: null }), '2026-12-20')).toBe(
      'Measure height and stem and see whether they are sound.',
    );
  });

  it('tells from when roots are worth a look', () => {
    const world: World = {
      walks: {
        '2026-07-12': [
          { left: 20, health: 'sound', leaves: 'full', where: 'shade', heightCm: 45, caliperMm: 7 },
        ],
      },
    };
    expect(nextOf(world, '2026-07-14')).toMatch(/^From (?:July|August) \d+, 2026 look at the roots\.$/);
  });

  it('is nothing for a lot that is ready, or sold out', () => {
    expect(nextOf({ ...winter(), lots: [{ forms: ['dormant-pot'] }] }, '2026-12-20')).toBeNull();
    expect(nextOf(winter({ left: 0, health: null }), '2026-12-20')).toBeNull();
  });
});
