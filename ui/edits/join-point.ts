import { produce } from 'immer';
import type { Worked } from '#engine/connections/worked.ts';
import type { End } from '#model/cable.ts';
import type { Device, Joint, Point } from '#model/installation.ts';
import type { Connection, Scheme } from '#model/scheme.ts';
import type { JobEdit } from '../job-events.ts';
import { newId } from '../new-id.ts';
import { detachPoint } from './detach-point.ts';
import { maySpurFrom, mightSpurFrom, type SourceLeg, sourceLegs, sourcePoints } from './join-sources.ts';
import { connectionOf, joinedBy } from './joined-by.ts';
import { pointsBehind } from './points-behind.ts';

/** How a point can be joined. */
export type JoinHow =
  | { readonly by: 'none' }
  | { readonly by: 'spur' | 'joint' | 'fused' | 'ring' | 'radial' }
  /** On from another wanted point, as another spur. */
  | { readonly by: 'in-turn'; readonly after: string }
  /** As the last of what another connection joins. */
  | { readonly by: 'with'; readonly connectionId: string };

/** What a connection is built from. */
export interface JoinContext {
  /** The house as found. */
  readonly worked: Worked;
  readonly scheme: Scheme;
  readonly makeId?: () => string;
}

/** A joint that need not be got at again. */
export const hiddenJoint: Joint = { kind: 'maintenance-free', ratingA: 32, accessible: false };

/** What a new radial of socket-outlets usually begins at. */
const usualRadialDevice: Device = {
  standard: 'BS-EN-61009',
  curve: 'B',
  ratingA: 20,
  rcd: { type: 'A', mA: 30 },
};

const isUnit = (point: Point | undefined): boolean => point?.kind === 'fused-unit';

/**
 * The point that a spur is best begun at: the nearest where the rules let one begin, else where they might, else the
 * nearest. Where nobody knows how far they are, the one that the scheme joins the least on.
 */
export function bestSource({ worked, scheme }: JoinContext, pointId: string): string | null {
  const sources = sourcePoints(worked, scheme, pointId);
  const allowed = [maySpurFrom, mightSpurFrom]
    .map((may) => sources.filter(may))
    .find((some) => some.length > 0);
  const among = allowed ?? sources;
  const [nearest] = among;
  if (nearest === undefined || nearest.awayMm !== null) return nearest?.pointId ?? null;
  const leastTaken = Math.min(...among.map(({ taken }) => taken));
  return among.find(({ taken }) => taken === leastTaken)?.pointId ?? null;
}

function fromPoint(context: JoinContext, point: Point, fused: boolean): Connection | null {
  const source = bestSource(context, point.id);
  if (source === null) return null;
  const id = (context.makeId ?? newId)();
  const from = { point: source };
  if (isUnit(point)) return { id, kind: 'fused-spur', from, unit: point.id, feeds: [] };
  if (fused)
    return { id, kind: 'fused-spur', from, unit: { fuseA: 13 }, feeds: [{ from: 'unit', to: point.id }] };
  return { id, kind: 'spur', from, to: point.id };
}

function fromJoint(context: JoinContext, point: Point): Connection | null {
  const legs = sourceLegs(context.worked, point.id);
  const leg = legs.find(({ onRing }) => onRing) ?? legs[0];
  if (leg === undefined) return null;
  const id = (context.makeId ?? newId)();
  const from = { leg: leg.legId, alongMm: leg.alongMm, joint: hiddenJoint };
  return isUnit(point)
    ? { id, kind: 'fused-spur', from, unit: point.id, feeds: [] }
    : { id, kind: 'spur', from, to: point.id };
}

/** The two ends that a leg of the ring lies between, as a ring extension names them. */
const endsOfLeg = (worked: Worked, legId: string): readonly [End, End] | null => {
  const leg = worked.job.legs.find(({ id }) => id === legId);
  return leg === undefined ? null : [leg.from, leg.to];
};

