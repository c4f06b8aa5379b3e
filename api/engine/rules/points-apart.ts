import type { Point } from '#model/installation.ts';
import { distanceMm } from '../plan/plane.ts';
import { HALF_PLATE_HEIGHT_MM } from './clearance.ts';
import type { Facts } from './facts.ts';
import type { Origin } from './finding.ts';
import { newAccessories } from './placed.ts';
import { overlapOnWall, type PlacedPlate } from './plate-overlap.ts';
import { type CheckResult, rule } from './rule.ts';

type Message = 'recorded' | 'wanted';

interface PlacedPoint extends PlacedPlate {
  readonly point: Point;
  /** Whether the scheme fits it. */
  readonly isFitted: boolean;
}

/**
 * Two points are not drawn in one place: found ones, wanted ones that the scheme leaves out, and those that stand on no
 * wall. What the scheme fits on a wall over another plate is said of the plates.
 */
export const pointsApart = rule<Message>({
  id: 'PO14',
  title: 'Points in one place',
  source: 'common practice; plates by BS 4662',
  messages: {
    recorded: '{point} and {other} are recorded in one place: their boxes would lie in each other.',
    wanted: '{point} is wanted where {other} is: their boxes would lie in each other.',
  },
  remedies: {
    recorded: 'Look which of the two places is wrong, or whether they are one point entered twice.',
    wanted: 'Move one of them, or enter that the new one replaces the other.',
  },
  couldFail: true,
  check: (facts) => {
    const passed = new Map<string, PlacedPoint[]>();
    return placedPoints(facts).flatMap((one) => {
      const near = passed.get(neighbourhood(one)) ?? [];
      const other = near.find((before) => isLeftToThis(before, one) && areInOnePlace(before, one));
      passed.set(neighbourhood(one), [...near, one]);
      return other === undefined ? [] : [judged(one, other, facts.scheme === null ? 'found' : 'scheme')];
    });
  },
});

/** The points that stand there when all is done, found ones before wanted ones, then by id. */
function placedPoints(facts: Facts): readonly PlacedPoint[] {
  const fitted = new Set(newAccessories(facts).map(({ id }) => id));
  return facts.job.points
    .flatMap((point): readonly PlacedPoint[] => {
      const position = facts.plan.positionOfPoint.get(point.id);
      const stands = point.status === 'existing' || point.status === 'wanted';
      // A joint lies behind a plate or in a void: it has none of its own.
      if (!position || !stands || point.kind === 'joint') return [];
      return [{ point, position, kind: point.kind, isFitted: fitted.has(point.id) }];
    })
    .sort((a, b) => rank(a) - rank(b) || (a.point.id < b.point.id ? -1 : 1));
}

const rank = ({ point }: PlacedPoint): number => (point.status === 'wanted' ? 1 : 0);

/** Only points that have this in common can be in one place: they are on one wall, or on one storey off the walls. */
const neighbourhood = ({ position: { onWall, storeyId } }: PlacedPoint): string =>
  onWall === undefined ? `storey ${storeyId}` : `wall ${onWall.wallId}`;

const isJudged = ({ point, isFitted }: PlacedPoint): boolean => isFitted || point.status === 'existing';

/** Whether the rule of the plates is silent of the two: it speaks of what the scheme fits on a wall, over what it fits or found. */
function isLeftToThis(a: PlacedPoint, b: PlacedPoint): boolean {
  if (!a.position.onWall || !b.position.onWall) return true;
  return !((a.isFitted || b.isFitted) && isJudged(a) && isJudged(b));
}

/** Off the walls nobody knows which way a plate faces: nearer than its least size they lie in each other. */
function areInOnePlace(a: PlacedPoint, b: PlacedPoint): boolean {
  if (a.position.onWall || b.position.onWall) return overlapOnWall(a, b) !== null;
  if (a.position.storeyId !== b.position.storeyId) return false;
  const upMm = Math.abs(a.position.heightMm - b.position.heightMm);
  const nearMm = 2 * HALF_PLATE_HEIGHT_MM;
  return upMm < nearMm && distanceMm(a.position.at, b.position.at) < nearMm;
}

function judged({ point }: PlacedPoint, other: PlacedPoint, origin: Origin): CheckResult<Message> {
  const values = { point: point.label, other: other.point.label };
  return point.status === 'wanted'
    ? { outcome: 'fails', messageId: 'wanted', subjectId: point.id, origin, values }
    : { outcome: 'decide', messageId: 'recorded', subjectId: point.id, origin: 'found', values };
}
