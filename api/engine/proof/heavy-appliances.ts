import type { Point } from '#model/installation.ts';
import type { Plan } from '../plan/plan.ts';
import { roomOfPosition } from '../plan/surroundings.ts';
import type { HeavyAppliances } from './circuit-proof.ts';
import type { ProofCase } from './proof-case.ts';
import type { Ring } from './ring-walk.ts';

/** From this on a load counts as heavy, W: guidance lets no more share a socket circuit. Source: IET On-Site Guide Appendix H. */
export const HEAVY_W = 2000;

/**
 * Rooms where washing, drying and cooking appliances and kettles stand. Common practice: BS 7671 Appendix 15 suggests a
 * circuit of its own for a kitchen.
 */
const heavyRooms: ReadonlySet<string> = new Set(['kitchen', 'utility']);

/** The nodes of a ring by whether heavy appliances are likely there, in order from end A, what hangs from a node after it. */
export interface HeavyNodes {
  readonly heavy: readonly number[];
  /** Neither load nor room is known. */
  readonly untold: readonly number[];
}

/** Where on a ring heavy appliances are likely; empty where the circuit is none. */
export function heavyNodes({ circuit, input, ring }: ProofCase): HeavyNodes {
  const heavy: number[] = [];
  const untold: number[] = [];
  if (ring === null) return { heavy, untold };
  const { plan } = input.worked;
  for (const node of inRingOrder(ring)) {
    const { draws, pointId } = circuit.nodes[node] ?? {};
    if (draws !== true) continue;
    const isHeavy = isHeavyAt(plan, plan.pointById.get(pointId ?? ''));
    if (isHeavy === true) heavy.push(node);
    if (isHeavy === null) untold.push(node);
  }
  return { heavy, untold };
}

function inRingOrder({ walk, hanging: { order, root } }: Ring): readonly number[] {
  const placeOf = new Map(walk.nodes.map((node, i) => [node, i]));
  const place = (node: number): number => placeOf.get(root[node] ?? -1) ?? 0;
  return order.toSorted((a, b) => place(a) - place(b));
}

/** Null where neither a load nor a room is known. */
function isHeavyAt(plan: Plan, point: Point | undefined): boolean | null {
  if (point?.load !== undefined) return point.load.watts >= HEAVY_W;
  const room = roomOfPosition(plan, plan.positionOfPoint.get(point?.id ?? ''));
  return room === null ? null : heavyRooms.has(room.room.use);
}

/** The same as points; null where the circuit is no ring. */
export function heavyPoints(
  { circuit, ring }: ProofCase,
  { heavy, untold }: HeavyNodes,
): HeavyAppliances | null {
  const points = (nodes: readonly number[]): readonly string[] =>
    nodes.flatMap((node) => circuit.pointAt[node] ?? []);
  return ring === null ? null : { points: points(heavy), untold: points(untold) };
}
