import { buildPlan } from '#engine/plan/build-plan.ts';
import type { Plan } from '#engine/plan/plan.ts';
import type { Storey } from '#model/building.ts';
import type { Board, Place } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { type Drawing, done, type Outcome, plainCopy, refused } from './drawing.ts';
import { whyNotThere } from './fixture-place.ts';
import type { HousePart } from './house-parts.ts';
import { moveCorner, moveWall } from './move-walls.ts';
import { type PushedStretch, pushStretch } from './push-stretch.ts';
import { plus, tidy, times, type Vector } from './vector.ts';
import { placeBy } from './wall-line.ts';

/**
 * A wall, or a stretch of one, moved across its line, to its left more than nought; a corner moved to another place; what is fixed
 * brought to where its outline is the other.
 */
export type Reshape =
  | { readonly part: 'wall'; readonly wallId: string; readonly byMm: number }
  | ({ readonly part: 'stretch' } & PushedStretch)
  | { readonly part: 'corner'; readonly at: Vector; readonly to: Vector }
  | {
      readonly part: 'fixture';
      readonly fixtureId: string;
      readonly at: readonly Vector[];
      readonly to: readonly Vector[];
      /** Its place was measured: what was assumed of it is so no longer. */
      readonly isMeasured: boolean;
    };

/** Reshapes the house as asked. */
export function reshape(drawing: Drawing, asked: Reshape): Outcome {
  switch (asked.part) {
    case 'wall':
      return moveWall(drawing, asked);
    case 'stretch':
      return pushStretch(drawing, asked);
    case 'corner':
      return moveCorner(drawing, asked);
    case 'fixture':
      return moveFixture(drawing, asked);
  }
}

function moveFixture(
  { storey }: Drawing,
  { fixtureId, to, isMeasured }: Extract<Reshape, { part: 'fixture' }>,
): Outcome {
  const fixture = storey.fixtures.find(({ id }) => id === fixtureId);
  if (fixture === undefined) return refused('That is not there any more.');
  const why = whyNotThere(storey, to);
  if (why !== null) return refused(why);
  fixture.outline = to.map((at) => tidy(at));
  if (isMeasured && fixture.certainty !== undefined) {
    const { outline: _, ...rest } = fixture.certainty;
    if (Object.keys(rest).length > 0) fixture.certainty = rest;
    else delete fixture.certainty;
  }
  return done;
}

/**
 * The part by which what was reshaped is held from then on: of a pushed stretch the wall that it has become.
 *
 * @param before the storey as it was.
 * @param after as it is now.
 */
export function partAfter(
  asked: Reshape,
  before: Pick<Storey, 'walls'>,
  after: Pick<Storey, 'walls'>,
): HousePart {
  switch (asked.part) {
    case 'wall':
      return { part: 'wall', wallId: asked.wallId };
    case 'corner':
      return { part: 'corner', at: tidy(asked.to) };
    case 'fixture':
      return { part: 'fixture', fixtureId: asked.fixtureId };
    case 'stretch':
      return { part: 'wall', wallId: stretchAfter(asked, before, after) };
  }
}

/** The wall whose middle lies where the stretch was pushed to; the wall that it was of where there is none. */
function stretchAfter(
  { wallId, marks: [a, b], byMm }: PushedStretch,
  before: Pick<Storey, 'walls'>,
  after: Pick<Storey, 'walls'>,
): string {
  const wall = before.walls.find(({ id }) => id === wallId);
  if (wall === undefined) return wallId;
  const middle = placeBy(wall, (a + b) / 2, byMm);
  const far = ({ from, to }: { from: readonly number[]; to: readonly number[] }): number => {
    const [x, y] = times(plus([from[0] ?? 0, from[1] ?? 0], [to[0] ?? 0, to[1] ?? 0]), 0.5);
    return Math.hypot(x - middle[0], y - middle[1]);
  };
  return after.walls.toSorted((one, other) => far(one) - far(other))[0]?.id ?? wallId;
}

/** Whether it leaves everything where it is. */
export function isNoChange(asked: Reshape): boolean {
  if (asked.part === 'wall' || asked.part === 'stretch') return Math.abs(asked.byMm) < 0.05;
  const [before, after] = asked.part === 'corner' ? [[asked.at], [asked.to]] : [asked.at, asked.to];
  return before.every((at, i) => {
    const [one, other] = [tidy(at), tidy(after[i] ?? at)];
    return one[0] === other[0] && one[1] === other[1];
  });
}

/** The house as it would be: the storey with its points and boards, and why it cannot stay so. */
export interface Reshaped {
  readonly storey: Storey;
  readonly plan: Plan;
  readonly boards: readonly Board[];
  readonly outcome: Outcome;
}

/** Whether something with a place stands on a storey. */
function standsOn({ id, walls }: Storey): (thing: { readonly place?: Place | undefined }) => boolean {
  const own = new Set(walls.map((wall) => wall.id));
  return ({ place }) => place !== undefined && ('wall' in place ? own.has(place.wall) : place.storey === id);
}

/**
 * Tries a reshaping on a copy of one storey and of what stands on it: as often as a hand moves, so nothing is copied that neither shows
 * nor decides. Null where the job has no such storey.
 */
export function reshapedCopy(job: Job, storeyId: string, asked: Reshape): Reshaped | null {
  const found = job.storeys.find(({ id }) => id === storeyId);
  if (found === undefined) return null;
  const isHere = standsOn(found);
  const storey = plainCopy(found);
  const here = plainCopy({ points: job.points.filter(isHere), boards: job.boards.filter(isHere) });
  let made = 0;
  const newId = (): string => {
    made += 1;
    return `held-${made}`;
  };
  const copy: Job = { ...job, ...here, legs: [], schemes: [], storeys: [storey] };
  const outcome = isFiniteReshape(asked)
    ? reshape({ job: copy, storey, newId }, asked)
    : refused('It cannot go there.');
  return { storey, plan: buildPlan(copy), boards: here.boards, outcome };
}

function isFiniteReshape(asked: Reshape): boolean {
  if (asked.part === 'wall' || asked.part === 'stretch') return Number.isFinite(asked.byMm);
  return (asked.part === 'corner' ? [asked.to] : asked.to).every((at) => at.every(Number.isFinite));
}

/** A corner moved by so much. */
export const cornerMoved = (at: Vector, by: Vector): Reshape => ({ part: 'corner', at, to: plus(at, by) });
