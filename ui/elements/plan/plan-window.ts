import { type PlanPoint, planPoint } from '#engine/plan/plane.ts';

/** Pixels to a unit of the scene: lettering of 2.5 units is 12.5 px. */
export const PX_PER_UNIT = 5;

/** What of the house is in sight: the place in the middle and how many mm a unit of the scene stands for. */
export interface PlanWindow {
  readonly middle: PlanPoint;
  readonly scale: number;
}

const SMALLEST_SCALE = 8;
const LARGEST_SCALE = 1000;
/** Left free round the house in a whole view, px. */
const BORDER_PX = 64;

const within = (scale: number): number => Math.min(LARGEST_SCALE, Math.max(SMALLEST_SCALE, scale));

/** The window that shows a whole extent in a box of this many px. */
export function wholeWindow(
  [low, high]: readonly [PlanPoint, PlanPoint],
  widthPx: number,
  heightPx: number,
): PlanWindow {
  const across = (high[0] - low[0]) / Math.max(80, widthPx - BORDER_PX);
  const up = (high[1] - low[1]) / Math.max(80, heightPx - BORDER_PX);
  const middle = planPoint((low[0] + high[0]) / 2, (low[1] + high[1]) / 2);
  return { middle, scale: within(Math.max(across, up, 1) * PX_PER_UNIT) };
}

/** The window zoomed by a factor (more than 1: nearer) about a place of the house that stays where it is. */
export function zoomed(window: PlanWindow, factor: number, about: PlanPoint): PlanWindow {
  const scale = within(window.scale / factor);
  const kept = scale / window.scale;
  const middle = planPoint(
    about[0] + (window.middle[0] - about[0]) * kept,
    about[1] + (window.middle[1] - about[1]) * kept,
  );
  return { middle, scale };
}

/** The window moved by so many px to the right and down on screen: the house goes along. */
export function panned(window: PlanWindow, rightPx: number, downPx: number): PlanWindow {
  const mmPerPx = window.scale / PX_PER_UNIT;
  const middle = planPoint(window.middle[0] - rightPx * mmPerPx, window.middle[1] + downPx * mmPerPx);
  return { ...window, middle };
}
