import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Demand, linesOf, pieceOf } from '#engine/takeoff/demand.ts';
import { noWaste } from './worked-builder.ts';

const waste = { cable: 5, containment: 10, fixings: 20, fillers: 25 };

function asked(item: string, measured: number, rest: Partial<Demand> = {}): Demand {
  return { item, unit: 'each', group: 'boxes', measured, causes: ['w'], ...rest };
}

describe('lines', () => {
  it('add up what several causes ask of one item, causes named once', () => {
    const lines = linesOf([asked('grommet-20', 2), asked('grommet-20', 1, { causes: ['a', 'w'] })], noWaste);
    expect(lines).toMatchObject([{ item: 'grommet-20', quantity: 3, causes: ['a', 'w'] }]);
  });

  it('take waste by what is cut: cable, tube, screws and plaster, never what is counted', () => {
    const lines = linesOf(
      [
        asked('cable-flat-2.5-1.5', 10, { unit: 'm', group: 'cable' }),
        asked('oval-20', 10, { unit: 'm', group: 'containment' }),
        asked('channel-bend-16x16', 10, { group: 'containment' }),
        asked('screw-floor', 10, { group: 'fixings' }),
        asked('noggin-300', 10, { group: 'fixings' }),
        asked('plaster-one-coat', 10, { unit: 'kg', group: 'making-good' }),
        asked('caulk', 10, { group: 'making-good' }),
        asked('socket-twin', 10, { group: 'accessories' }),
      ],
      waste,
    );
    expect(Object.fromEntries(lines.map((line) => [line.item, line.wastePercent]))).toEqual({
      'cable-flat-2.5-1.5': 5,
      caulk: 0,
      'channel-bend-16x16': 0,
      'noggin-300': 0,
      'oval-20': 10,
      'plaster-one-coat': 25,
      'screw-floor': 20,
      'socket-twin': 0,
    });
  });

  it.each([
    [[1, 1, 1], 0],
    [[2, 1, 3], 0],
    [[2, 2], 0],
    [[2, 2, 2], 10],
    [[1.6, 1.6, 1.6, 1.2], 10],
    [[4], 0],
    [[4, 2], 0],
  ])('cut from lengths of 3 m in pieces of %j m take %i % of waste', (lengthsM, wastePercent) => {
    const measured = lengthsM.reduce((sum, lengthM) => sum + lengthM, 0);
    const pieces = lengthsM.map((lengthM) =>
      pieceOf({ cause: 'w', measuredM: lengthM, lowM: lengthM, highM: lengthM, unbroken: false }),
    );
    const tube = asked('oval-20', measured, { unit: 'm', pieces, soldM: 3 });
    expect(linesOf([tube], waste)[0]?.wastePercent).toBe(wastePercent);
  });

  it.each([
    ['each', 2.000_000_1, 2],
    ['each', 2.01, 3],
    ['m', 2.01, 2.1],
    ['m', 2.1, 2.1],
    ['kg', 0.04, 0.1],
  ] as const)('round %s up: %f is %f', (unit, measured, quantity) => {
    expect(linesOf([asked('x', measured, { unit })], noWaste)[0]?.quantity).toBeCloseTo(quantity, 9);
  });

  it('name a thing outside the list, so that its missing price is seen', () => {
    expect(linesOf([asked('box-steel-3-gang-35', 1)], noWaste)).toMatchObject([
      {
        item: 'box-steel-3-gang-35',
        description: expect.stringContaining('not a stock item'),
        group: 'boxes',
      },
    ]);
  });

  it('leave out what is never needed, and keep what may be', () => {
    const lines = linesOf([asked('grommet-20', 0), asked('caulk', 0, { high: 1 })], noWaste);
    expect(lines).toMatchObject([{ item: 'caulk', quantity: 0, highQuantity: 1 }]);
  });

  it('keep low, quantity and high in order and at least what is measured, whatever is asked', () => {
    const demand = fc.record({
      item: fc.constantFrom('screw-floor', 'oval-20', 'caulk'),
      unit: fc.constant('each' as const),
      group: fc.constant('fixings' as const),
      measured: fc.double({ min: 0, max: 500, noNaN: true }),
      low: fc.double({ min: 0, max: 500, noNaN: true }),
      high: fc.double({ min: 0, max: 500, noNaN: true }),
      causes: fc.array(fc.constantFrom('a', 'b', 'c'), { minLength: 1 }),
    });
    fc.assert(
      fc.property(fc.array(demand), (demands) => {
        for (const line of linesOf(demands, waste)) {
          expect(line.lowQuantity).toBeLessThanOrEqual(line.quantity);
          expect(line.quantity).toBeLessThanOrEqual(line.highQuantity);
          expect(line.quantity).toBeGreaterThanOrEqual(line.measured - 1e-4);
          expect(line.causes.length).toBeGreaterThan(0);
          expect(line.causes).toEqual([...new Set(line.causes)].toSorted());
        }
      }),
      { seed: 11 },
    );
  });
});