/** The ring opened at a leg, and carried through the points: two joints at the spot of the cut. */
export function ringExtension(
  context: JoinContext,
  leg: SourceLeg,
  through: readonly string[],
): Connection | null {
  const ends = endsOfLeg(context.worked, leg.legId);
  if (ends === null) return null;
  const cut = { how: 'joint', alongMm: leg.alongMm, joint: hiddenJoint } as const;
  return {
    id: (context.makeId ?? newId)(),
    kind: 'ring-extension',
    circuit: leg.circuitId,
    between: [ends[0], ends[1]],
    leg: leg.legId,
    out: cut,
    back: cut,
    through: [...through],
  };
}

/** A point in which only one cable ends is on no ring. */
const hasOneCable = ({ job }: Worked, pointId: string): boolean =>
  job.points.find(({ id }) => id === pointId)?.asFound?.cablesSeen === 1;

/**
 * On a quoting visit no leg is known: between the two points of the ring that are nearest. That they follow each other
 * is a guess, and the checks say so.
 */
function ringBetweenPoints(context: JoinContext, through: readonly string[]): Connection | null {
  const [first = ''] = through;
  const ring = sourcePoints(context.worked, context.scheme, first).filter(
    ({ role, pointId }) =>
      (role === 'ring' || role === 'claimed-ring') && !hasOneCable(context.worked, pointId),
  );
  const [one] = ring;
  const other = ring.find((source) => source !== one && source.circuitId === one?.circuitId);
  if (one === undefined || other === undefined) return null;
  return {
    id: (context.makeId ?? newId)(),
    kind: 'ring-extension',
    circuit: one.circuitId,
    between: [{ point: one.pointId }, { point: other.pointId }],
    out: { how: 'terminals' },
    back: { how: 'terminals' },
    through: [...through],
  };
}

/** The ring carried out and back through these points, opened where it comes nearest to the first; null without a ring. */
export function ringThrough(context: JoinContext, points: readonly string[]): Connection | null {
  const [first] = points;
  if (first === undefined) return null;
  const leg = sourceLegs(context.worked, first).find(({ onRing }) => onRing);
  return leg === undefined ? ringBetweenPoints(context, points) : ringExtension(context, leg, points);
}

/** A new radial from the first board through these points in turn; null without a board. */
export function radialThrough(context: JoinContext, points: readonly string[]): Connection | null {
  const [board] = context.worked.job.boards;
  if (board === undefined || points.length === 0) return null;
  return {
    id: (context.makeId ?? newId)(),
    kind: 'radial',
    board: board.id,
    device: usualRadialDevice,
    feeds: points.map((to, i) => ({ from: points[i - 1] ?? 'origin', to })),
  };
}

/** The connection that joins a point in this way; null where the house as recorded does not allow it. */
export function newConnection(context: JoinContext, point: Point, by: JoinHow['by']): Connection | null {
  switch (by) {
    case 'spur':
      return fromPoint(context, point, false);
    case 'fused':
      return fromPoint(context, point, true);
    case 'joint':
      return fromJoint(context, point);
    case 'ring':
      return ringThrough(context, [point.id]);
    case 'radial':
      return radialThrough(context, [point.id]);
    default:
      return null;
  }
}

/** Puts a point at the end of what a connection joins. */
function addTo(connection: Connection, pointId: string): void {
  const last = joinedBy(connection).at(-1);
  if (connection.kind === 'ring-extension') connection.through.push(pointId);
  if (connection.kind === 'radial') connection.feeds.push({ from: last ?? 'origin', to: pointId });
  if (connection.kind === 'fused-spur' || connection.kind === 'fuse-down') {
    const isTheUnit = typeof connection.unit === 'string' && last === connection.unit;
    connection.feeds.push({ from: last === undefined || isTheUnit ? 'unit' : last, to: pointId });
  }
}

const byWords: Readonly<Record<JoinHow['by'], string>> = {
  none: 'Leave {point} unjoined',
  spur: 'Join {point} by a spur',
  joint: 'Join {point} by a spur from a joint',
  fused: 'Join {point} by a fused spur',
  ring: 'Carry the ring through {point}',
  radial: 'Join {point} by a new radial',
  'in-turn': 'Join {point} in turn',
  with: 'Join {point} with others',
};

