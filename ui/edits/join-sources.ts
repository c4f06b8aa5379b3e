import { openedCircuit } from '#engine/circuit/opened-circuit.ts';
import type { NodePlace } from '#engine/circuit/shape.ts';
import type { Worked } from '#engine/connections/worked.ts';
import type { Plan } from '#engine/plan/plan.ts';
import type { Position } from '#engine/plan/plane.ts';
import { roomOfPosition } from '#engine/plan/surroundings.ts';
import { defaultLengthAllowances } from '#engine/ways/length-allowances.ts';
import { positionInLeg } from '#engine/ways/position-in-leg.ts';
import type { Leg } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import type { Scheme } from '#model/scheme.ts';

/** An existing point that a cable may be joined on at. */
export interface SourcePoint {
  readonly pointId: string;
  readonly circuitId: string;
  readonly role: NodePlace['role'];
  /** Roughly, along the walls' directions; null where one of the two has no place. */
  readonly awayMm: number | null;
  /** How many cables of the scheme are joined on here already. */
  readonly taken: number;
  /** True where an old spur starts here, or three cables were seen in its box: most likely it has its one spur. */
  readonly hasSpur: boolean;
}

/** A leg that may be cut, with the spot of it that is nearest. */
export interface SourceLeg {
  readonly legId: string;
  readonly circuitId: string;
  readonly onRing: boolean;
  /** Cable length from the leg's `from` to the spot; half of it where no way is known. */
  readonly alongMm: number;
  readonly awayMm: number | null;
}

/** A change of storey costs about this much cable, mm. Common practice, no source. */
const STOREY_MM = 3000;
/** So does a room between, more or less: walls are gone round, not through. Common practice, no source. */
const OTHER_ROOM_MM = 3000;
/** Cables in a box of a ring that has its one spur: two of the ring and the spur. Common practice, no source. */
const CABLES_WITH_SPUR = 3;
/** Spots of a leg that are looked at. */
const SPOTS = 24;

/** Roughly how much cable lies between two places: by the axes of the house, and by storeys. */
export function roughlyMm(a: Position | undefined, b: Position | null | undefined): number | null {
  if (a === undefined || b === null || b === undefined) return null;
  const storeys = a.storeyId === b.storeyId ? 0 : STOREY_MM;
  return Math.abs(a.at[0] - b.at[0]) + Math.abs(a.at[1] - b.at[1]) + storeys;
}

/** Whether a cable from one place to the other stays in its room, or goes straight through the wall behind it. */
function isOneRoom(plan: Plan, a: Position | undefined, b: Position | undefined): boolean {
  if (a === undefined || b === undefined) return false;
  if (a.onWall !== undefined && a.onWall.wallId === b.onWall?.wallId) return true;
  const room = roomOfPosition(plan, a);
  return room !== null && room.room.id === roomOfPosition(plan, b)?.room.id;
}

const nearestFirst = (a: { readonly awayMm: number | null }, b: { readonly awayMm: number | null }): number =>
  (a.awayMm ?? Number.MAX_SAFE_INTEGER) - (b.awayMm ?? Number.MAX_SAFE_INTEGER);

function timesTaken(scheme: Scheme | null, pointId: string): number {
  return (scheme?.connections ?? []).filter(
    (connection) =>
      (connection.kind === 'spur' || connection.kind === 'fused-spur') &&
      'point' in connection.from &&
      connection.from.point === pointId,
  ).length;
}

/**
 * Existing points that a new cable may be joined on at, nearest first; those of the same room, and those at the back of
 * the same wall, before what is as near behind other walls.
 *
 * @param worked the house as found.
 */
