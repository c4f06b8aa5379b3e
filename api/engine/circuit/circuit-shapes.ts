import type { Point } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { hungRoleOn, seedRoles } from './circuit-seeds.ts';
import { type Territory, territories } from './circuit-territory.ts';
import { inIdOrder } from './id-order.ts';
import type { Network, NetworkCircuit, NetworkEdge, NodeId } from './network.ts';
import { linksOf } from './network-graph.ts';
import { ringOrder } from './ring-order.ts';
import { type Upstream, upstreamFrom } from './ring-trunk.ts';
import type { CircuitShape, NodePlace } from './shape.ts';
import { shapeEvidence } from './shape-evidence.ts';
import { seedPlace, type WalkedPlace, walkTrees } from './tree-walk.ts';
import { unfusedSpurs } from './unfused-spurs.ts';
import { type ShapedWiring, shapedWiring } from './wiring-shape.ts';

/**
 * What the wiring of every circuit amounts to, by circuit id in order, new circuits among them.
 *
 * What the cables say beats what the survey claims; without cables the survey's word stands, marked as
 * such. Never fails: too little to tell is the shape `unknown`.
 */
export function circuitShapes(job: Job, network: Network): ReadonlyMap<string, CircuitShape> {
  const pointById = new Map(job.points.map((point) => [point.id, point]));
  const byCircuit = new Map(territories(job, network).map((each) => [each.circuitId, each]));
  return new Map(
    network.circuits.flatMap((circuit) => {
      const territory = byCircuit.get(circuit.id);
      return territory
        ? [[circuit.id, circuitShape({ job, network, pointById }, circuit, territory)] as const]
        : [];
    }),
  );
}

function circuitShape(
  { job, network, pointById }: { job: Job; network: Network; pointById: ReadonlyMap<string, Point> },
  circuit: NetworkCircuit,
  territory: Territory,
): CircuitShape {
  const wiring = shapedWiring(job, network, { circuit, territory });
  const { shape, claimed, core, coreCables } = wiring;
  const start = {
    circuitId: circuit.id,
    seeds: seedRoles({ territory, wiring, pointById }),
    hungRole: hungRoleOn(wiring),
  };
  const places = walkTrees(start, wiring);
  const ring = shape === 'ring' ? ringOrder(circuit.id, linksOf(core, coreCables)) : { nodes: [], edges: [] };
  return {
    circuitId: circuit.id,
    shape,
    claimed,
    contradicts: claimed !== null && shape !== 'unknown' && shape !== claimed,
    evidence: shapeEvidence(job, circuit, shape),
    ringNodes: ring.nodes,
    ringEdges: ring.edges,
    ringLengthMm: loopLengthMm(ring.edges),
    spurs: unfusedSpurs(territory, places, pointById),
    places: allPlaces(territory, wiring, places),
    joinedTo: territory.joinedTo,
    unwiredPointIds: (network.unwired.get(circuit.id) ?? []).map(({ id }) => id),
  };
}

function loopLengthMm(edges: readonly NetworkEdge[]): number | null {
  if (edges.length === 0) return null;
  let sumMm = 0;
  for (const { lengthMm } of edges) {
    if (lengthMm === null) return null;
    sumMm += lengthMm;
  }
  return sumMm;
}

/**
 * A place for every node of the circuit. Where a ring does not close, and on a lollipop, the main way has a
 * way back to the origin, which the walk out from it does not tell.
 */
function allPlaces(
  { circuitId, nodes }: Territory,
  { shape, cables }: ShapedWiring,
  walked: ReadonlyMap<NodeId, WalkedPlace>,
): readonly NodePlace[] {
  const isOpen = shape === 'broken-ring' || shape === 'lollipop';
  const upstream = isOpen ? upstreamFrom(circuitId, cables) : new Map<NodeId, Upstream>();
  return nodes
    .map(({ id }) => {
      const { firstEdgeId: _, ...place } = walked.get(id) ?? seedPlace(circuitId, id, 'unreached');
      const way = upstream.get(id);
      if (!way || place.upstreamNode !== null) return place;
      const back = { ...place, upstreamNode: way.node, upstreamEdgeId: way.edge.id };
      return place.role === 'radial' ? { ...back, rootNode: circuitId, depth: way.depth } : back;
    })
    .toSorted((a, b) => inIdOrder(a.nodeId, b.nodeId));
}
