import type { Point } from '#model/installation.ts';
import type { Job, Terms } from '#model/job.ts';
import type { OwnBoxDepths } from '#model/library.ts';
import type { Scheme } from '#model/scheme.ts';
import type { Network, NetworkCircuit, NetworkEdge, NetworkNode, NodeId } from '../circuit/network.ts';
import type { CircuitShape, NodePlace } from '../circuit/shape.ts';
import type { Plan } from '../plan/plan.ts';
import type { Position } from '../plan/plane.ts';
import type { Run } from '../ways/run.ts';

/** What the firm does where a job says nothing: the look of its plates, and how deep its makers want boxes. */
export interface FirmHabits {
  readonly finish?: Terms['finish'] | undefined;
  readonly boxDepths?: OwnBoxDepths | undefined;
}

/** What this stage is built from: a job with its wiring, found and proposed, and the paths of its cables. */
export interface ThingsInput {
  readonly job: Job;
  /** Null for the house as found. */
  readonly scheme: Scheme | null;
  readonly plan: Plan;
  readonly found: Network;
  readonly proposed: Network;
  readonly shapes: ReadonlyMap<string, CircuitShape>;
  /** New cables. */
  readonly runs: readonly Run[];
  /** Paths of the legs as found, by leg id. */
  readonly foundRuns: ReadonlyMap<string, Run>;
  /** Where the nodes are that no point stands for, as the ways stage worked it out. */
  readonly nodePositions?: ReadonlyMap<NodeId, Position>;
  /** What the firm does where a job says nothing; null: nobody has said. */
  readonly firmTerms: FirmHabits | null;
}

/** The input with its wiring looked up by node. */
export interface WiringIndex {
  readonly input: ThingsInput;
  readonly nodeById: ReadonlyMap<NodeId, NetworkNode>;
  /** Cables at a node as proposed, fuses left out. */
  readonly cablesAt: ReadonlyMap<NodeId, readonly NetworkEdge[]>;
  readonly foundCablesAt: ReadonlyMap<NodeId, readonly NetworkEdge[]>;
  readonly placeOf: ReadonlyMap<NodeId, NodePlace>;
  readonly circuitById: ReadonlyMap<string, NetworkCircuit>;
  readonly runsAt: ReadonlyMap<NodeId, readonly Run[]>;
  readonly pointById: ReadonlyMap<string, Point>;
}

/** Builds the look-ups once; a node that two circuits share is taken as the first circuit's by id. */
export function wiringIndex(input: ThingsInput): WiringIndex {
  const placeOf = new Map<NodeId, NodePlace>();
  const circuitIds = [...input.shapes.keys()].toSorted();
  for (const place of circuitIds.flatMap((id) => input.shapes.get(id)?.places ?? [])) {
    if (!placeOf.has(place.nodeId)) placeOf.set(place.nodeId, place);
  }
  return {
    input,
    nodeById: new Map(input.proposed.nodes.map((node) => [node.id, node])),
    cablesAt: cablesByNode(input.proposed),
    foundCablesAt: cablesByNode(input.found),
    placeOf,
    circuitById: new Map(input.proposed.circuits.map((circuit) => [circuit.id, circuit])),
    runsAt: runsByNode(input.runs),
    pointById: new Map(input.job.points.map((point) => [point.id, point])),
  };
}

function cablesByNode(network: Network): Map<NodeId, NetworkEdge[]> {
  const byNode = new Map<NodeId, NetworkEdge[]>();
  for (const edge of network.edges) {
    if (edge.kind === 'fuse') continue;
    // A cable that leaves and comes back to one node has two ends in its terminals.
    for (const nodeId of [edge.from, edge.to]) byNode.set(nodeId, [...(byNode.get(nodeId) ?? []), edge]);
  }
  return byNode;
}

function runsByNode(runs: readonly Run[]): Map<NodeId, Run[]> {
  const byNode = new Map<NodeId, Run[]>();
  for (const run of runs) {
    for (const { nodeId } of [run.from, run.to]) byNode.set(nodeId, [...(byNode.get(nodeId) ?? []), run]);
  }
  return byNode;
}

/** The circuit a node belongs to; empty when the shapes do not reach it and nothing else says so. */
export function circuitIdOf(index: WiringIndex, node: NetworkNode): string {
  const place = index.placeOf.get(node.id);
  const point = node.pointId === null ? undefined : index.pointById.get(node.pointId);
  return place?.circuitId ?? node.circuitId ?? point?.circuit ?? '';
}

/** Where a node is: as the ways stage says, its point, or the end of a run that meets it; null when unknown. */
export function positionOf(index: WiringIndex, node: NetworkNode): Position | null {
  const { plan, nodePositions } = index.input;
  const known =
    nodePositions?.get(node.id) ??
    (node.pointId === null ? undefined : plan.positionOfPoint.get(node.pointId));
  if (known) return known;
  for (const run of index.runsAt.get(node.id) ?? []) {
    const end = run.from.nodeId === node.id ? run.from : run.to;
    if (end.position) return end.position;
  }
  return null;
}
