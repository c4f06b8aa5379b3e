import { describe, expect, it } from 'vitest';
import { capacityOfRun } from '#engine/proof/capacity-of-run.ts';
import { radialCable } from '#engine/rules/radial-cable.ts';
import type { Device } from '#model/installation.ts';
import {
  capacityOf,
  circuitOf,
  edgeOf,
  factsOf,
  nodeOf,
  nodePlaceOf,
  runOf,
  saidBy,
  segmentOf,
  shapeOf,
  twinOf,
} from './facts-builder.ts';

const breaker = (ratingA: number): Device => ({ standard: 'BS-EN-60898', curve: 'B', ratingA });

function facts(
  device: Device | null,
  lineMm2: number,
  izA: number | null,
  shape: 'radial' | 'ring' | 'unknown' = 'radial',
) {
  const circuit = circuitOf('c');
  const edges = [
    edgeOf('e1', 'c', 'a', { state: 'new', cable: twinOf(lineMm2) }),
    edgeOf('e2', 'a', 'b', { state: 'new', cable: twinOf(lineMm2) }),
    edgeOf('e3', 'a', 'd', { state: 'new', cable: twinOf(lineMm2) }),
  ];
  return factsOf({
    job: { circuits: [circuit] },
    proposed: {
      nodes: ['a', 'b', 'd'].map((id) => nodeOf(id)),
      edges,
      circuits: [{ id: 'c', name: 'c', board: null, device, circuit, isNew: false }],
    },
    capacities: edges.map(({ id }) => capacityOf(id, { izA })),
    shapes: [
      shapeOf('c', {
        shape,
        claimed: 'radial',
        places: edges.map(({ id, from, to }) =>
          nodePlaceOf(to, { role: 'radial', upstreamNode: from, upstreamEdgeId: id }),
        ),
      }),
    ],
  });
}

describe('the cable of a radial', () => {
  it('[CA3] passes a branching 20 A radial at exactly 20 A', () => {
    const said = saidBy(radialCable, facts(breaker(20), 2.5, 20));
    expect(said.map(({ outcome, actual, limit }) => [outcome, actual, limit])).toEqual([
      ['passes', 20, 20],
      ['passes', 20, 20],
      ['passes', 20, 20],
    ]);
  });

  it('[CA3] fails 4 mm² behind 32 A where it carries 30 A', () => {
    expect(saidBy(radialCable, facts(breaker(32), 4, 30))[0]).toMatchObject({
      outcome: 'fails',
      actual: 30,
      limit: 32,
    });
  });

  it('[CA3] asks more behind a rewireable fuse: 20 A ÷ 0.725', () => {
    const fuse: Device = { standard: 'BS-3036', ratingA: 20 };
    expect(saidBy(radialCable, facts(fuse, 2.5, 27))[0]).toMatchObject({ outcome: 'fails', limit: 27.59 });
    expect(saidBy(radialCable, facts(fuse, 4, 37))[0]).toMatchObject({ outcome: 'passes' });
  });

  it('[CA3] is not proven without a device or a way', () => {
    expect(saidBy(radialCable, facts(null, 2.5, 27))).toMatchObject([
      { outcome: 'not-proven', messageId: 'deviceUnknown' },
    ]);
    // It may be a rewireable fuse, for which the cable would be too thin.
    expect(saidBy(radialCable, facts({ ratingA: 20 }, 2.5, 27))).toMatchObject([
      { outcome: 'not-proven', messageId: 'deviceUnknown' },
    ]);
    expect(saidBy(radialCable, facts(breaker(20), 2.5, null))[0]).toMatchObject({ outcome: 'not-proven' });
  });

  it('[CA3] tells found legs whose path nobody saw once a circuit, as found', () => {
    const known = facts(breaker(20), 2.5, 27);
    const edges = known.proposed.edges.map((edge) => ({ ...edge, state: 'found' as const }));
    expect(saidBy(radialCable, { ...known, proposed: { ...known.proposed, edges } })).toEqual([
      {
        outcome: 'not-proven',
        messageId: 'foundNotSeen',
        subjectId: 'c',
        origin: 'found',
        limit: 20,
        unit: 'A',
      },
    ]);
  });

  it('[CA3] passes 4 mm² on 32 A through a void without insulation, and is not proven in one not described', () => {
    const known = facts(breaker(32), 4, 27);
    const through = (insulation: 'none' | 'touching' | null) => {
      const run = runOf('e1', [segmentOf({ medium: 'void-along', insulation })], { cable: twinOf(4) });
      const capacity = capacityOfRun(run, { plan: known.plan, cablesInBundle: new Map() });
      return saidBy(radialCable, { ...known, capacities: new Map([['e1', capacity]]) })[0];
    };
    expect(through('none')).toMatchObject({ outcome: 'passes', actual: 37, limit: 32 });
    expect(through(null)).toMatchObject({ outcome: 'not-proven', limit: 32 });
    // Touching insulation is 27 A at the best.
    expect(through('touching')).toMatchObject({ outcome: 'fails', actual: 27, limit: 32 });
  });

  it('[CA3] holds cables against the device that the scheme fits, and gives it what a larger one spoils', () => {
    const known = facts(breaker(32), 2.5, 27);
    const fitted = (ratingA: number) => {
      const circuits = known.proposed.circuits.map((circuit) => ({ ...circuit, device: breaker(ratingA) }));
      const edges = known.proposed.edges.map((edge) => ({
        ...edge,
        legId: edge.id,
        state: 'found' as const,
      }));
      const runs = edges.map(({ id }) => runOf(id, [segmentOf()], { pinned: true }));
      return saidBy(radialCable, {
        ...known,
        proposed: { ...known.proposed, circuits, edges },
        foundRuns: new Map(runs.map((run) => [run.id, run])),
      })[0];
    };
    expect(fitted(20)).toMatchObject({ outcome: 'passes', limit: 20 });
    expect(fitted(32)).toMatchObject({ outcome: 'fails', limit: 32, origin: 'found' });
    expect(fitted(40)).toMatchObject({ outcome: 'fails', limit: 40, origin: 'scheme' });
  });

  it('[CA3] binds what is only called a radial', () => {
    expect(saidBy(radialCable, facts(breaker(32), 2.5, 27, 'unknown'))[0]).toMatchObject({
      outcome: 'fails',
    });
  });

  it('[CA3] does not bind a ring, so that 27 × 0.725 never fails a rewireable fuse there', () => {
    expect(saidBy(radialCable, facts({ standard: 'BS-3036', ratingA: 30 }, 2.5, 27, 'ring'))).toEqual([]);
  });
});
