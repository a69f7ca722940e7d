import { setTimeout as pause } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { inTurns } from './turns.ts';

describe('jobs in turns', () => {
  it('are never more at once than there are places, start in order, and go on after a failure', async () => {
    const turn = inTurns(2);
    let under = 0;
    let most = 0;
    const started: number[] = [];
    const done = await Promise.allSettled(
      [3, 1, 2, 1, 1].map((length, index) =>
        turn(async () => {
          started.push(index);
          under += 1;
          most = Math.max(most, under);
          await pause(length * 3);
          under -= 1;
          if (index === 1) throw new Error('failed');
          return index;
        }),
      ),
    );
    expect(most).toBe(2);
    expect(started).toEqual([0, 1, 2, 3, 4]);
    expect(done.map(({ status }) => status)).toEqual([
      'fulfilled',
      'rejected',
      'fulfilled',
      'fulfilled',
      'fulfilled',
    ]);
  });
});
