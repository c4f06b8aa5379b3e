import { describe, expect, it } from 'vitest';
import { protectiveCurrent } from '#engine/rules/protective-current.ts';
import { boardOf, circuitOf, factsOf, nodePlaceOf, pointOf, saidBy, shapeOf } from './facts-builder.ts';

/** What is said of loads named on a circuit behind an RCD of this residual current. */
const said = (watts: readonly number[], mA = 30) => {
  const points = watts.map((each, i) => pointOf(`p${i}`, { load: { watts: each, use: 'x', fixed: true } }));
  return saidBy(
    protectiveCurrent,
    factsOf({
      job: {
        boards: [boardOf('b1', { rcds: [{ id: 'q', type: 'A', mA }] })],
        circuits: [circuitOf('c', { upstreamRcd: 'q' })],
        points,
      },
      shapes: [shapeOf('c', { places: points.map(({ id }) => nodePlaceOf(id)) })],
    }),
  );
};

// 0.75 mA a kilowatt of heating, 5 mA at the most (BS EN 60335-1, from memory); 30 % of 30 mA are 9 mA (BS 7671 531.3.2).
describe('leakage behind an RCD', () => {
  it('[PC1] passes up to 9 mA behind 30 mA, and is to be decided above', () => {
    expect(said([3000, 3000, 3000, 3000])).toMatchObject([
      { outcome: 'passes', actual: 9, limit: 9, unit: 'mA' },
    ]);
    expect(said([3000, 3000, 3000, 3000, 100])).toMatchObject([
      { outcome: 'decide', actual: 9.8, subjectId: 'c' },
    ]);
  });

  it('[PC1] is silent without an RCD that is known of, or without named loads', () => {
    expect(said([])).toEqual([]);
    expect(
      saidBy(protectiveCurrent, factsOf({ shapes: [shapeOf('c')], job: { circuits: [circuitOf('c')] } })),
    ).toEqual([]);
  });
});
