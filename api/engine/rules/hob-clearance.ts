import type { Fixture } from '#model/building.ts';
import { alongWallMm } from '../plan/along-wall.ts';
import { planPointOf } from '../plan/plane.ts';
import { halfPlateWidthMm } from './clearance.ts';
import type { Facts } from './facts.ts';
import { figures } from './figures.ts';
import { fixturesNear, newAccessories, type PlacedAccessory, plateToFixtureMm } from './placed.ts';
import { type CheckResult, rule } from './rule.ts';

/** From the side of a hob to an accessory, mm. Common practice, no source: trade pages give it, no standard does. */
const HOB_MM = 300;
/** A hob within this of the wall has the wall behind it, mm: the depth of a worktop. Common practice, no source. */
const BEHIND_MM = 600;
/** Hobs stand about this high, mm, where nobody measured. Common practice, no source. */
const USUAL_TOP_MM = 900;

type Message = 'clear' | 'behind' | 'near';

/** Accessories are not reached over a hob, nor heated by one. */
export const hobClearance = rule<Message>({
  id: 'PO5',
  title: 'Distance from hobs',
  source: 'common practice (no standard gives the distance); BS 7671 522.2',
  messages: {
    clear: 'The plate’s edge is {actual} mm from the hob.',
    behind: 'The accessory stands above or behind a hob ({limit} mm to its side is usual).',
    near: 'The plate’s edge is {actual} mm from the side of a hob; {limit} mm is usual in the trade, though no standard gives a figure.',
  },
  remedies: { behind: 'Move it to the side of the hob.', near: 'Move it along.' },
  couldFail: false,
  check: (facts) =>
    newAccessories(facts).flatMap<CheckResult<Message>>((accessory) => {
      const hobs = fixturesNear(facts, accessory, ['hob']).filter(
        // What is below the hob feeds it or an oven, and is reached through a cupboard.
        ({ toMm }) => accessory.position.heightMm >= (toMm ?? USUAL_TOP_MM),
      );
      if (hobs.length === 0) return [];
      const subject = { subjectId: accessory.id, origin: 'scheme' } as const;
      const limitMm = facts.limits.hobClearanceMm ?? HOB_MM;
      if (hobs.some((hob) => isBehind(facts, accessory, hob)))
        return [{ ...subject, outcome: 'decide', messageId: 'behind', limit: limitMm, unit: 'mm' }];
      const nearestMm = Math.min(...hobs.map((hob) => plateToFixtureMm(facts, accessory, hob)));
      const near = nearestMm < limitMm;
      const numbers = figures(nearestMm, limitMm, 'mm');
      return [
        { ...subject, outcome: near ? 'decide' : 'passes', messageId: near ? 'near' : 'clear', ...numbers },
      ];
    }),
});

/** Over the hob, or on the wall behind it within its width. */
function isBehind(facts: Facts, accessory: PlacedAccessory, hob: Fixture): boolean {
  const gapMm = plateToFixtureMm(facts, accessory, hob);
  if (gapMm === 0) return true;
  const spot = accessory.position.onWall;
  const wall = spot ? facts.plan.wallById.get(spot.wallId) : undefined;
  if (!spot || !wall || gapMm > BEHIND_MM) return false;
  const alongs = hob.outline.map((corner) => alongWallMm(wall, planPointOf(corner)));
  const half = halfPlateWidthMm(accessory.kind);
  return spot.alongMm + half > Math.min(...alongs) && spot.alongMm - half < Math.max(...alongs);
}
