import { type PlanPoint, planPoint } from './plane.ts';

declare const sheetFrame: unique symbol;

/** A position on a drawing sheet: mm on paper from the top left corner, x to the right, y down. */
export type SheetPoint = readonly [xMm: number, yMm: number] & { readonly [sheetFrame]: true };

/** Builds a paper position from mm. */
export const sheetPoint = (xMm: number, yMm: number): SheetPoint => [xMm, yMm] as unknown as SheetPoint;

/** How a plan lies on a sheet: 1:`scale`, with the plan's `origin` at `at` on paper. */
export interface SheetFrame {
  readonly scale: number;
  readonly origin: PlanPoint;
  readonly at: SheetPoint;
}

/** Brings a plan position on to the sheet; with `fromSheet` the only bridge between the two frames. Plan y goes up, paper y down. */
export const toSheet = (frame: SheetFrame, point: PlanPoint): SheetPoint =>
  sheetPoint(
    frame.at[0] + (point[0] - frame.origin[0]) / frame.scale,
    frame.at[1] - (point[1] - frame.origin[1]) / frame.scale,
  );

/** Brings a paper position back on to the plan: the inverse of `toSheet`. */
export const fromSheet = (frame: SheetFrame, at: SheetPoint): PlanPoint =>
  planPoint(
    frame.origin[0] + (at[0] - frame.at[0]) * frame.scale,
    frame.origin[1] - (at[1] - frame.at[1]) * frame.scale,
  );

/** Turns a direction on plan (unit vector) into the same direction on paper. */
export const directionOnSheet = (direction: readonly [number, number]): readonly [number, number] => [
  direction[0],
  -direction[1],
];
