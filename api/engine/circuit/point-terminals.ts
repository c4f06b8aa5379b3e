import type { Point } from '#model/installation.ts';
import { loadNodeOf } from './load-side.ts';
import type { NetworkEdge, NetworkNode, NodeId } from './network.ts';

/** The terminals of one point: its supply side first, and a fuse to every load side. */
interface PointTerminals {
  readonly nodes: readonly NetworkNode[];
  readonly fuses: readonly NetworkEdge[];
}

interface LoadSide {
  readonly nodeId: NodeId;
  readonly fuseId: string;
  readonly fuseA: number | null;
  readonly feeds: string | null;
}

/** Modules count from one, in the order in which the grid lists them; those without a fuse have no load side. */
function loadSides(point: Point): readonly LoadSide[] {
  const { id } = point;
  if (point.kind === 'fused-unit')
    return [{ nodeId: loadNodeOf(id), fuseId: `${id}/fuse`, fuseA: point.unit?.fuseA ?? null, feeds: null }];
  if (point.kind !== 'grid') return [];
  return (point.modules ?? []).flatMap((module, index) => {
    if (module.fuseA === undefined) return [];
    const nodeId = `${id}/module-${index + 1}`;
    return [{ nodeId, fuseId: `${nodeId}/fuse`, fuseA: module.fuseA, feeds: module.feeds ?? null }];
  });
}

/**
 * The nodes and fuses of a point: one node for most, two and a fuse for a fused unit, one more for every
 * fused module of a grid (`<pointId>/module-<n>`, n from 1).
 */
export function terminalsOfPoint(point: Point, state: 'found' | 'new'): PointTerminals {
  const base = { pointId: point.id, circuitId: null, connectionId: null, place: null, inLeg: null, state };
  const isJoint = point.kind === 'joint';
  const supply: NetworkNode = {
    ...base,
    id: point.id,
    kind: isJoint ? 'joint' : 'terminals',
    joint: isJoint ? (point.joint ?? null) : null,
  };
  const sides = loadSides(point);
  return {
    nodes: [
      supply,
      ...sides.map(
        ({ nodeId }): NetworkNode => ({ ...base, id: nodeId, kind: 'load-terminals', joint: null }),
      ),
    ],
    fuses: sides.map(({ nodeId, fuseId, fuseA }) => fuseEdge(fuseId, point.id, nodeId, { fuseA, state })),
  };
}

/** The fuse between a unit's two sides, from supply to load. */
export function fuseEdge(
  id: string,
  supply: NodeId,
  load: NodeId,
  fuse: { fuseA: number | null; state: 'found' | 'new'; connectionId?: string },
): NetworkEdge {
  return {
    id,
    kind: 'fuse',
    from: supply,
    to: load,
    originEnd: null,
    legId: null,
    partMm: null,
    connectionId: fuse.connectionId ?? null,
    cable: null,
    lengthMm: null,
    fuseA: fuse.fuseA,
    state: fuse.state,
  };
}

/**
 * The load side from which a point feeds another: of a fused unit its only one, of a grid the fused module
 * that names the other point.
 *
 * @returns null when the point has no load side for it.
 */
export function loadSideTowards(point: Point, towards: string | null): NodeId | null {
  const sides = loadSides(point);
  if (point.kind === 'fused-unit') return sides[0]?.nodeId ?? null;
  return sides.find(({ feeds }) => feeds !== null && feeds === towards)?.nodeId ?? null;
}

/** The load side of a point when a leg says that it is there: the one that feeds its other end, else the first, else the terminals. */
export function loadSideOf(point: Point, towards: string | null): NodeId {
  return loadSideTowards(point, towards) ?? loadSides(point)[0]?.nodeId ?? point.id;
}
