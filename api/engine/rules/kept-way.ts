import type { Position } from '../plan/plane.ts';
import { plainRoute } from '../ways/find-run.ts';
import type { Mount } from '../ways/route.ts';
import type { Run, Segment } from '../ways/run.ts';
import { pathLengthMm } from '../ways/segment.ts';
import type { Facts } from './facts.ts';
import type { Freed } from './kept-cable.ts';

/** What lies within this of being plumb over or under a spot is. */
const PLUMB_MM = 20;

/** Where a freed cable is brought, and how what stands at its two ends is mounted. */
export interface KeptWay {
  readonly freed: Freed;
  readonly target: Position;
  readonly fromMount: Mount;
  readonly toMount: Mount;
}

/**
 * The shortest way that is known for a freed cable from where it is held to where its cut end is brought, mm:
 * back along its own leg and plumb off it, or as a new cable would be laid between the two.
 *
 * @param run the leg's path as found. @returns null where neither is known: off the leg, and nothing that is
 *   drawn leads there.
 */
export function knownWayMm(facts: Facts, run: Run, way: KeptWay): number | null {
  const known = [alongLegMm(run, way), asNewMm(facts, way)].filter((mm) => mm !== null);
  return known.length === 0 ? null : Math.min(...known);
}

function alongLegMm(run: Run, { freed, target }: KeptWay): number | null {
  let startMm = 0;
  const ways = run.segments.flatMap((segment) => {
    const spot = plumbSpot(segment, target);
    const atMm = startMm + spot.alongMm;
    startMm += segment.lengthMm;
    const aheadMm = freed.cutEnd === 'to' ? atMm - freed.onRouteMm : freed.onRouteMm - atMm;
    return spot.offMm > PLUMB_MM || aheadMm < -0.01 ? [] : [Math.max(0, aheadMm) + spot.gapMm];
  });
  return ways.length === 0 ? null : Math.min(...ways);
}

/** The spot of a stretch from which a place is most nearly plumb, how far off plumb, and how far up or down. */
function plumbSpot({ from, to, lengthMm }: Segment, target: Position) {
  const [x, y] = [to.at[0] - from.at[0], to.at[1] - from.at[1]];
  const riseMm = to.levelMm - from.levelMm;
  const [dx, dy] = [target.at[0] - from.at[0], target.at[1] - from.at[1]];
  const planMm2 = x * x + y * y;
  const share =
    Math.sqrt(planMm2) > PLUMB_MM
      ? (dx * x + dy * y) / planMm2
      : riseMm === 0
        ? 0
        : (target.levelMm - from.levelMm) / riseMm;
  const within = Math.min(1, Math.max(0, share));
  return {
    alongMm: within * lengthMm,
    offMm: Math.hypot(dx - x * within, dy - y * within),
    gapMm: Math.abs(target.levelMm - from.levelMm - riseMm * within),
  };
}

/** A path of which everything is assumed leads where nothing is drawn. */
function asNewMm({ plan, tariff }: Facts, { freed, target, fromMount, toMount }: KeptWay): number | null {
  const { segments } = plainRoute({
    plan,
    from: freed.from,
    to: target,
    via: [],
    fromMount,
    toMount,
    tariff,
  });
  const isKnown = segments.length === 0 || segments.some(({ certainty }) => certainty !== 'assumed');
  return isKnown ? pathLengthMm(segments) : null;
}
