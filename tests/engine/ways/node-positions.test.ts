import { describe, expect, it } from 'vitest';
import type { NetworkEdge, NetworkNode } from '#engine/circuit/network.ts';
import { buildPlan } from '#engine/plan/build-plan.ts';
import { plainRoute } from '#engine/ways/find-run.ts';
import { foundRuns } from '#engine/ways/found-runs.ts';
import { defaultLengthAllowances } from '#engine/ways/length-allowances.ts';
import { nodePositions } from '#engine/ways/node-positions.ts';
import { point } from '#tests/engine/plan/small-house.ts';
import { tariff, terrace, terracePlaces } from './demo-houses.ts';
import { broughtNode, legCable, networkOf, newCable, node } from './small-network.ts';

const allowances = defaultLengthAllowances;
const board = { id: 'cu', label: 'CU', place: { ...terracePlaces.R9, heightMm: 1900 }, rcds: [] };
const plan = buildPlan({
  storeys: terrace().storeys.map(({ storey }) => storey),
  points: [
    ...Object.entries(terracePlaces).map(([id, place]) => point(id, place)),
    point('lost'),
    point('new-R8', undefined, { replaces: 'R8' }),
  ],
  boards: [board],
});
const leg = legCable('leg', 'R8', 'R9');
const circuits = [{ id: 'ring', name: 'ring', board, device: null, circuit: null, isNew: false }];

function positions(nodes: NetworkNode[], edges: NetworkEdge[] = []) {
  const found = networkOf([node('R8'), node('R9')], [leg]);
  const runs = foundRuns({
    plan,
    network: found,
    legs: [{ id: 'leg', circuit: 'ring', from: { point: 'R8' }, to: { point: 'R9' }, lengthMm: 5320 }],
    tariff,
    allowances,
    findRun: plainRoute,
  });
  return nodePositions({ plan, network: networkOf(nodes, edges, { circuits }), foundRuns: runs, allowances });
}

describe('nodePositions', () => {
  it('takes points, places, boards and spots in legs as told', () => {
    const told = positions([
      node('R6'),
      node('R6/load', { pointId: 'R6', kind: 'load-terminals' }),
      node('ring', { kind: 'origin', pointId: null, circuitId: 'ring' }),
      broughtNode('c/joint', 'c', { kind: 'joint', inLeg: { legId: 'leg', alongMm: 200 + 410 + 1000 } }),
      broughtNode('d/joint', 'd', { kind: 'joint', place: { storey: 'ff', at: [1, 2], heightMm: -110 } }),
      node('R1/joined', { kind: 'joint', pointId: 'R1' }),
    ]);
    expect(told.get('R6')).toEqual(plan.positionOfPoint.get('R6'));
    expect(told.get('R6/load')).toEqual(plan.positionOfPoint.get('R6'));
    expect(told.get('ring')?.heightMm).toBe(1900);
    expect(told.get('c/joint')?.at).toEqual([4200, 4000]);
    expect(told.get('c/joint')?.heightMm).toBeCloseTo(-110, 6);
    expect(told.get('d/joint')?.at).toEqual([1, 2]);
    expect(told.get('R1/joined')).toEqual(plan.positionOfPoint.get('R1'));
  });

  it('puts a point that replaces another where that one was', () => {
    expect(positions([node('new-R8')]).get('new-R8')).toEqual(plan.positionOfPoint.get('R8'));
  });

  it('does not guess where a point without a place is', () => {
    const told = positions([node('R8'), node('lost')], [newCable('c/cable-1', 'R8', 'lost')]);
    expect(told.has('lost')).toBe(false);
  });

  it('puts a unit without a place 300 mm along the wall from what feeds it, both its sides', () => {
    const nodes = [
      node('R8'),
      broughtNode('c/unit', 'c'),
      broughtNode('c/unit/load', 'c', { kind: 'load-terminals' }),
    ];
    const edges = [
      newCable('c/cable-1', 'R8', 'c/unit'),
      newCable('c/unit/fuse', 'c/unit', 'c/unit/load', { kind: 'fuse' }),
    ];
    const told = positions(nodes, edges);
    expect(told.get('c/unit')?.onWall).toEqual({ wallId: 'e2', side: 'left', alongMm: 1550 });
    expect(told.get('c/unit')?.heightMm).toBe(300);
    expect(told.get('c/unit/load')).toEqual(told.get('c/unit'));
  });

  it('puts a unit fed from a joint under the floor beside what it feeds', () => {
    const nodes = [
      broughtNode('c/joint', 'c', { kind: 'joint', place: terracePlaces.joint }),
      broughtNode('c/unit', 'c'),
      broughtNode('c/unit/load', 'c', { kind: 'load-terminals' }),
      node('W2'),
    ];
    const edges = [
      newCable('c/cable-1', 'c/joint', 'c/unit'),
      newCable('c/unit/fuse', 'c/unit', 'c/unit/load', { kind: 'fuse' }),
      newCable('c/cable-2', 'c/unit/load', 'W2'),
    ];
    expect(positions(nodes, edges).get('c/unit')?.onWall).toEqual({
      wallId: 's',
      side: 'left',
      alongMm: 3200,
    });
  });

  it('puts a joint in a cable that no leg records at the neighbour whose cable it is', () => {
    const nodes = [node('R8'), broughtNode('c/joint-out', 'c', { kind: 'joint' }), node('W3')];
    const edges = [
      newCable('c/old-out', 'R8', 'c/joint-out', { state: 'found' }),
      newCable('c/cable-1', 'c/joint-out', 'W3'),
    ];
    expect(positions(nodes, edges).get('c/joint-out')).toEqual(plan.positionOfPoint.get('R8'));
  });
});
