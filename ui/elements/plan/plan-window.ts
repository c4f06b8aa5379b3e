import { type PlanPoint, planPoint } from '#engine/plan/plane.ts';

/** Pixels to a unit of the scene: lettering of 2.5 units is 12.5 px. */
export const PX_PER_UNIT = 5;

/** What of the house is in sight: the place in the middle and how many mm a unit of the scene stands for. */
export interface PlanWindow {
  readonly middle: PlanPoint;
  readonly scale: number;
}

/** A size in px. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** A part of the plan's box, px from its top left corner. */
export interface Part extends Size {
  readonly left: number;
  readonly top: number;
}

/** Nearest: a phone's width then shows a metre. */
const SMALLEST_SCALE = 15;
const LARGEST_SCALE = 1000;
/** What is brought into sight is brought this far from the edge, px. */
const EDGE_PX = 48;
/** What is at least this far from it is in sight already, px: half a symbol. */
const SEEN_PX = 12;

const within = (scale: number): number => Math.min(LARGEST_SCALE, Math.max(SMALLEST_SCALE, scale));

/** The parts of a box that its buttons, in the corner on the right, leave free: beside them, or above. */
export function freeParts({ width, height }: Size): readonly Part[] {
  const [tools, toolsHigh, edge] = [64, 156, 14];
  return [
    { left: edge, top: edge, width: width - edge - tools, height: height - 2 * edge },
    { left: edge, top: edge, width: width - 2 * edge, height: height - edge - toolsHigh },
  ];
}

/** How far from the middle of a box something must stand to lie within a part of it, px; no further than it must. */
function aside(partStart: number, partLength: number, boxLength: number, length: number): number {
  const [first, last] = [partStart + length / 2, partStart + partLength - length / 2];
  if (last <= first) return partStart + partLength / 2 - boxLength / 2;
  return Math.min(last, Math.max(first, boxLength / 2)) - boxLength / 2;
}

/** The window in which a whole extent is seen largest, within one of the parts of a box. */
export function wholeWindow(
  [low, high]: readonly [PlanPoint, PlanPoint],
  { width, height }: Size,
  parts: readonly Part[],
): PlanWindow {
  const windows = parts.map((part) => {
    const across = (high[0] - low[0]) / Math.max(60, part.width);
    const up = (high[1] - low[1]) / Math.max(60, part.height);
    const scale = within(Math.max(across, up, 1) * PX_PER_UNIT);
    const pxPerMm = PX_PER_UNIT / scale;
    const right = aside(part.left, part.width, width, (high[0] - low[0]) * pxPerMm);
    const down = aside(part.top, part.height, height, (high[1] - low[1]) * pxPerMm);
    const middle = planPoint((low[0] + high[0]) / 2, (low[1] + high[1]) / 2);
    return panned({ middle, scale }, right, down);
  });
  const [first, ...others] = windows;
  if (first === undefined) return { middle: low, scale: LARGEST_SCALE };
  return others.reduce((best, one) => (one.scale < best.scale ? one : best), first);
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

/** Whether a place is within a window, so many px from its edges or further. */
function isWithin(
  { middle, scale }: PlanWindow,
  [x, y]: PlanPoint,
  { width, height }: Size,
  edgePx: number,
): boolean {
  const mmPerPx = scale / PX_PER_UNIT;
  return (
    Math.abs(x - middle[0]) <= (width / 2 - edgePx) * mmPerPx &&
    Math.abs(y - middle[1]) <= (height / 2 - edgePx) * mmPerPx
  );
}

/** The same window where all the places are in sight, else one about their middle, further away where it must be. */
export function withInSight(window: PlanWindow, places: readonly PlanPoint[], size: Size): PlanWindow {
  if (places.every((place) => isWithin(window, place, size, SEEN_PX))) return window;
  const { width, height } = size;
  const [half, halfUp] = [Math.max(20, width / 2 - EDGE_PX), Math.max(20, height / 2 - EDGE_PX)];
  const xs = places.map(([x]) => x);
  const ys = places.map(([, y]) => y);
  const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const needed = Math.max((right - left) / (2 * half), (high - low) / (2 * halfUp)) * PX_PER_UNIT;
  return {
    middle: planPoint((left + right) / 2, (low + high) / 2),
    scale: within(Math.max(window.scale, needed)),
  };
}

/** A window on the way from one to another, `part` from 0 to 1; nearer and further go evenly. */
export function between(from: PlanWindow, to: PlanWindow, part: number): PlanWindow {
  const mixed = (a: number, b: number): number => a + (b - a) * part;
  return {
    middle: planPoint(mixed(from.middle[0], to.middle[0]), mixed(from.middle[1], to.middle[1])),
    scale: Math.exp(mixed(Math.log(from.scale), Math.log(to.scale))),
  };
}
