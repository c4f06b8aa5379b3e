import { buildPlan } from '#engine/plan/build-plan.ts';
import type { Plan } from '#engine/plan/plan.ts';
import type { Storey } from '#model/building.ts';
import type { Job } from '#model/job.ts';
import { type Drawing, type Outcome, plainCopy, refused } from './drawing.ts';
import type { HousePart } from './house-parts.ts';
import { moveCorner, moveWall } from './move-walls.ts';
import { plus, tidy, type Vector } from './vector.ts';

/** A wall moved across its line, to its left more than nought; or a corner moved to another place. */
export type Reshape =
  | { readonly part: 'wall'; readonly wallId: string; readonly byMm: number }
  | { readonly part: 'corner'; readonly at: Vector; readonly to: Vector };

/** Reshapes the house as asked. */
export const reshape = (drawing: Drawing, asked: Reshape): Outcome =>
  asked.part === 'wall' ? moveWall(drawing, asked) : moveCorner(drawing, asked);

/** The part by which what was reshaped is held from then on. */
export const partAfter = (asked: Reshape): HousePart =>
  asked.part === 'wall' ? { part: 'wall', wallId: asked.wallId } : { part: 'corner', at: tidy(asked.to) };

/** Whether it leaves everything where it is. */
export const isNoChange = (asked: Reshape): boolean =>
  asked.part === 'wall'
    ? Math.abs(asked.byMm) < 0.05
    : tidy(asked.at).every((mm, i) => mm === tidy(asked.to)[i]);

/** The house as it would be: the storey with its points and boards, and why it cannot stay so. */
export interface Reshaped {
  readonly storey: Storey;
  readonly plan: Plan;
  readonly outcome: Outcome;
}

/** Tries a reshaping on a copy of one storey; null where the job has no such storey. */
export function reshapedCopy(job: Job, storeyId: string, asked: Reshape): Reshaped | null {
  const found = job.storeys.find(({ id }) => id === storeyId);
  if (found === undefined) return null;
  const { points, boards, legs, schemes } = job;
  const [storey, rest] = [plainCopy(found), plainCopy({ points, boards, legs, schemes })];
  let made = 0;
  const newId = (): string => {
    made += 1;
    return `held-${made}`;
  };
  const copy: Job = { ...job, ...rest, storeys: [storey] };
  const outcome = isFiniteReshape(asked)
    ? reshape({ job: copy, storey, newId }, asked)
    : refused('It cannot go there.');
  return { storey, plan: buildPlan(copy), outcome };
}

const isFiniteReshape = (asked: Reshape): boolean =>
  asked.part === 'wall' ? Number.isFinite(asked.byMm) : asked.to.every(Number.isFinite);

/** A corner moved by so much. */
export const cornerMoved = (at: Vector, by: Vector): Reshape => ({ part: 'corner', at, to: plus(at, by) });
