import type { Plan, PlanRoom } from '../../plan/plan.ts';
import { type PlanPoint, planPoint } from '../../plan/plane.ts';
import { roomAt } from '../../plan/surroundings.ts';
import { outlineCutsMm } from '../../ways/path-cuts.ts';

/** A side of the plan as the paper has it, its top up. */
export type PlanSide = 'left' | 'right' | 'top' | 'foot';

/** How far a place is from the nearest face of its room on one of two hands. */
export interface TapeLength {
  readonly side: PlanSide;
  /** Level, along the plan's axis, from the face of the room. */
  readonly lengthMm: number;
}

/** Where a place on a storey's floor is, as a tape finds it. */
export interface Tape {
  readonly roomId: string;
  readonly roomName: string;
  /** To the left or the right, whichever is nearer. */
  readonly across: TapeLength;
  /** To the top or the foot of the plan, whichever is nearer. */
  readonly up: TapeLength;
}

/** A place in a wall, or on its face, is told from the room that is this near, mm; nearer ones first. */
const BESIDE_MM = [0, 5, 60, 150, 300] as const;

/**
 * Where a place is in its room, by two lengths at right angles, each from the nearer face on that hand as the plan lies on paper. A place in a
 * wall, or on its face, is told from the room beside it.
 *
 * @returns null outside, and where no outline closes.
 */
export function tapeAt(plan: Plan, storeyId: string, at: PlanPoint): Tape | null {
  const found = roomBesidePlace(plan, storeyId, at);
  if (found === null) return null;
  const { room, from } = found;
  const across = nearest(room, { at: at[0], from, axis: 0, sides: ['left', 'right'] });
  const up = nearest(room, { at: at[1], from, axis: 1, sides: ['foot', 'top'] });
  return across === null || up === null
    ? null
    : { roomId: room.room.id, roomName: room.room.name, across, up };
}

/** The room that a place is in, else the nearest beside it, with a place in it to measure from. */
function roomBesidePlace(
  plan: Plan,
  storeyId: string,
  [x, y]: PlanPoint,
): { readonly room: PlanRoom; readonly from: PlanPoint } | null {
  for (const mm of BESIDE_MM)
    for (const [dx, dy] of [
      [1, 0],
      [-1, 0],
      [0, 1],
      [0, -1],
    ] as const) {
      const from = planPoint(x + dx * mm, y + dy * mm);
      const room = roomAt(plan, storeyId, from);
      if (room !== null) return { room, from };
    }
  return null;
}

/** The nearer of the two faces along an axis; nought for a place that is in the wall itself. */
function nearest(
  { outline }: PlanRoom,
  {
    at,
    from,
    axis,
    sides: [low, high],
  }: {
    readonly at: number;
    readonly from: PlanPoint;
    readonly axis: 0 | 1;
    readonly sides: readonly [PlanSide, PlanSide];
  },
): TapeLength | null {
  const cuts = outlineCutsMm(outline, from, axis === 0 ? [1, 0] : [0, 1]);
  const [before, after] = [cuts.filter((mm) => mm <= 0), cuts.filter((mm) => mm >= 0)];
  if (before.length === 0 || after.length === 0) return null;
  const lowMm = Math.max(0, at - (from[axis] + Math.max(...before)));
  const highMm = Math.max(0, from[axis] + Math.min(...after) - at);
  return lowMm <= highMm ? { side: low, lengthMm: lowMm } : { side: high, lengthMm: highMm };
}
