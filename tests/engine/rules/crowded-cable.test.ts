import { describe, expect, it } from 'vitest';
import type { CircuitShape } from '#engine/circuit/shape.ts';
import { cableAfterFuse } from '#engine/rules/cable-after-fuse.ts';
import { fixedLoadWithin } from '#engine/rules/fixed-load-within.ts';
import { radialCable } from '#engine/rules/radial-cable.ts';
import type { Rule } from '#engine/rules/rule.ts';
import { spurCable } from '#engine/rules/spur-cable.ts';
import {
  capacityOf,
  circuitOf,
  edgeOf,
  factsOf,
  legOf,
  nodeOf,
  nodePlaceOf,
  pointOf,
  runOf,
  saidBy,
  segmentOf,
  shapeOf,
  spurOf,
  unitOf,
} from './facts-builder.ts';

const upstream = { upstreamNode: 'r1', upstreamEdgeId: 'l1' } as const;
const spur = shapeOf('c', { spurs: [spurOf('spur@l1', { edgeIds: ['l1'], accessoryNodes: ['w'] })] });
const radial = shapeOf('c', { shape: 'radial', places: [nodePlaceOf('w', { role: 'radial', ...upstream })] });
const behindFuse = shapeOf('c', {
  places: [nodePlaceOf('w', { role: 'behind-fuse', behindUnit: 'r1', ...upstream })],
});
const fixed = shapeOf('c', { places: [nodePlaceOf('w', { role: 'unfused-spur', ...upstream })] });

/** A cable found to W that carries so much with the new cable beside it, and carried so much before. */
function said(rule: Rule, shape: CircuitShape, { izA, before, touched = true }: Crowding) {
  const circuit = circuitOf('c');
  const device = { standard: 'BS-EN-60898', curve: 'B', ratingA: 20 } as const;
  const facts = factsOf({
    job: {
      circuits: [circuit],
      legs: [legOf('l1', 'r1', 'w')],
      points: [
        pointOf('r1'),
        pointOf('w', { kind: 'cooker-control', load: { watts: 4600, use: 'heater', fixed: true } }),
      ],
    },
    proposed: {
      nodes: [nodeOf('r1'), nodeOf('w')],
      edges: [edgeOf('l1', 'r1', 'w')],
      circuits: [{ id: 'c', name: 'Circuit', board: null, device, circuit, isNew: false }],
    },
    capacities: [capacityOf('l1', { izA, asFound: capacityOf('l1', { izA: before }) })],
    foundRuns: [runOf('l1', [segmentOf()], { pinned: true })],
    shapes: [shape],
    circuitIds: touched ? ['c'] : [],
    things: { fusedUnits: [unitOf('r1', { loadNode: 'r1', fuseA: 20 })] },
  });
  return saidBy(rule, facts).map(({ outcome, origin }) => [outcome, origin]);
}

interface Crowding {
  readonly izA: number;
  readonly before: number;
  readonly touched?: boolean;
}

// 20 A are needed in every case: of a spur and of a radial behind 20 A, behind a fuse of 20 A (there is none of
// that size: it is taken for its number), and by 4600 W at 230 V.
describe.each<[string, Rule, CircuitShape]>([
  ['[SP5] the cable of a spur', spurCable, spur],
  ['[CA3] the cable of a radial', radialCable, radial],
  ['[CA2] the cable after a fuse', cableAfterFuse, behindFuse],
  ['[FL2] the cable to a fixed load', fixedLoadWithin, fixed],
])('%s beside new cable', (_, rule, shape) => {
  it('is the scheme’s fault where it met the limit before', () => {
    expect(said(rule, shape, { izA: 18.4, before: 23 })).toEqual([['fails', 'scheme']]);
    expect(said(rule, shape, { izA: 18.4, before: 20 })).toEqual([['fails', 'scheme']]);
  });

  it('is not where it fell short before', () => {
    expect(said(rule, shape, { izA: 16.1, before: 18.4 })).toEqual([['fails', 'found']]);
  });

  it('is told of a circuit that the scheme leaves alone otherwise only where the scheme is to blame', () => {
    expect(said(rule, shape, { izA: 18.4, before: 23, touched: false })).toEqual([['fails', 'scheme']]);
    expect(said(rule, shape, { izA: 16.1, before: 18.4, touched: false })).toEqual([]);
    expect(said(rule, shape, { izA: 23, before: 27, touched: false })).toEqual([]);
  });
});