/** A new fused spur to a unit takes over what the unit feeds, in the cable that was chosen. */
function withFeedsOf(made: Connection | null, before: Connection | null): Connection | null {
  if (made?.kind !== 'fused-spur' || typeof made.unit !== 'string') return made;
  if (before?.kind !== 'fused-spur' && before?.kind !== 'fuse-down') return made;
  if (before.unit !== made.unit) return made;
  const { feeds, cable } = before;
  return { ...made, feeds, ...(cable === undefined ? {} : { cable }) };
}

/** True for a connection that can take a point along. */
const takesPoints = ({ kind }: Connection): boolean => kind !== 'spur' && kind !== 'close-spur';

/**
 * Whether joining a point with others, or in turn, joins it at all, and not on what hangs on the point itself.
 *
 * @param scheme the scheme without the point's connection, with what hangs on the point still there.
 */
function isJoinedOnElsewhere(scheme: Scheme, pointId: string, how: JoinHow): boolean {
  const behind = pointsBehind(scheme, [pointId]);
  if (how.by === 'in-turn') return how.after !== pointId && !behind.has(how.after);
  const other = how.by === 'with' ? scheme.connections.find(({ id }) => id === how.connectionId) : undefined;
  if (other === undefined || !takesPoints(other)) return false;
  return !('from' in other && 'point' in other.from && [pointId, ...behind].includes(other.from.point));
}

/** Joins a wanted point in another way than now; what the house does not allow leaves it unjoined. */
export function joinPoint(context: JoinContext, pointId: string, how: JoinHow): JobEdit {
  const point = context.worked.job.points.find(({ id }) => id === pointId);
  // What the point takes up now is free again for its next way.
  const scheme = produce(context.scheme, (draft) => detachPoint(draft, pointId));
  const made =
    point === undefined || how.by === 'with' || how.by === 'in-turn'
      ? null
      : withFeedsOf(
          newConnection({ ...context, scheme }, point, how.by),
          connectionOf(context.scheme, pointId),
        );
  const rest = produce(context.scheme, (draft) => detachPoint(draft, pointId, { isJoinedAgain: true }));
  // A new way begins at what was there before, so that nothing that hangs on the point can lead back to it.
  const isJoinedAgain = made !== null || isJoinedOnElsewhere(rest, pointId, how);
  const inTurnId = (context.makeId ?? newId)();
  return {
    label: byWords[how.by].replace('{point}', point?.label ?? 'a point'),
    change: (job) => {
      const changed = job.schemes.find(({ id }) => id === context.scheme.id);
      if (changed === undefined) return;
      detachPoint(changed, pointId, { isJoinedAgain });
      if (made !== null) changed.connections.push(structuredClone(made));
      if (how.by === 'in-turn')
        changed.connections.push({ id: inTurnId, kind: 'spur', from: { point: how.after }, to: pointId });
      const other =
        how.by === 'with' ? changed.connections.find(({ id }) => id === how.connectionId) : undefined;
      if (other !== undefined) addTo(other, pointId);
    },
  };
}

/** Opens a leg of a ring or a radial where it comes nearest to a wanted point, and carries the circuit through it. */
export function openLegFor(context: JoinContext, pointId: string, legId: string): JobEdit {
  const { worked, scheme } = context;
  const label = worked.job.points.find(({ id }) => id === pointId)?.label ?? 'a point';
  const leg = sourceLegs(worked, pointId).find((source) => source.legId === legId);
  const made = leg === undefined ? null : ringExtension(context, leg, [pointId]);
  return {
    label: `Open a leg for ${label}`,
    change: (job) => {
      const changed = job.schemes.find(({ id }) => id === scheme.id);
      if (changed === undefined || made === null) return;
      detachPoint(changed, pointId, { isJoinedAgain: true });
      changed.connections.push(structuredClone(made));
    },
  };
}
