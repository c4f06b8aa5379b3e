import type { Point } from '#model/installation.ts';
import type { NetworkEdge, NetworkNode } from '../circuit/network.ts';
import type { CircuitShape, NodePlace } from '../circuit/shape.ts';
import { remembered } from '../plan/remembered.ts';
import type { Facts } from './facts.ts';

/** The proposed wiring by id, for rules that walk it. */
export interface Wiring {
  readonly nodes: ReadonlyMap<string, NetworkNode>;
  readonly edges: ReadonlyMap<string, NetworkEdge>;
  readonly places: ReadonlyMap<string, NodePlace>;
}

/** Indexes the proposed wiring of all circuits. */
export const wiringOf = remembered((facts: Facts): Wiring => {
  const places = [...facts.shapes.values()].flatMap((shape) => shape.places);
  return {
    nodes: nodesById(facts.proposed.nodes),
    edges: new Map(facts.proposed.edges.map((edge) => [edge.id, edge])),
    places: new Map(places.map((place) => [place.nodeId, place])),
  };
});

const nodesById = remembered(
  (nodes: readonly NetworkNode[]): ReadonlyMap<string, NetworkNode> =>
    new Map(nodes.map((node) => [node.id, node])),
);

/** The circuits that the scheme touches (as found: all), by their shape in the order of `circuitIds`. */
export function touchedShapes(facts: Facts): readonly CircuitShape[] {
  return facts.circuitIds.flatMap((id) => facts.shapes.get(id) ?? []);
}

/** Whether nobody can say by which rules a circuit goes. */
export function isUntold(shape: CircuitShape): boolean {
  return shape.shape === 'unknown' && shape.claimed === null;
}

/** The point of a node; undefined for joints and units that a connection brings along. */
export function pointOfNode(facts: Facts, node: NetworkNode | undefined): Point | undefined {
  return node?.pointId ? facts.plan.pointById.get(node.pointId) : undefined;
}

/** What a person calls a node, a point or a leg: labels, else what it is, else the id. */
export function nameOf(facts: Facts, id: string): string {
  const node = nodesById(facts.proposed.nodes).get(id);
  const point = pointOfNode(facts, node) ?? facts.plan.pointById.get(id);
  if (point) return point.label;
  if (node?.kind === 'origin') return `the board (${circuitName(facts, node.circuitId ?? id)})`;
  if (node?.kind === 'joint')
    return node.inLeg ? `the joint in ${legName(facts, node.inLeg.legId)}` : 'the joint';
  if (node?.connectionId) return 'the new fused unit';
  return legName(facts, id);
}

/** "new cable R8 – W2" for a cable of the scheme; the id where there is no such cable. */
function newCableName(facts: Facts, edgeId: string): string {
  const edge = facts.proposed.edges.find(({ id }) => id === edgeId);
  if (edge === undefined) return edgeId;
  if (edge.legId !== null) return legName(facts, edge.legId);
  return `new cable ${nameOf(facts, edge.from)} – ${nameOf(facts, edge.to)}`;
}

/** "R8 – R9" for a leg; a new cable by its ends; the id where there is neither. */
function legName(facts: Facts, legId: string): string {
  const leg = facts.job.legs.find(({ id }) => id === legId);
  if (leg === undefined) return newCableName(facts, legId);
  const ends = [leg.from, leg.to].map((end) =>
    'point' in end
      ? (facts.plan.pointById.get(end.point)?.label ?? end.point)
      : circuitName(facts, end.origin),
  );
  return ends.join(' – ');
}

/** What a person calls a circuit; its id where it has no name. */
export function circuitName(facts: Facts, circuitId: string): string {
  return facts.proposed.circuits.find(({ id }) => id === circuitId)?.name ?? circuitId;
}

/** The cable of an edge: its own, else that of the run found for it. */
export function cableOf(facts: Facts, edge: NetworkEdge) {
  return edge.cable ?? facts.runs.find(({ id }) => id === edge.id)?.cable ?? null;
}

/** Metres to one decimal, for words; nought where the stretch is not told. */
export function metres(lengthMm: number | null | undefined): number {
  return Math.round((lengthMm ?? 0) / 100) / 10;
}

/** Two decimals, so that figures read as written and limits are still told apart. */
export function rounded(value: number): number {
  return Math.round(value * 100) / 100;
}
