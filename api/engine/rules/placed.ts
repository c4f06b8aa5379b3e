import type { Fixture, Floor } from '#model/building.ts';
import type { PlanRoom } from '../plan/plan.ts';
import { type PlanPoint, type Position, planPointOf } from '../plan/plane.ts';
import { isInside } from '../plan/polygon.ts';
import { remembered } from '../plan/remembered.ts';
import { roomOfPosition, surroundingsAt } from '../plan/surroundings.ts';
import { distanceToFixtureMm, plateOnPlan } from './clearance.ts';
import type { Facts } from './facts.ts';
import type { Origin } from './finding.ts';
import { nameOf } from './wiring.ts';

/** An accessory with the place where it stands. */
export interface PlacedAccessory {
  /** The point, or the node of a unit that a connection brings along. */
  readonly id: string;
  readonly label: string;
  readonly kind: string;
  readonly features: readonly string[];
  readonly position: Position;
  /** Null outside, and where no room's outline holds it. */
  readonly room: PlanRoom | null;
  readonly origin: Origin;
}

/** The accessories that the scheme fits and whose place is known, sorted by id. */
export const newAccessories = remembered(placedByScheme);

function placedByScheme(facts: Facts): readonly PlacedAccessory[] {
  const units = new Map(facts.things.fusedUnits.map((unit) => [unit.id, unit.position]));
  return facts.things.accessories
    .flatMap(({ id, pointId, kind, features }) => {
      const point = pointId === null ? undefined : facts.plan.pointById.get(pointId);
      const position =
        (pointId === null ? null : facts.plan.positionOfPoint.get(pointId)) ?? units.get(id) ?? null;
      if (!position) return [];
      const room = roomOfPosition(facts.plan, position);
      return [
        {
          id,
          label: point?.label ?? nameOf(facts, id),
          kind,
          features,
          position,
          room,
          origin: 'scheme' as const,
        },
      ];
    })
    .sort(byId);
}

/** The accessories that are there already and whose place is known, sorted by id. */
export const foundAccessories = remembered(placedBefore);

function placedBefore(facts: Facts): readonly PlacedAccessory[] {
  const fitted = new Set(facts.things.accessories.map(({ pointId }) => pointId));
  return facts.job.points
    .flatMap((point) => {
      const position = facts.plan.positionOfPoint.get(point.id);
      if (point.status !== 'existing' || fitted.has(point.id) || !position) return [];
      const { id, label, kind, features } = point;
      return [
        {
          id,
          label,
          kind,
          features,
          position,
          room: roomOfPosition(facts.plan, position),
          origin: 'found' as const,
        },
      ];
    })
    .sort(byId);
}

/** Whether an accessory is a socket-outlet. */
export function isSocket({ kind }: { readonly kind: string }): boolean {
  return kind === 'socket-single' || kind === 'socket-twin';
}

/** The floor that counts at a spot: the room's own where it has one, else the storey's; null for no storey. */
export function floorAt(facts: Facts, storeyId: string, at: PlanPoint): Floor | null {
  return surroundingsAt(facts.plan, { storeyId, at, heightMm: 0, levelMm: 0 })?.floor ?? null;
}

/** Fixtures of some kinds in the room of an accessory, or on its storey where no room is known. */
export function fixturesNear(
  facts: Facts,
  accessory: PlacedAccessory,
  kinds: readonly Fixture['kind'][],
): readonly Fixture[] {
  return facts.plan.fixtures
    .filter(
      ({ fixture, storeyId }) => kinds.includes(fixture.kind) && storeyId === accessory.position.storeyId,
    )
    .filter(({ fixture }) => !accessory.room || isIn(accessory.room, fixture))
    .map(({ fixture }) => fixture);
}

/** Distance on plan from an accessory's plate to a fixture, mm. */
export function plateToFixtureMm(facts: Facts, accessory: PlacedAccessory, fixture: Fixture): number {
  return distanceToFixtureMm(plateOnPlan(facts.plan, accessory.position, accessory.kind), fixture);
}

/**
 * Whether a fixture stands in a room. A fixture against a wall has corners on the outline, where the test of
 * a single corner may go either way, so the middle of its corners decides.
 */
function isIn(room: PlanRoom, fixture: Fixture): boolean {
  const corners = fixture.outline.map(planPointOf);
  const middle = (axis: 0 | 1) => corners.reduce((sum, corner) => sum + corner[axis], 0) / corners.length;
  if (room.outline.length < 3) return false;
  return isInside(room.outline, planPointOf([middle(0), middle(1)]));
}

function byId(a: { readonly id: string }, b: { readonly id: string }): number {
  return a.id < b.id ? -1 : a.id > b.id ? 1 : 0;
}
