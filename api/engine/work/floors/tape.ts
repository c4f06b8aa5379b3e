import type { Plan } from '../../plan/plan.ts';
import type { PlanPoint } from '../../plan/plane.ts';
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

/**
 * Where a place is in its room, by two lengths at right angles, each from the nearer face on that hand as the plan lies on paper.
 *
 * @returns null between rooms, outside, and where no outline closes.
 */
export function tapeAt(plan: Plan, storeyId: string, at: PlanPoint): Tape | null {
  const room = roomAt(plan, storeyId, at);
  if (room === null) return null;
  const nearest = (direction: readonly [number, number], sides: readonly [PlanSide, PlanSide]) => {
    const cuts = outlineCutsMm(room.outline, at, direction).filter((mm) => !Number.isNaN(mm));
    const [before, after] = [cuts.filter((mm) => mm <= 0), cuts.filter((mm) => mm >= 0)];
    if (before.length === 0 || after.length === 0) return null;
    const [backMm, onMm] = [-Math.max(...before), Math.min(...after)];
    return backMm <= onMm ? { side: sides[0], lengthMm: backMm } : { side: sides[1], lengthMm: onMm };
  };
  const across = nearest([1, 0], ['left', 'right']);
  const up = nearest([0, 1], ['foot', 'top']);
  return across === null || up === null
    ? null
    : { roomId: room.room.id, roomName: room.room.name, across, up };
}
