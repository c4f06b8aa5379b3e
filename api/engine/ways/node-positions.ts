import type { Network, NetworkEdge, NetworkNode, NodeId } from '../circuit/network.ts';
import type { Plan } from '../plan/plan.ts';
import type { Position } from '../plan/plane.ts';
import { facePosition, positionOfPlace } from '../plan/position-of-place.ts';
import { positionInLeg } from './position-in-leg.ts';
import type { LengthAllowances, Run } from './run.ts';

/** How far along the wall from where it is fed a fused unit goes when nobody said where. Common practice, no source. */
const UNIT_ASIDE_MM = 300;
/** Accessories keep this far from a wall's end. */
const WALL_END_MM = 100;

/** What positions of nodes are worked out from. */
export interface NodePositionsInput {
  readonly plan: Plan;
  readonly network: Network;
  /** The likeliest paths of the legs as found, by leg id. */
  readonly foundRuns: ReadonlyMap<string, Run>;
  readonly allowances: LengthAllowances;
}

/**
 * Where every node of a network is: points and places as told, origins at their board, joints in legs by
 * walking the leg. A fused unit that a connection brings along without a place goes beside what feeds it (or
 * beside what it feeds, when its supply is not on a wall); a joint that no leg tells the place of is at the
 * neighbour whose old cable it joins.
 *
 * @returns nodes whose position nobody can tell are absent.
 */
export function nodePositions(input: NodePositionsInput): ReadonlyMap<NodeId, Position> {
  const { plan, network } = input;
  const positions = new Map<NodeId, Position>();
  for (const node of network.nodes) {
    const position = toldPosition(input, node);
    if (position !== null) positions.set(node.id, position);
  }
  const edges = edgesByNode(network);
  const waiting = network.nodes.filter((node) => !positions.has(node.id) && canBePlaced(node));
  // One guess may be what the next needs (a unit's two sides), so round again until nothing changes.
  for (let placed = true; placed; ) {
    placed = false;
    for (const node of waiting) {
      if (positions.has(node.id)) continue;
      const position = neighbouringPosition({ plan, node, edges, positions });
      if (position === null) continue;
      positions.set(node.id, position);
      placed = true;
    }
  }
  return positions;
}

/** The position that a point, a place, a board or a leg tells of a node; null when none does. */
export function toldPosition(input: NodePositionsInput, node: NetworkNode): Position | null {
  const { plan, network, foundRuns, allowances } = input;
  if (node.place !== null) return positionOfPlace(plan, node.place);
  if (node.pointId !== null) return positionOfPointOrOld(plan, node.pointId);
  if (node.circuitId !== null) {
    const boardId = network.circuits.find((circuit) => circuit.id === node.circuitId)?.board?.id;
    return plan.positionOfBoard.get(boardId ?? '') ?? null;
  }
  const run = foundRuns.get(node.inLeg?.legId ?? '');
  return node.inLeg === null || run === undefined ? null : positionInLeg(run, node.inLeg.alongMm, allowances);
}

/** A point that replaces another stands where that one was, unless it says otherwise. */
function positionOfPointOrOld(plan: Plan, pointId: string): Position | null {
  const own = plan.positionOfPoint.get(pointId);
  const oldId = plan.pointById.get(pointId)?.replaces ?? '';
  return own ?? plan.positionOfPoint.get(oldId) ?? null;
}

/** A point without a place stays unknown: only what a connection brings along may be put somewhere usual. */
function canBePlaced(node: NetworkNode): boolean {
  return node.connectionId !== null && node.pointId === null && node.kind !== 'origin';
}

function edgesByNode(network: Network): ReadonlyMap<NodeId, readonly NetworkEdge[]> {
  const byNode = new Map<NodeId, NetworkEdge[]>();
  for (const edge of network.edges)
    for (const id of [edge.from, edge.to]) byNode.set(id, [...(byNode.get(id) ?? []), edge]);
  return byNode;
}

interface Unplaced {
  readonly plan: Plan;
  readonly node: NetworkNode;
  readonly edges: ReadonlyMap<NodeId, readonly NetworkEdge[]>;
  readonly positions: ReadonlyMap<NodeId, Position>;
}

function neighbouringPosition({ plan, node, edges, positions }: Unplaced): Position | null {
  const neighbours = (kind: NetworkEdge['kind'], id: NodeId) =>
    (edges.get(id) ?? [])
      .filter((edge) => edge.kind === kind)
      .map((edge) => ({ edge, id: edge.from === id ? edge.to : edge.from }));
  if (node.kind === 'joint') {
    const old = neighbours('cable', node.id).find(
      ({ edge, id }) => edge.state === 'found' && positions.has(id),
    );
    return old ? (positions.get(old.id) ?? null) : null;
  }
  const otherSides = neighbours('fuse', node.id).map(({ id }) => id);
  const otherSide = otherSides.map((id) => positions.get(id)).find((position) => position !== undefined);
  if (otherSide !== undefined) return otherSide;
  // A load side waits for its supply side, which is the one to be placed.
  if (node.kind === 'load-terminals') return null;
  const near = [node.id, ...otherSides]
    .flatMap((id) => neighbours('cable', id))
    .flatMap(({ id }) => positions.get(id) ?? []);
  const beside = near.find((position) => position.onWall !== undefined) ?? near[0];
  return beside === undefined ? null : besideOnWall(plan, beside);
}

function besideOnWall(plan: Plan, position: Position): Position {
  const spot = position.onWall;
  const wall = plan.wallById.get(spot?.wallId ?? '');
  if (spot === undefined || wall === undefined) return position;
  const [alongMm] = [spot.alongMm + UNIT_ASIDE_MM, spot.alongMm - UNIT_ASIDE_MM].filter(
    (mm) => mm >= WALL_END_MM && mm <= wall.lengthMm - WALL_END_MM,
  );
  if (alongMm === undefined) return position;
  return facePosition(plan, { ...spot, alongMm }, position.heightMm) ?? position;
}
