import type { Connection } from '#model/scheme.ts';
import type { NetworkEdge, NetworkNode } from '../circuit/network.ts';
import type { Position } from '../plan/plane.ts';
import { onRouteMm, positionInLeg } from '../ways/position-in-leg.ts';
import type { LengthAllowances, Run, Segment } from '../ways/run.ts';
import { endMm } from '../ways/run-length.ts';
import type { Facts } from './facts.ts';

/** A stretch of old cable that stays, whose cut end the scheme brings into an accessory. */
export interface KeptCable {
  readonly edge: NetworkEdge;
  /** The end that is cut, by the direction of the leg. */
  readonly cutEnd: 'from' | 'to';
  /** Where the other end stays. */
  readonly anchor: NetworkNode;
  /** Where the cut end is brought. */
  readonly target: NetworkNode;
}

/** The stretches of old cable whose cut ends a scheme brings into accessories, sorted by edge id. */
export function keptCables(facts: Facts): readonly KeptCable[] {
  const nodes = new Map(facts.proposed.nodes.map((node) => [node.id, node]));
  const connections = facts.scheme?.connections ?? [];
  return facts.proposed.edges.flatMap((edge): readonly KeptCable[] => {
    const [from, to] = [nodes.get(edge.from), nodes.get(edge.to)];
    if (edge.kind !== 'cable' || edge.state !== 'found' || !from || !to) return [];
    const isCutAt = (node: NetworkNode) => connections.some((each) => bringsOldCable(each, edge, node));
    if (isCutAt(to)) return [{ edge, cutEnd: 'to', anchor: from, target: to }];
    return isCutAt(from) ? [{ edge, cutEnd: 'from', anchor: to, target: from }] : [];
  });
}

function bringsOldCable(connection: Connection, edge: NetworkEdge, node: NetworkNode): boolean {
  if (node.kind === 'joint' || node.kind === 'origin') return false;
  const pointId = node.pointId ?? '';
  switch (connection.kind) {
    case 'ring-extension':
      return (
        [connection.out, connection.back].some(({ how }) => how === 'old-cable') &&
        connection.through.includes(pointId)
      );
    case 'close-spur':
      return (
        connection.back.how === 'old-cable' && edge.legId === connection.leg && connection.point === pointId
      );
    case 'fuse-down': {
      if (connection.alongMm === undefined || edge.legId !== connection.leg) return false;
      if (typeof connection.unit === 'string') return connection.unit === pointId;
      // A unit without a place goes where the leg is cut.
      return node.connectionId === connection.id && node.place !== null;
    }
    default:
      return false;
  }
}

/** The tail that a cable has at a node, mm. */
export function tailMm(node: NetworkNode, allowances: LengthAllowances): number {
  const kind = node.kind === 'origin' ? 'board' : node.kind === 'joint' ? 'joint' : 'accessory';
  return endMm(kind, allowances);
}

/** Cable that nobody can draw out of where it lies. */
const held: ReadonlySet<Segment['medium']> = new Set(['wall-chase', 'through-wall', 'buried']);

/** The part of a kept stretch that can be freed from its cut end back. */
export interface Freed {
  readonly freeMm: number;
  /** Where it stays held: the place, and how far along the leg's path that is. */
  readonly from: Position;
  readonly onRouteMm: number;
  readonly cutEnd: KeptCable['cutEnd'];
}

/**
 * How much of a kept stretch can be freed from its cut end back: to where the cable is held in masonry or the
 * ground, or to its other end; and where that is.
 *
 * @param run the leg's path as found. @returns null where the stretch has no lengths or the leg no path.
 */
export function freeFromCut(
  { edge, cutEnd, anchor }: KeptCable,
  run: Run,
  allowances: LengthAllowances,
): Freed | null {
  if (edge.partMm === null || run.segments.length === 0) return null;
  const { fromMm, toMm } = edge.partMm;
  const spans = heldSpans(run, allowances);
  const [cutMm, holdMm] =
    cutEnd === 'to'
      ? [
          toMm,
          Math.max(
            fromMm + tailMm(anchor, allowances),
            ...spans.filter(([low]) => low < toMm).map(([, high]) => high),
          ),
        ]
      : [
          fromMm,
          Math.min(
            toMm - tailMm(anchor, allowances),
            ...spans.filter(([, high]) => high > fromMm).map(([low]) => low),
          ),
        ];
  const freeMm = Math.max(0, cutEnd === 'to' ? cutMm - holdMm : holdMm - cutMm);
  const holdAtMm = cutEnd === 'to' ? cutMm - freeMm : cutMm + freeMm;
  const from = positionInLeg(run, holdAtMm, allowances);
  if (from === null) return null;
  return { freeMm, from, onRouteMm: onRouteMm(run, holdAtMm, allowances), cutEnd };
}

/** The stretches of a leg in which its cable is held, in cable from its `from`. */
function heldSpans(
  run: Run,
  allowances: LengthAllowances,
): readonly (readonly [lowMm: number, highMm: number])[] {
  const betweenMm = (run.lengthMm ?? run.routeMm + run.endsMm) - run.endsMm;
  const perRoute = betweenMm > 0 && run.routeMm > 0 ? betweenMm / run.routeMm : 1;
  let atMm = endMm(run.from.kind, allowances);
  return run.segments.flatMap(({ medium, lengthMm }) => {
    const lowMm = atMm;
    atMm += lengthMm * perRoute;
    return held.has(medium) ? [[lowMm, atMm] as const] : [];
  });
}
