import type { Plan, PlanRoom } from '#engine/plan/plan.ts';
import { type PlanPoint, planPoint } from '#engine/plan/plane.ts';
import { type SheetFrame, toSheet } from '#engine/plan/sheet-frame.ts';
import { roomsOfStorey } from '#engine/plan/surroundings.ts';
import { type Ink, line, type Shape } from '../scene.ts';

/** Where nobody measured how far apart joists are they are drawn so, mm: common practice, no source. */
const USUAL_SPACING_MM = 400;
/** Joists nearer to each other than this on the sheet are drawn each second, third … one. */
const DENSEST = 1.6;

/** The joists of a storey's timber floors, room by room, as the way they run and their spacing have it; none where that is not known. */
export const joistShapes = (
  frame: SheetFrame,
  plan: Plan,
  storeyId: string,
  ink: Ink = 'fixture',
): readonly Shape[] => {
  const storey = plan.storeyById.get(storeyId)?.storey;
  if (storey === undefined) return [];
  return roomsOfStorey(plan, storeyId).flatMap((room) => {
    const { build, joistsRunDeg, joistSpacingMm = USUAL_SPACING_MM } = room.room.floor ?? storey.floor;
    if (build !== 'suspended-timber' || joistsRunDeg === undefined) return [];
    const thinned = Math.ceil((DENSEST * frame.scale) / joistSpacingMm);
    return joistsIn(room, joistsRunDeg, joistSpacingMm * thinned).map(([from, to]) =>
      line(ink, [toSheet(frame, from), toSheet(frame, to)]),
    );
  });
};

/** The stretches of lines that run so through a room, in line with those of its neighbours. */
function joistsIn(
  { outline }: PlanRoom,
  runDeg: number,
  spacingMm: number,
): readonly (readonly [PlanPoint, PlanPoint])[] {
  const radians = (runDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(radians), Math.sin(radians)];
  // Along the joists, and across them.
  const turned = outline.map(([x, y]) => [x * cos + y * sin, y * cos - x * sin] as const);
  const across = turned.map(([, v]) => v);
  const [low, high] = [Math.min(...across), Math.max(...across)];
  const joists: (readonly [PlanPoint, PlanPoint])[] = [];
  for (let v = (Math.floor(low / spacingMm) + 0.5) * spacingMm; v < high; v += spacingMm) {
    const ends = crossings(turned, v).map((u) => planPoint(u * cos - v * sin, u * sin + v * cos));
    for (let i = 0; i + 1 < ends.length; i += 2) {
      const [from, to] = [ends[i], ends[i + 1]];
      if (from !== undefined && to !== undefined) joists.push([from, to]);
    }
  }
  return joists;
}

/** Where a line along the joists crosses an outline, in order. */
function crossings(outline: readonly (readonly [number, number])[], v: number): readonly number[] {
  const at: number[] = [];
  outline.forEach((a, i) => {
    const b = outline[(i + 1) % outline.length] ?? a;
    if (a[1] > v !== b[1] > v) at.push(a[0] + ((v - a[1]) / (b[1] - a[1])) * (b[0] - a[0]));
  });
  return at.toSorted((a, b) => a - b);
}
