import type { Floor } from '#model/building.ts';
import type { Plan } from '../../plan/plan.ts';
import type { PlanPoint } from '../../plan/plane.ts';
import { inAxes, type JoistAxes, joistAxes } from '../joist-axes.ts';
import { joistSpans } from '../joist-supports.ts';
import { drillableMm, type JoistWindow, notchableMm } from '../joist-window.ts';
import { JOIST_SPACING_MM } from '../joists.ts';
import type { Stretch } from '../path-cuts.ts';

/** Nobody drills to the millimetre: lanes keep so far inside the window, mm. Assumed, no source. */
const INSIDE_MM = 10;
/** One lane does for all that ask for one so near it, if it lies in their windows too, mm. */
const NEAR_MM = 150;

/** Where cable may cross the joists of a room: so far along them, from the one end of the room across them to the other. */
export interface JoistLane {
  readonly axes: JoistAxes;
  readonly alongMm: number;
  readonly across: Stretch;
}

/** A lane that is asked for, and the windows that it has to lie in. */
interface Asked {
  readonly mm: number;
  readonly windows: readonly JoistWindow[];
}

/**
 * Lanes across the joists of a room of a storey at the edges of where each may be drilled or notched, as few as serve all its joists; none
 * where their direction is not known or they bear on nothing that is drawn.
 */
export function joistLanes(
  plan: Plan,
  storeyId: string,
  outline: readonly PlanPoint[],
  floor: Floor,
): readonly JoistLane[] {
  const axes = joistAxes(floor);
  if (axes === null || outline.length === 0) return [];
  const corners = outline.map((at) => inAxes(axes, at));
  const along = extent(corners.map(([a]) => a));
  const across = extent(corners.map(([, b]) => b));
  const asked = bays(plan, storeyId, { axes, across, floor }).flatMap((windows) => askedOf(windows, along));
  return chosen(asked).map((alongMm) => ({ axes, alongMm, across }));
}

const extent = (values: readonly number[]): Stretch => [Math.min(...values), Math.max(...values)];

interface Across {
  readonly axes: JoistAxes;
  readonly across: Stretch;
  readonly floor: Floor;
}

/** The windows of a room's joists, span by span; joists that bear alike count once. */
function bays(
  plan: Plan,
  storeyId: string,
  { axes, across, floor }: Across,
): readonly (readonly JoistWindow[])[] {
  const spacingMm = floor.joistSpacingMm ?? JOIST_SPACING_MM;
  const [first, last] = [Math.ceil(across[0] / spacingMm), Math.floor(across[1] / spacingMm)];
  const known = new Map<string, readonly JoistWindow[]>();
  for (let joist = first; joist <= last; joist += 1)
    for (const span of joistSpans(plan, storeyId, axes, joist * spacingMm)) {
      const key = `${span.fromMm.toFixed(0)} ${span.toMm.toFixed(0)}`;
      if (!known.has(key)) known.set(key, [...drillableMm(span), ...notchableMm(span)]);
    }
  return [...known.values()];
}

/** Both edges of the windows for holes, and the edges next to the supports of those for notches. */
function askedOf(windows: readonly JoistWindow[], along: Stretch): readonly Asked[] {
  const [low, high, lowNotch, highNotch] = windows.map(inside);
  if (!low || !high || !lowNotch || !highNotch) return [];
  const wanted: readonly (readonly [number, JoistWindow])[] = [
    [low[0], low],
    [low[1], low],
    [high[0], high],
    [high[1], high],
    [lowNotch[0], lowNotch],
    [highNotch[1], highNotch],
  ];
  return wanted
    .filter(([mm]) => mm > along[0] && mm < along[1])
    .map(([mm, window]) => ({ mm, windows: [window] }));
}

/** A window less what nobody measures; a narrow one comes to its middle. */
function inside([lowMm, highMm]: JoistWindow): JoistWindow {
  const middle = (lowMm + highMm) / 2;
  return [Math.min(lowMm + INSIDE_MM, middle), Math.max(highMm - INSIDE_MM, middle)];
}

const isIn = (mm: number, [lowMm, highMm]: JoistWindow): boolean => mm >= lowMm && mm <= highMm;

/** Few lanes that serve all that are asked for: of those that would do, the one that does for most, then the lowest. */
function chosen(asked: readonly Asked[]): readonly number[] {
  const serves = (mm: number, wanted: Asked) =>
    Math.abs(mm - wanted.mm) <= NEAR_MM && wanted.windows.some((window) => isIn(mm, window));
  const kept: number[] = [];
  let left = asked;
  while (left.length > 0) {
    const counts = left.map(({ mm }) => left.filter((wanted) => serves(mm, wanted)).length);
    const most = Math.max(...counts);
    const best = Math.min(...left.filter((_, index) => counts[index] === most).map(({ mm }) => mm));
    kept.push(best);
    left = left.filter((wanted) => !serves(best, wanted));
  }
  return kept.toSorted((a, b) => a - b);
}