export function sourcePoints(worked: Worked, scheme: Scheme | null, pointId: string): readonly SourcePoint[] {
  const at = worked.plan.positionOfPoint.get(pointId);
  const places = [...worked.foundShapes.values()].flatMap((shape) => shape.places);
  const claimed = new Map(worked.job.points.map((point) => [point.id, point.circuit]));
  const roots = new Set(
    [...worked.foundShapes.values()].flatMap(({ spurs }) => spurs.map(({ rootNode }) => rootNode)),
  );
  const farMm = ({ pointId: id, awayMm }: SourcePoint): number | null => {
    const isNear = isOneRoom(worked.plan, at, worked.plan.positionOfPoint.get(id));
    return awayMm === null ? null : awayMm + (isNear ? 0 : OTHER_ROOM_MM);
  };
  return worked.job.points
    .filter(
      (point) =>
        point.status === 'existing' &&
        point.kind !== 'blank' &&
        point.kind !== 'joint' &&
        point.circuit !== undefined,
    )
    .map((point): SourcePoint => {
      const place = places.find((one) => one.nodeId === point.id);
      return {
        pointId: point.id,
        circuitId: place?.circuitId ?? claimed.get(point.id) ?? '',
        role: place?.role ?? (point.asFound?.role === 'spur' ? 'claimed-spur' : 'claimed-ring'),
        awayMm: roughlyMm(at, worked.plan.positionOfPoint.get(point.id)),
        taken: timesTaken(scheme, point.id),
        hasSpur: roots.has(point.id) || (point.asFound?.cablesSeen ?? 0) >= CABLES_WITH_SPUR,
      };
    })
    .map((source) => ({ source, awayMm: farMm(source) }))
    .sort(nearestFirst)
    .map(({ source }) => source);
}

/** True where the rules let an unfused spur begin: on the ring itself, or anywhere on a radial. */
export const maySpurFrom = ({ role, taken, hasSpur }: SourcePoint): boolean =>
  role === 'radial' || (taken === 0 && !hasSpur && (role === 'ring' || role === 'claimed-ring'));

/** True where nothing told speaks against an unfused spur, on a circuit whose shape is not known. */
export const mightSpurFrom = ({ role, taken, hasSpur }: SourcePoint): boolean =>
  role === 'unreached' && taken === 0 && !hasSpur;

/** Legs that may be cut, nearest first, each with the spot nearest to the point. */
export function sourceLegs(worked: Worked, pointId: string): readonly SourceLeg[] {
  const at = worked.plan.positionOfPoint.get(pointId);
  const ring = new Set(
    [...worked.foundShapes.values()].flatMap((shape) => shape.ringEdges.map(({ legId }) => legId)),
  );
  return worked.job.legs
    .map((leg): SourceLeg => {
      const run = worked.foundRuns.get(leg.id);
      const lengthMm = leg.lengthMm ?? run?.lengthMm ?? 0;
      const spots = Array.from({ length: SPOTS - 1 }, (_, i) => (lengthMm * (i + 1)) / SPOTS).map(
        (alongMm) => ({
          alongMm: Math.round(alongMm / 10) * 10,
          awayMm:
            run === undefined ? null : roughlyMm(at, positionInLeg(run, alongMm, defaultLengthAllowances)),
        }),
      );
      const [best] = spots.toSorted(nearestFirst);
      return {
        legId: leg.id,
        circuitId: leg.circuit,
        onRing: ring.has(leg.id),
        alongMm: best?.awayMm === null || best === undefined ? Math.round(lengthMm / 2) : best.alongMm,
        awayMm: best?.awayMm ?? null,
      };
    })
    .sort(nearestFirst);
}

/** Whether a leg may be opened for new points, the circuit carried through them: one of a ring, or of a radial. */
export function mayBeOpened({ foundShapes }: Worked, leg: Pick<Leg, 'id' | 'circuit'>): boolean {
  if (openedCircuit(foundShapes, leg.circuit) === 'radial') return true;
  return foundShapes.get(leg.circuit)?.ringEdges.some(({ legId }) => legId === leg.id) ?? false;
}

/** Why a kind of joining cannot be had for a job; null where it can. */
export function whyNotRing(worked: Worked): string | null {
  const rings = [...worked.foundShapes.values()].filter(
    ({ shape, claimed }) => shape === 'ring' || (shape === 'unknown' && claimed === 'ring'),
  );
  return rings.length > 0 ? null : 'no ring was found';
}

/** Why a new radial cannot be had; null where it can, or where the spare ways are not known. */
export function whyNotRadial({ boards }: Job): string | null {
  if (boards.length === 0) return 'no board is recorded';
  return boards.every(({ spareWays }) => spareWays === 0) ? 'no spare way at the board' : null;
}
