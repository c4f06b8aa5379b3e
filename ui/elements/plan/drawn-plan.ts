import { type ScreenPlan, screenPlan } from '#drawing/plan/screen-plan.ts';
import type { Worked } from '#engine/connections/worked.ts';
import type { Finding } from '#engine/rules/finding.ts';
import type { MovedSight, PlanStand } from '../../moved/moved-sight.ts';
import type { Target } from './group-extent.ts';
import { targetsOf } from './plan-layers.ts';

/** What a plan is drawn from. */
export interface DrawnFrom {
  readonly worked: Worked;
  readonly findings: readonly Finding[];
  readonly storeyId: string;
  readonly movable: ReadonlySet<string>;
  readonly scale: number;
  /** Lettering of lengths and sizes, units of the scene. */
  readonly figuresMm: number;
  /** What another thread has drawn of it while a point is under the hand; null for nothing. */
  readonly sight: MovedSight | null;
}

/** How the plan of a job stands. */
export function standOf({
  worked,
  storeyId,
  movable,
  scale,
  figuresMm,
}: Omit<DrawnFrom, 'findings' | 'sight'>): PlanStand {
  const withWanted = worked.job.points.some(({ id, status }) => status === 'wanted' && movable.has(id));
  return { storeyId, scale, withWanted, figuresMm };
}

const isSameStand = (one: PlanStand, other: PlanStand): boolean =>
  one.storeyId === other.storeyId &&
  one.scale === other.scale &&
  one.withWanted === other.withWanted &&
  one.figuresMm === other.figuresMm;

/** The plan as it is drawn: anew only where something that it is drawn from has changed. */
export class DrawnPlan {
  #from: DrawnFrom | null = null;
  #own: ScreenPlan | null = null;
  #now: ScreenPlan | null = null;
  #targets: readonly Target[] | null = null;

  /** Null before it was drawn for the first time. */
  get now(): ScreenPlan | null {
    return this.#now;
  }

  /** What can be pointed at. */
  get targets(): readonly Target[] {
    if (this.#from === null || this.#now === null) return [];
    this.#targets ??= targetsOf(this.#now.scene, this.#from.movable);
    return this.#targets;
  }

  take(from: DrawnFrom): void {
    const before = this.#from;
    this.#from = from;
    const isOwn = isDrawnOf(before, from);
    if (isOwn && before?.sight === from.sight) return;
    const stand = standOf(from);
    if (from.sight !== null && isSameStand(from.sight.stand, stand)) {
      const { scene, frame, spots } = from.sight.plan;
      this.#now = { scene, frame, spots: new Map(spots) };
      if (!isOwn) this.#own = null;
    } else {
      if (!isOwn || this.#own === null) this.#own = screenPlan({ ...from, ...stand });
      this.#now = this.#own;
    }
    this.#targets = null;
  }
}

const isSameSet = (one: ReadonlySet<string>, other: ReadonlySet<string>): boolean =>
  one === other || (one.size === other.size && [...one].every((id) => other.has(id)));

/** Whether one's own drawing of an earlier time is that of now. */
const isDrawnOf = (one: DrawnFrom | null, other: DrawnFrom): boolean =>
  one !== null &&
  one.worked === other.worked &&
  one.findings === other.findings &&
  one.storeyId === other.storeyId &&
  isSameSet(one.movable, other.movable) &&
  one.scale === other.scale &&
  one.figuresMm === other.figuresMm;
