import type { Cable, End } from '#model/cable.ts';
import type { Circuit, Leg } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import type { JobEdit } from '../job-events.ts';
import { removeAll } from './remove-things.ts';

/** The points of a circuit in the order in which its cable passes them, as they were and as they are now. */
export interface PointsInOrder {
  readonly was: readonly string[];
  readonly now: readonly string[];
  /** False for a radial: its last point has no cable back to the board. */
  readonly isRing: boolean;
  /** The cable of new legs, where it is known. */
  readonly cable: Cable | null;
  /** Ids for new legs: one for every leg that may be wanted, so one more than points. */
  readonly legIds: readonly string[];
}

/**
 * Lays a circuit's legs through its points in order, from the board and back to it.
 *
 * Legs that lie between neighbours already stay, with all that is known of them; other legs between points of
 * the old or the new order go with what is cut into them; missing ones are added. Legs to points of neither
 * order are spurs, and stay.
 */
export const setPointsInOrder = (
  { id, name }: Pick<Circuit, 'id' | 'name'>,
  order: PointsInOrder,
): JobEdit => ({
  label: `The points of ${name} in order`,
  change: (job) => {
    if (!job.circuits.some((circuit) => circuit.id === id)) return;
    const trunk = new Set<string>([...order.was, ...order.now]);
    const free = job.legs.filter(
      (leg) => leg.circuit === id && inTrunk(leg.from, trunk) && inTrunk(leg.to, trunk),
    );
    const laid = stretches(id, order).map(
      (stretch, index) => knownLeg(stretch, free) ?? newLeg(id, stretch, order.cable, order.legIds[index]),
    );
    const kept = new Set(laid.map((leg) => leg.id));
    const gone = free.map((leg) => leg.id).filter((legId) => !kept.has(legId));
    removeAll(job, { legs: new Set(gone) });
    putLegs(job, laid);
    for (const point of job.points) if (order.now.includes(point.id)) point.circuit = id;
  },
});

type Stretch = readonly [from: End, to: End];

const inTrunk = (end: End, trunk: ReadonlySet<string>): boolean => !('point' in end) || trunk.has(end.point);

const nodeOf = (end: End): string => ('point' in end ? end.point : 'origin');

function stretches(circuitId: string, { now, isRing }: PointsInOrder): readonly Stretch[] {
  const first: End = isRing ? { origin: circuitId, end: 'A' } : { origin: circuitId };
  const ends: End[] = [first, ...now.map((point): End => ({ point }))];
  if (isRing && now.length > 0) ends.push({ origin: circuitId, end: 'B' });
  return ends.slice(1).flatMap((to, index): Stretch[] => {
    const from = ends[index];
    return from === undefined ? [] : [[from, to]];
  });
}

/** A leg that is there already, taken from the free ones, its ends at the board named anew; null where there is none. */
function knownLeg(stretch: Stretch, free: Leg[]): Leg | null {
  const [from, to] = stretch;
  const alike = free.filter((leg) => joins(leg, stretch));
  // A ring of one point has two legs between the same ends: the board's ends tell them apart.
  const known = alike.find((leg) => hasEnd(leg, from) && hasEnd(leg, to)) ?? alike[0];
  if (known === undefined) return null;
  free.splice(free.indexOf(known), 1);
  const isAlong = nodeOf(known.from) === nodeOf(from);
  return {
    ...known,
    from: renamed(known.from, isAlong ? from : to),
    to: renamed(known.to, isAlong ? to : from),
  };
}

function newLeg(circuit: string, [from, to]: Stretch, cable: Cable | null, id: string | undefined): Leg {
  if (id === undefined) throw new Error(`no id for the new leg from ${nodeOf(from)} to ${nodeOf(to)}`);
  return { id, circuit, from, to, ...(cable === null ? {} : { cable: structuredClone(cable) }) };
}

const joins = ({ from, to }: Leg, [a, b]: Stretch): boolean =>
  (nodeOf(from) === nodeOf(a) && nodeOf(to) === nodeOf(b)) ||
  (nodeOf(from) === nodeOf(b) && nodeOf(to) === nodeOf(a));

const sameEnd = (one: End, other: End): boolean =>
  'point' in one
    ? 'point' in other && one.point === other.point
    : 'origin' in other && one.origin === other.origin && one.end === other.end;

const hasEnd = ({ from, to }: Leg, end: End): boolean => sameEnd(from, end) || sameEnd(to, end);

/** At a point the side of a fused unit stays as recorded; at the board the order says which end it is. */
const renamed = (end: End, asked: End): End => ('point' in end ? end : asked);

/** Puts legs in: known ones where they are, new ones behind them. */
function putLegs(job: Job, laid: readonly Leg[]): void {
  for (const leg of laid) {
    const place = job.legs.findIndex(({ id }) => id === leg.id);
    job.legs.splice(place < 0 ? job.legs.length : place, place < 0 ? 0 : 1, leg);
  }
}
