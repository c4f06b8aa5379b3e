import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { messPoints, unitMess } from '#engine/labour/mess.ts';
import type { Norms } from '#model/library.ts';
import { library } from './labour-material.ts';

const minutes = { unit: 'each', lowMin: 1, typicalMin: 1, highMin: 1 } as const;
const norms: Norms = {
  ...library.norms,
  tasks: [
    { task: 'chase-block', ...minutes, mess: 8 },
    { task: 'fill-chase', ...minutes, mess: 2.25 },
    { task: 'fit-board', ...minutes },
  ],
};

describe('the disturbance of a list of work', () => {
  it('is quantities by the norms’ points, to a tenth', () => {
    const work = [
      { task: 'chase-block', quantity: 3.2 },
      { task: 'fill-chase', quantity: 3.2 },
      { task: 'fit-board', quantity: 1 },
    ];
    expect(messPoints(work, norms)).toBe(32.8);
    expect(messPoints([{ task: 'fill-chase', quantity: 0.1 }], norms)).toBe(0.2);
    expect(messPoints([], norms)).toBe(0);
  });

  it('is none for what no norm tells of, and for what may only turn out to be needed', () => {
    expect(unitMess('fit-board', norms)).toBe(0);
    expect(unitMess('lift-board', norms)).toBe(0);
    expect(messPoints([{ task: 'lift-board', quantity: 9 }], norms)).toBe(0);
    expect(messPoints([{ task: 'chase-block', quantity: 0 }], norms)).toBe(0);
  });

  it('counts the first of several norms of one task, as the minutes do', () => {
    const twice = { ...norms, tasks: [{ task: 'fit-board', ...minutes, mess: 3 }, ...norms.tasks] };
    expect(unitMess('fit-board', twice)).toBe(3);
  });

  it('grows with the work', () => {
    const quantity = fc.integer({ min: 0, max: 900 }).map((tenths) => tenths / 10);
    fc.assert(
      fc.property(quantity, quantity, (one, more) => {
        const work = (metres: number) => messPoints([{ task: 'chase-block', quantity: metres }], norms);
        expect(work(one + more)).toBeGreaterThanOrEqual(work(one));
      }),
    );
  });
});
