import type { Point } from '#model/installation.ts';
import type { Network } from '../circuit/network.ts';
import type { CircuitShape } from '../circuit/shape.ts';
import { isGuess } from '../plan/is-guess.ts';
import { remembered } from '../plan/remembered.ts';
import { counted } from './counted.ts';
import type { Facts } from './facts.ts';

/** What a plate showed that its legs do not. */
export interface PlateContradiction {
  readonly point: Point;
  readonly messageId: 'fewer' | 'more' | 'calledSpur' | 'calledRing';
  /** Cables seen and cables that the legs give, where they are set against each other. */
  readonly seen: number | null;
  readonly byLegs: number;
  readonly words: { readonly seen: string; readonly byLegs: string };
}

/**
 * The points of a circuit as found at which the plate showed other cables, or another place on the ring, than
 * the legs give; sorted by point id. Points on no leg have nothing to be set against, nor have guesses.
 */
export function plateContradictions(facts: Facts, circuitId: string): readonly PlateContradiction[] {
  const shape = facts.foundShapes.get(circuitId);
  if (shape === undefined) return [];
  const nodeIds = new Set(shape.places.map(({ nodeId }) => nodeId));
  return facts.job.points
    .filter(({ id, status }) => status !== 'wanted' && nodeIds.has(id))
    .flatMap((point) => contradictionAt(facts, shape, point) ?? [])
    .sort((a, b) => (a.point.id < b.point.id ? -1 : 1));
}

function contradictionAt(facts: Facts, shape: CircuitShape, point: Point): PlateContradiction | null {
  const byLegs = cablesByLegs(facts, point.id);
  if (byLegs === 0) return null;
  const seen = wasLookedAt(point, 'cablesSeen') ? (point.asFound?.cablesSeen ?? null) : null;
  const messageId = byNumber(seen, byLegs) ?? (wasLookedAt(point, 'role') ? byRole(shape, point) : null);
  if (messageId === null) return null;
  const words = { seen: counted(seen ?? 0, 'cable'), byLegs: counted(byLegs, 'cable') };
  return { point, messageId, seen, byLegs, words };
}

function wasLookedAt({ certainty }: Point, field: 'cablesSeen' | 'role'): boolean {
  return !isGuess(certainty?.[field] ?? certainty?.asFound);
}

function byNumber(seen: number | null, byLegs: number): 'fewer' | 'more' | null {
  if (seen === null || seen === byLegs) return null;
  return seen < byLegs ? 'fewer' : 'more';
}

/** Only where the legs make a ring: of another shape the circuit itself is asked about. */
function byRole({ shape, places }: CircuitShape, { id, asFound }: Point): 'calledSpur' | 'calledRing' | null {
  if (shape !== 'ring') return null;
  const role = places.find(({ nodeId }) => nodeId === id)?.role;
  if (asFound?.role === 'spur' && role === 'ring') return 'calledSpur';
  return asFound?.role === 'ring' && (role === 'unfused-spur' || role === 'behind-fuse')
    ? 'calledRing'
    : null;
}

/** Ends of legs at all sides of a point, as found. */
const cablesByLegs = ({ found }: Facts, pointId: string): number => cableEnds(found).get(pointId) ?? 0;

const cableEnds = remembered(({ nodes, edges }: Network): ReadonlyMap<string, number> => {
  const pointOfNode = new Map(nodes.map(({ id, pointId }) => [id, pointId]));
  const ends = new Map<string, number>();
  for (const { kind, from, to } of edges)
    for (const end of kind === 'cable' ? [from, to] : []) {
      const pointId = pointOfNode.get(end);
      if (pointId != null) ends.set(pointId, (ends.get(pointId) ?? 0) + 1);
    }
  return ends;
});
