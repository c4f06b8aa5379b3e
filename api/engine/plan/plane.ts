declare const planFrame: unique symbol;

/** A position on a storey's plan: mm, x to the right, y up. Branded, so that paper positions never mix in. */
export type PlanPoint = readonly [xMm: number, yMm: number] & { readonly [planFrame]: true };

/** Builds a plan position from mm. */
export const planPoint = (xMm: number, yMm: number): PlanPoint => [xMm, yMm] as unknown as PlanPoint;

/** Builds a plan position from the job file's `[x, y]`. */
export const planPointOf = (at: readonly [number, number]): PlanPoint => planPoint(at[0], at[1]);

/** Straight distance on plan, mm. */
export const distanceMm = (a: PlanPoint, b: PlanPoint): number => Math.hypot(b[0] - a[0], b[1] - a[1]);

/** A place in the building: on plan, with its height above sea, so to speak: above the job's zero level. */
export interface Position {
  readonly storeyId: string;
  readonly at: PlanPoint;
  /** Above the finished floor of `storeyId`; negative in the void below it. */
  readonly heightMm: number;
  /** Above the job's zero level: the storey's floor level + `heightMm`. */
  readonly levelMm: number;
  /** Set when the place is on a wall's face. */
  readonly onWall?: WallSpot;
}

/** A spot on a wall's face; `alongMm` runs from the wall's `from` on the centre line. */
export interface WallSpot {
  readonly wallId: string;
  readonly side: 'left' | 'right';
  readonly alongMm: number;
}
