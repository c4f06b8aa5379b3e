import { type BoxInWall, boxesCutIn } from './box-wall.ts';
import { HALF_PLATE_HEIGHT_MM, halfPlateWidthMm } from './clearance.ts';
import type { Facts } from './facts.ts';
import { figures } from './figures.ts';
import { foundAccessories, newAccessories, type PlacedAccessory } from './placed.ts';
import { type CheckResult, rule } from './rule.ts';

/** Boxes on the two faces of a wall stand this far apart edge to edge, mm. Common practice, no source. */
const APART_MM = 150;

/** Flush boxes do not stand opposite each other in one wall. */
export const backToBackBoxes = rule({
  id: 'BX4',
  title: 'Flush boxes back to back',
  source: 'common practice; Approved Document E for separating walls',
  messages: {
    separating:
      'Box {other} stands {actual} mm from this one on the other face of a separating wall; {limit} mm apart is usual.',
    inside:
      'Box {other} stands {actual} mm from this one on the other face of the wall; {limit} mm apart is usual.',
  },
  remedies: {
    separating: 'Move the box along, or set it on the surface.',
    inside: 'Move the box along where sound or strength matter.',
  },
  couldFail: false,
  check: (facts) => {
    const flush = [...foundAccessories(facts), ...newAccessories(facts)].filter(
      ({ id }) => facts.plan.pointById.get(id)?.mount !== 'surface',
    );
    return boxesCutIn(facts).flatMap((cut) => judged(facts, cut, flush));
  },
});

function judged(
  facts: Facts,
  cut: BoxInWall,
  others: readonly PlacedAccessory[],
): readonly CheckResult<'separating' | 'inside'>[] {
  const kind = facts.plan.pointById.get(cut.box.id)?.kind ?? 'fused-unit';
  const near = others.flatMap((other) => {
    const spot = other.position.onWall;
    if (!spot || spot.wallId !== cut.spot.wallId || spot.side === cut.spot.side) return [];
    const acrossMm =
      Math.abs(spot.alongMm - cut.spot.alongMm) - halfPlateWidthMm(kind) - halfPlateWidthMm(other.kind);
    const upMm = Math.abs(other.position.heightMm - cut.heightMm) - 2 * HALF_PLATE_HEIGHT_MM;
    const gapMm = Math.hypot(Math.max(0, acrossMm), Math.max(0, upMm));
    return gapMm < APART_MM ? [{ other, gapMm }] : [];
  });
  const nearest = near.sort((a, b) => a.gapMm - b.gapMm)[0];
  if (!nearest) return [];
  const party = cut.wall.wall.party === true;
  return [
    {
      outcome: party ? 'decide' : 'advice',
      messageId: party ? 'separating' : 'inside',
      subjectId: cut.box.id,
      origin: 'scheme',
      ...figures(nearest.gapMm, APART_MM, 'mm', { other: nearest.other.label }),
    },
  ];
}
