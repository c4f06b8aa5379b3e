import { unitOfLoadSide } from '#engine/circuit/load-side.ts';
import type { CircuitProof, PointProof } from '#engine/proof/circuit-proof.ts';
import type { CircuitPicture } from './circuit-picture.ts';
import { dropCurve } from './drop-curve.ts';

/** The points in the order in which current comes to them, those that it does not reach at the end. */
export function pointsInOrder({ points }: CircuitProof, picture: CircuitPicture): readonly PointProof[] {
  const curve = dropCurve(picture).nodes.map(({ node }) => picture.nodes[node]?.subject ?? '');
  const order = new Map(curve.map((subject, i) => [subject, i]));
  const placeOf = ({ point }: PointProof): number => order.get(unitOfLoadSide(point)) ?? curve.length;
  return points.toSorted((a, b) => placeOf(a) - placeOf(b));
}
