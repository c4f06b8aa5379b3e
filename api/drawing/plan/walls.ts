import { placeByWall } from '#engine/plan/along-wall.ts';
import { BREAST_DEPTH_MM } from '#engine/plan/breast.ts';
import type { PlanWall } from '#engine/plan/plan.ts';
import { type PlanPoint, planPoint } from '#engine/plan/plane.ts';
import { type SheetFrame, type SheetPoint, toSheet } from '#engine/plan/sheet-frame.ts';
import type { Opening } from '#model/building.ts';
import { boxRound, type Rectangle } from '../label-placer.ts';
import { type Ink, line, type Shape } from '../scene.ts';

function slab(frame: SheetFrame, wall: PlanWall, alongMm: readonly [number, number], ink: Ink): Shape {
  const half = wall.wall.thicknessMm / 2;
  const corners = [
    placeByWall(wall, alongMm[0], half),
    placeByWall(wall, alongMm[1], half),
    placeByWall(wall, alongMm[1], -half),
    placeByWall(wall, alongMm[0], -half),
  ];
  return line(
    ink,
    corners.map((corner) => toSheet(frame, corner)),
    true,
  );
}

/** How far each end runs on so that walls meeting at an angle close their corner. */
function overlapMm(wall: PlanWall, others: readonly PlanWall[], end: PlanPoint): number {
  let most = 0;
  for (const other of others) {
    if (other === wall || other.wall.core === 'open') continue;
    const touches = [other.wall.from, other.wall.to].some(
      (at) => Math.hypot(at[0] - end[0], at[1] - end[1]) < 1,
    );
    const sine = Math.abs(wall.direction[0] * other.direction[1] - wall.direction[1] * other.direction[0]);
    if (touches && sine > 0.5) most = Math.max(most, other.wall.thicknessMm / 2);
  }
  return most;
}

/** The solid stretches of a wall between its openings. */
function solidStretches(
  wall: PlanWall,
  startMm: number,
  endMm: number,
): readonly (readonly [number, number])[] {
  const gaps = wall.wall.openings
    .filter((opening) => opening.kind !== 'breast')
    .sort((a, b) => a.alongMm - b.alongMm);
  const out: [number, number][] = [];
  let at = startMm;
  for (const gap of gaps) {
    if (gap.alongMm > at) out.push([at, gap.alongMm]);
    at = Math.max(at, gap.alongMm + gap.widthMm);
  }
  if (endMm > at) out.push([at, endMm]);
  return out;
}

function doorSwing(frame: SheetFrame, wall: PlanWall, opening: Opening): readonly Shape[] {
  const outward = opening.side === 'right' ? -1 : 1;
  const hinge = placeByWall(wall, opening.alongMm, (wall.wall.thicknessMm / 2) * outward);
  const leaf = placeByWall(wall, opening.alongMm, (wall.wall.thicknessMm / 2 + opening.widthMm) * outward);
  const arc: SheetPoint[] = [];
  for (let step = 0; step <= 12; step++) {
    const radians = (step / 12) * (Math.PI / 2);
    arc.push(
      toSheet(
        frame,
        planPoint(
          hinge[0] +
            opening.widthMm *
              (Math.cos(radians) * wall.direction[0] + Math.sin(radians) * wall.leftNormal[0] * outward),
          hinge[1] +
            opening.widthMm *
              (Math.cos(radians) * wall.direction[1] + Math.sin(radians) * wall.leftNormal[1] * outward),
        ),
      ),
    );
  }
  return [line('opening', [toSheet(frame, hinge), toSheet(frame, leaf)]), line('opening', arc)];
}

function openingShapes(frame: SheetFrame, wall: PlanWall, opening: Opening): readonly Shape[] {
  const half = wall.wall.thicknessMm / 2;
  const from = opening.alongMm;
  const to = opening.alongMm + opening.widthMm;
  const across = (alongMm: number): Shape =>
    line('opening', [
      toSheet(frame, placeByWall(wall, alongMm, half)),
      toSheet(frame, placeByWall(wall, alongMm, -half)),
    ]);
  const along = (outMm: number): Shape =>
    line('opening', [
      toSheet(frame, placeByWall(wall, from, outMm)),
      toSheet(frame, placeByWall(wall, to, outMm)),
    ]);
  switch (opening.kind) {
    case 'window':
      return [along(half), along(0), along(-half), across(from), across(to)];
    case 'door':
      return [across(from), across(to), ...doorSwing(frame, wall, opening)];
    case 'opening':
      return [across(from), across(to)];
    case 'breast': {
      const outward = opening.side === 'right' ? -1 : 1;
      const corners = [
        placeByWall(wall, from, half * outward),
        placeByWall(wall, from, (half + BREAST_DEPTH_MM) * outward),
        placeByWall(wall, to, (half + BREAST_DEPTH_MM) * outward),
        placeByWall(wall, to, half * outward),
      ];
      return [
        line(
          'wall',
          corners.map((corner) => toSheet(frame, corner)),
          true,
        ),
      ];
    }
  }
}

/** One wall among those it meets: masonry solid, a stud wall light, with its doors, windows and chimney breasts. */
export function shapesOfWall(
  frame: SheetFrame,
  wall: PlanWall,
  walls: readonly PlanWall[],
): readonly Shape[] {
  if (wall.wall.core === 'open') return [];
  const ink: Ink =
    wall.wall.core === 'timber-stud' || wall.wall.core === 'metal-stud' ? 'wall-light' : 'wall';
  const start = -overlapMm(wall, walls, placeByWall(wall, 0, 0));
  const end = wall.lengthMm + overlapMm(wall, walls, placeByWall(wall, wall.lengthMm, 0));
  return [
    ...solidStretches(wall, start, end).map((stretch) => slab(frame, wall, stretch, ink)),
    ...wall.wall.openings.flatMap((opening) => openingShapes(frame, wall, opening)),
  ];
}

/** A storey's walls. */
export const wallShapes = (frame: SheetFrame, walls: readonly PlanWall[]): readonly Shape[] =>
  walls.flatMap((wall) => shapesOfWall(frame, wall, walls));

/** The room on paper that walls take between their openings, upright rectangles round each solid stretch. */
export function wallBoxes(frame: SheetFrame, walls: readonly PlanWall[]): readonly Rectangle[] {
  return walls
    .filter((wall) => wall.wall.core !== 'open')
    .flatMap((wall) => {
      const half = wall.wall.thicknessMm / 2;
      return solidStretches(wall, 0, wall.lengthMm).map(([from, to]) => {
        const corners = [
          placeByWall(wall, from, half),
          placeByWall(wall, from, -half),
          placeByWall(wall, to, half),
          placeByWall(wall, to, -half),
        ];
        const onSheet = corners.map((corner) => toSheet(frame, corner));
        return boxRound(onSheet);
      });
    });
}
