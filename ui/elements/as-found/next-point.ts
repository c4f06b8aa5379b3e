import type { Plan } from '#engine/plan/plan.ts';
import type { Point } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { orderOfLegs } from './order-of-legs.ts';
import { roomOfPlace } from './room-of-place.ts';

/** All points whose plates are looked behind. */
const plates = ({ points }: Pick<Job, 'points'>): readonly Point[] =>
  points.filter(({ status, kind }) => status !== 'wanted' && kind !== 'joint');

/**
 * The points that were found in the order in which one goes from plate to plate: circuit by circuit along its cable, then the others
 * room by room, rooms and points as they were listed. Each once; joints have no plate.
 */
export function platesInTurn(job: Pick<Job, 'points' | 'circuits' | 'legs'>, plan: Plan): readonly Point[] {
  const found = plates(job);
  const byId = new Map(found.map((point) => [point.id, point]));
  const inOrder = job.circuits
    .flatMap((circuit) => orderOfLegs(job, circuit))
    .flatMap((id) => byId.get(id) ?? []);
  const rest = found.filter((point) => !inOrder.includes(point));
  const roomOf = ({ place }: Point): string | null => roomOfPlace(plan, place);
  const rooms = [...new Set(rest.map(roomOf))];
  const byRoom = rest.toSorted((a, b) => rooms.indexOf(roomOf(a)) - rooms.indexOf(roomOf(b)));
  return [...new Set([...inOrder, ...byRoom])];
}

/** The point whose plate comes after this one's; null after the last. */
export function nextPlate(
  job: Pick<Job, 'points' | 'circuits' | 'legs'>,
  plan: Plan,
  pointId: string,
): Point | null {
  const turn = platesInTurn(job, plan);
  const at = turn.findIndex(({ id }) => id === pointId);
  return at < 0 ? null : (turn[at + 1] ?? null);
}
