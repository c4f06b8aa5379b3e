import type { End } from '#model/cable.ts';
import type { Circuit, Leg, Point } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { inIdOrder } from './id-order.ts';
import { type LegEnds, legEnds } from './leg-ends.ts';
import type { Network, NetworkCircuit, NetworkEdge, NetworkNode } from './network.ts';
import { terminalsOfPoint } from './point-terminals.ts';

/**
 * The wiring as found: every origin, every point that is there, every leg.
 *
 * Wanted points are in it only where legs reach them. A point of a circuit that no leg touches has its
 * nodes, without cable, and is listed under `unwired`.
 */
export function foundNetwork(job: Job): Network {
  const ends = legEnds(job);
  const reached = new Set([...ends.values()].flatMap(({ from, to }) => [from, to]));
  const terminals = job.points
    .map((point) => ({ point, ...terminalsOfPoint(point, 'found') }))
    .filter(({ point, nodes }) => point.status !== 'wanted' || nodes.some(({ id }) => reached.has(id)));
  const legs = job.legs.flatMap((leg) => {
    const at = ends.get(leg.id);
    return at ? [legEdge(leg, at)] : [];
  });
  const unwired = terminals
    .filter(({ nodes }) => !nodes.some(({ id }) => reached.has(id)))
    .map(({ point }) => point);
  return {
    nodes: [...job.circuits.map(originNode), ...terminals.flatMap(({ nodes }) => nodes)].toSorted((a, b) =>
      inIdOrder(a.id, b.id),
    ),
    edges: [...legs, ...terminals.flatMap(({ fuses }) => fuses)].toSorted((a, b) => inIdOrder(a.id, b.id)),
    circuits: job.circuits
      .map((circuit) => foundCircuit(circuit, job))
      .toSorted((a, b) => inIdOrder(a.id, b.id)),
    removed: [],
    problems: [],
    unwired: byCircuit(unwired),
  };
}

function originNode({ id }: Circuit): NetworkNode {
  const nothing = { pointId: null, connectionId: null, place: null, inLeg: null, joint: null };
  return { ...nothing, id, kind: 'origin', circuitId: id, state: 'found' };
}

function foundCircuit(circuit: Circuit, job: Job): NetworkCircuit {
  return {
    id: circuit.id,
    name: circuit.name,
    board: job.boards.find(({ id }) => id === circuit.board) ?? null,
    device: circuit.device ?? null,
    circuit,
    isNew: false,
  };
}

function toldEnd(end: End): 'A' | 'B' | null {
  return 'origin' in end ? (end.end ?? null) : null;
}

function legEdge(leg: Leg, ends: LegEnds): NetworkEdge {
  return {
    id: leg.id,
    kind: 'cable',
    from: ends.from,
    to: ends.to,
    originEnd: toldEnd(leg.from) ?? toldEnd(leg.to),
    legId: leg.id,
    partMm: leg.lengthMm === undefined ? null : { fromMm: 0, toMm: leg.lengthMm },
    connectionId: null,
    cable: leg.cable ?? null,
    lengthMm: leg.lengthMm ?? null,
    fuseA: null,
    state: 'found',
  };
}

function byCircuit(points: readonly Point[]): ReadonlyMap<string, readonly Point[]> {
  const ids = [...new Set(points.flatMap(({ circuit }) => circuit ?? []))].toSorted(inIdOrder);
  const sorted = points.toSorted((a, b) => inIdOrder(a.id, b.id));
  return new Map(ids.map((id) => [id, sorted.filter(({ circuit }) => circuit === id)]));
}
