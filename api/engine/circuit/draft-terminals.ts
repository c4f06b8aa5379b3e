import type { Place, Point } from '#model/installation.ts';
import type { Connection } from '#model/scheme.ts';
import { bringPoint } from './draft-points.ts';
import { loadNodeOf } from './load-side.ts';
import { isInOldBox } from './moved-away.ts';
import type { NodeId } from './network.ts';
import { cablesAt, type NetworkDraft, reportProblem } from './network-draft.ts';
import { fuseEdge, loadSideTowards } from './point-terminals.ts';

/** The point that stands for an id now: the point itself or what replaces it; null when only a joint, or nothing, is left. */
export function standingPoint(draft: NetworkDraft, pointId: string): Point | null {
  const successor = draft.successors.get(pointId);
  if (successor === undefined) return draft.pointById.get(pointId) ?? null;
  return successor !== null && 'pointId' in successor
    ? (draft.pointById.get(successor.pointId) ?? null)
    : null;
}

/** The node at which a cable arrives at a point, which is brought into the draft if need be; null when the point is gone. */
export function arrivalNode(draft: NetworkDraft, pointId: string): NodeId | null {
  const successor = draft.successors.get(pointId);
  if (successor && 'jointId' in successor) return successor.jointId;
  const point = standingPoint(draft, pointId);
  if (!point) return null;
  bringPoint(draft, point);
  return point.id;
}

/** The node from which a cable goes on from a point: a fused unit's load side, a grid's module that feeds the other point. */
export function departureNode(draft: NetworkDraft, pointId: string, towards: string | null): NodeId | null {
  const arrival = arrivalNode(draft, pointId);
  const point = standingPoint(draft, pointId);
  return (point && loadSideTowards(point, towards)) ?? arrival;
}

/** Whether a point has its supply already: by a cable found, by the survey's word, or from an earlier connection. */
export function isFed(draft: NetworkDraft, nodeId: NodeId): boolean {
  return (
    draft.fed.has(nodeId) ||
    cablesAt(draft, nodeId).some(({ state }) => state === 'found') ||
    [...draft.unwired.values()].some((points) => points.some(({ id }) => id === nodeId))
  );
}

/**
 * The node of a point that a connection is to feed, marked as fed.
 *
 * @returns null, with the problem reported, when the point is gone or has its supply already.
 */
export function nodeToFeed(draft: NetworkDraft, connectionId: string, pointId: string): NodeId | null {
  const node = arrivalNode(draft, pointId);
  if (node === null || !draft.nodes.get(node) || isInOldBox(node)) {
    reportProblem(draft, connectionId, 'no-existing-point', pointId);
    return null;
  }
  if (isFed(draft, node)) {
    reportProblem(draft, connectionId, 'already-connected', pointId);
    return null;
  }
  draft.fed.add(node);
  return node;
}

/** Both sides of a fused unit; one node for a point that is none. */
export interface UnitNodes {
  readonly supply: NodeId;
  readonly load: NodeId;
}

type UnitOrPoint = Extract<Connection, { kind: 'fused-spur' }>['unit'];

/**
 * The fused unit of a connection: a point's, or one that the connection brings along, `<connectionId>/unit`.
 * A point that is no fused unit is reported and used as it is, without a fuse.
 *
 * @returns null when the point is gone.
 */
export function unitNodes(
  draft: NetworkDraft,
  connection: { readonly id: string; readonly unit: UnitOrPoint },
  inLeg: { legId: string; alongMm: number } | null,
): UnitNodes | null {
  const { id, unit } = connection;
  if (typeof unit !== 'string') return ownUnit(draft, { connectionId: id, unit, inLeg });
  const supply = arrivalNode(draft, unit);
  const point = standingPoint(draft, unit);
  if (supply === null || !point) {
    reportProblem(draft, id, 'no-existing-point', unit);
    return null;
  }
  if (point.kind !== 'fused-unit') reportProblem(draft, id, 'unit-is-no-fused-unit', unit);
  return { supply, load: loadSideTowards(point, null) ?? supply };
}

function ownUnit(
  draft: NetworkDraft,
  {
    connectionId,
    unit,
    inLeg,
  }: {
    connectionId: string;
    unit: { fuseA?: number | undefined; place?: Place | undefined };
    inLeg: { legId: string; alongMm: number } | null;
  },
): UnitNodes {
  const supply = `${connectionId}/unit`;
  const load = loadNodeOf(supply);
  const base = {
    pointId: null,
    circuitId: null,
    connectionId,
    place: unit.place ?? null,
    inLeg,
    joint: null,
  };
  draft.nodes.set(supply, { ...base, id: supply, kind: 'terminals', state: 'new' });
  draft.nodes.set(load, { ...base, id: load, kind: 'load-terminals', state: 'new' });
  const fuse = fuseEdge(`${supply}/fuse`, supply, load, {
    fuseA: unit.fuseA ?? null,
    state: 'new',
    connectionId,
  });
  draft.edges.set(fuse.id, fuse);
  return { supply, load };
}
