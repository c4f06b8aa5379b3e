import type { PlanPoint } from '#engine/plan/plane.ts';
import type { Run, Segment } from '#engine/ways/run.ts';
import { heightSaid } from './height-said.ts';

/** Shorter than this it is a step in a chase and no rise, mm. */
const LEAST_MM = 50;
/** Ends of an upright lie over each other by this, mm. */
const PLUMB_MM = 1;

/** A place where a cable goes up or down: one straight upright, whatever it lies in on its way. */
export interface Upright {
  readonly at: PlanPoint;
  readonly from: Segment['from'];
  readonly to: Segment['to'];
}

const isUpright = ({ from, to }: Pick<Segment, 'from' | 'to'>): boolean =>
  Math.hypot(from.at[0] - to.at[0], from.at[1] - to.at[1]) <= PLUMB_MM;

/** The uprights of a run in its order, those that follow on each other as one. */
export function uprightsOf({ segments }: Pick<Run, 'segments'>): readonly Upright[] {
  const found: Upright[] = [];
  let before: Segment | null = null;
  for (const segment of segments) {
    const last = found.at(-1);
    if (isUpright(segment)) {
      const goesOn = before !== null && isUpright(before) && last !== undefined;
      if (goesOn) found[found.length - 1] = { ...last, to: segment.to };
      else found.push({ at: segment.from.at, from: segment.from, to: segment.to });
    }
    before = segment;
  }
  return found.filter(({ from, to }) => Math.abs(to.levelMm - from.levelMm) >= LEAST_MM);
}

/** True for an upright that goes up as one follows the cable. */
export const goesUp = ({ from, to }: Upright): boolean => to.levelMm > from.levelMm;

/** An upright as the plan of a storey tells it. */
export interface UprightSaid {
  readonly isUp: boolean;
  readonly said: string;
}

/**
 * An upright on the plan of a storey: both heights above its floor, or the one that is of it and which way the cable leaves it.
 *
 * @returns null where neither end is of that storey.
 */
export function uprightSaid(upright: Upright, storeyId: string): UprightSaid | null {
  const { from, to } = upright;
  const [starts, ends] = [from.storeyId === storeyId, to.storeyId === storeyId];
  if (!starts && !ends) return null;
  // What comes from another storey is followed from this one.
  const isUp = starts ? goesUp(upright) : !goesUp(upright);
  if (starts && ends) return { isUp, said: `${heightSaid(from.heightMm)} to ${heightSaid(to.heightMm)}` };
  const { heightMm } = starts ? from : to;
  return { isUp, said: `${heightSaid(heightMm)}, ${isUp ? 'up' : 'down'}` };
}
