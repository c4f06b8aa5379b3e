import type { BackBox } from '../connections/things.ts';
import type { PlanWall } from '../plan/plan.ts';
import type { WallSpot } from '../plan/plane.ts';
import type { Facts } from './facts.ts';

/** A box that the scheme sets into a wall, with the wall and the spot. */
export interface BoxInWall {
  readonly box: BackBox;
  readonly wall: PlanWall;
  readonly spot: WallSpot;
  readonly heightMm: number;
}

/** The boxes that the scheme cuts into walls (new ones and exchanged ones), in the order of the boxes. */
export function boxesCutIn(facts: Facts): readonly BoxInWall[] {
  const cut = facts.things.boxes.filter(
    ({ action, build }) => (action === 'fit' || action === 're-box') && build !== 'surface',
  );
  return cut.flatMap((box) => boxInWall(facts, box));
}

function boxInWall(facts: Facts, box: BackBox): readonly BoxInWall[] {
  const position =
    (box.pointId === null ? null : facts.plan.positionOfPoint.get(box.pointId)) ??
    facts.things.fusedUnits.find(({ id }) => id === box.id)?.position;
  const spot = position?.onWall;
  const wall = spot ? facts.plan.wallById.get(spot.wallId) : undefined;
  return position && spot && wall ? [{ box, wall, spot, heightMm: position.heightMm }] : [];
}
