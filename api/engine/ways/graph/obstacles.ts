import type { Plan } from '../../plan/plan.ts';
import type { PlanPoint } from '../../plan/plane.ts';
import { remembered } from '../../plan/remembered.ts';
import { roomAt, roomsOfStorey } from '../../plan/surroundings.ts';
import type { FaceRange, FlatFace, Span } from './flat-face.ts';

/** Zone 2 of a bath or shower ends here, mm from it and mm above the floor. Source: BS 7671 701.32, from memory. */
const WET_ASIDE_MM = 600;
const WET_HEIGHT_MM = 2250;
/** Cables keep this far from gas pipes, mm. Source: IET On-Site Guide, as wiring rule A18 has it (25 mm). */
const GAS_ASIDE_MM = 25;

/** A part of the building where no new cable goes: a box on plan between two heights above its storey's floor. */
export interface Obstacle {
  readonly lowX: number;
  readonly lowY: number;
  readonly highX: number;
  readonly highY: number;
  readonly fromMm: number;
  readonly toMm: number;
  /** Only for faces that look into this room; null: everywhere. */
  readonly roomId: string | null;
}

/** The wet zones and gas pipes of a storey. */
export function obstaclesOf(plan: Plan, storeyId: string): readonly Obstacle[] {
  return obstaclesByPlan(plan).get(storeyId) ?? [];
}

const obstaclesByPlan = remembered((plan: Plan): ReadonlyMap<string, readonly Obstacle[]> => {
  const byStorey = new Map<string, Obstacle[]>();
  for (const { fixture, storeyId } of plan.fixtures) {
    const isWet = fixture.kind === 'bath' || fixture.kind === 'shower';
    const isGas = fixture.kind === 'gas-pipe' || fixture.kind === 'gas-meter';
    if (!isWet && !isGas) continue;
    const asideMm = isWet ? WET_ASIDE_MM : GAS_ASIDE_MM;
    const xs = fixture.outline.map(([x]) => x);
    const ys = fixture.outline.map(([, y]) => y);
    const centre = [mean(xs), mean(ys)] as unknown as PlanPoint;
    const list = byStorey.get(storeyId) ?? [];
    list.push({
      lowX: Math.min(...xs) - asideMm,
      highX: Math.max(...xs) + asideMm,
      lowY: Math.min(...ys) - asideMm,
      highY: Math.max(...ys) + asideMm,
      fromMm: isWet ? 0 : (fixture.fromMm ?? 0) - asideMm,
      toMm: isWet ? WET_HEIGHT_MM : (fixture.toMm ?? WET_HEIGHT_MM) + asideMm,
      roomId: isWet ? (roomAt(plan, storeyId, centre)?.room.id ?? null) : null,
    });
    byStorey.set(storeyId, list);
  }
  return byStorey;
});

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);

/** The obstacles that reach a face, with the stretch of it that each takes. */
export function obstaclesOnFace(
  plan: Plan,
  face: FlatFace,
): readonly { readonly span: Span; readonly heights: Span }[] {
  const all = obstaclesOf(plan, face.storeyId);
  if (all.length === 0) return [];
  const rooms = new Set(
    roomsOfStorey(plan, face.storeyId)
      .filter(({ room }) =>
        room.walls.some(({ wall, side }) =>
          face.ranges.some((range) => range.wall.wall.id === wall && range.side === side),
        ),
      )
      .map(({ room }) => room.id),
  );
  return all
    .filter(({ roomId }) => roomId === null || rooms.has(roomId))
    .flatMap((obstacle) =>
      face.ranges.flatMap((range) => {
        const span = spanInBox(range, obstacle);
        return span === null ? [] : [{ span, heights: [obstacle.fromMm, obstacle.toMm] as const }];
      }),
    );
}

/** The stretch of a range's surface that lies in a box on plan. */
function spanInBox({ wall, side, fromMm, toMm, startMm, sense }: FaceRange, box: Obstacle): Span | null {
  const off = ((side === 'left' ? 1 : -1) * wall.wall.thicknessMm) / 2;
  const x0 = wall.wall.from[0] + wall.leftNormal[0] * off;
  const y0 = wall.wall.from[1] + wall.leftNormal[1] * off;
  let [low, high] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (const [start, step, from, to] of [
    [x0, wall.direction[0], box.lowX, box.highX],
    [y0, wall.direction[1], box.lowY, box.highY],
  ] as const) {
    if (Math.abs(step) < 1e-9) {
      if (start < from || start > to) return null;
      continue;
    }
    const [a, b] = [(from - start) / step, (to - start) / step];
    low = Math.max(low, Math.min(a, b));
    high = Math.min(high, Math.max(a, b));
  }
  if (low >= high) return null;
  const [a, b] = [startMm + sense * low, startMm + sense * high];
  const span: Span = [Math.max(fromMm, Math.min(a, b)), Math.min(toMm, Math.max(a, b))];
  return span[0] < span[1] ? span : null;
}
