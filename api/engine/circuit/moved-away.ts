import type { Place, Point } from '#model/installation.ts';
import type { NodeId } from './network.ts';

/** Cables in a box have so much to spare that the next one may stand this far from it, mm. Common practice, no source. */
const SAME_BOX_MM = 60;

/** Whether what replaces a point stands in a box of its own: its place is told, and is not that of the old one. */
export function movesAway({ place: old }: Point, { place: next }: Point): boolean {
  return old !== undefined && next !== undefined && !isSameBox(old, next);
}

/** Whether a point's box stays behind: the point is taken out, or what replaces it stands elsewhere. Joints have no box. */
export function leavesBox(point: Point, points: readonly Point[]): boolean {
  if (point.kind === 'joint') return false;
  if (point.status === 'removed') return true;
  return (
    point.status === 'replaced' && points.some((next) => next.replaces === point.id && movesAway(point, next))
  );
}

function isSameBox(a: Place, b: Place): boolean {
  if (Math.abs(a.heightMm - b.heightMm) > SAME_BOX_MM) return false;
  if ('wall' in a)
    return (
      'wall' in b && a.wall === b.wall && a.side === b.side && Math.abs(a.alongMm - b.alongMm) <= SAME_BOX_MM
    );
  if ('wall' in b || a.storey !== b.storey) return false;
  return Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]) <= SAME_BOX_MM;
}

/** Where the cables of a point that went are joined in its old box: all of them, or each with what extends it. */
export const jointInOldBox = (pointId: string, number?: number): NodeId =>
  number === undefined ? `${pointId}/joined` : `${pointId}/joined-${number}`;

/** Whether a node is a joint in the box of a point that went. */
export const isInOldBox = (nodeId: NodeId): boolean => /\/joined(-\d+)?$/.test(nodeId);
