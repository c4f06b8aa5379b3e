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

const isStud = ({ wall }: PlanWall): boolean => wall.core === 'timber-stud' || wall.core === 'metal-stud';

/** Slabs that only touch leave a light seam between them where a screen rounds their edges: they reach into each other by this, mm. */
const SEAM_MM = 5;
/** From this sine on two walls make a corner; from one line up to it they make a bend. */
const CORNER_SINE = 0.5;

/**
 * How far each end runs on so that walls close where they meet: at a corner as far as the other is thick, in a bend as far as the outer
 * side of it needs, in one line enough to leave no seam. A stud wall ends within a solid one, and does not come out of it beyond.
 */
function overlapMm(wall: PlanWall, others: readonly PlanWall[], end: PlanPoint): number {
  let most = 0;
  for (const other of others) {
    if (other === wall || other.wall.core === 'open' || (isStud(wall) && !isStud(other))) continue;
    const touches = [other.wall.from, other.wall.to].some(
      (at) => Math.hypot(at[0] - end[0], at[1] - end[1]) < 1,
    );
    if (!touches) continue;
    const sine = Math.abs(wall.direction[0] * other.direction[1] - wall.direction[1] * other.direction[0]);
    const halfMm = other.wall.thicknessMm / 2;
    const bendMm = Math.max(SEAM_MM, halfMm * Math.tan(Math.asin(Math.min(1, sine)) / 2));
    most = Math.max(most, sine > CORNER_SINE ? halfMm : bendMm);
  }
  return most;
}

/** A wall's solid stretches as they are drawn, with what it runs on at its ends. */
function drawnStretches(wall: PlanWall, walls: readonly PlanWall[]): readonly (readonly [number, number])[] {
  const start = -overlapMm(wall, walls, placeByWall(wall, 0, 0));
  const end = wall.lengthMm + overlapMm(wall, walls, placeByWall(wall, wall.lengthMm, 0));
  return solidStretches(wall, start, end);
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

/** A chimney breast as it stands before its wall. */
function breastCorners(wall: PlanWall, opening: Opening): readonly PlanPoint[] {
  const [half, outward] = [wall.wall.thicknessMm / 2, opening.side === 'right' ? -1 : 1];
  const [from, to] = [opening.alongMm, opening.alongMm + opening.widthMm];
  return [
    placeByWall(wall, from, half * outward),
    placeByWall(wall, from, (half + BREAST_DEPTH_MM) * outward),
    placeByWall(wall, to, (half + BREAST_DEPTH_MM) * outward),
    placeByWall(wall, to, half * outward),
  ];
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
      const corners = breastCorners(wall, opening);
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
  const ink: Ink = isStud(wall) ? 'wall-light' : 'wall';
  return [
    ...drawnStretches(wall, walls).map((stretch) => slab(frame, wall, stretch, ink)),
    ...wall.wall.openings.flatMap((opening) => openingShapes(frame, wall, opening)),
  ];
}

/** Walls as they are drawn over each other: stud walls first, so that a solid wall covers where they run into it. */
export const studsFirst = (walls: readonly PlanWall[]): readonly PlanWall[] => [
  ...walls.filter(isStud),
  ...walls.filter((wall) => !isStud(wall)),
];

/** A storey's walls. */
export const wallShapes = (frame: SheetFrame, walls: readonly PlanWall[]): readonly Shape[] =>
  studsFirst(walls).flatMap((wall) => shapesOfWall(frame, wall, walls));

/** The room on paper that windows take in their walls. */
export const windowBoxes = (frame: SheetFrame, walls: readonly PlanWall[]): readonly Rectangle[] =>
  walls.flatMap((wall) => {
    const half = wall.wall.thicknessMm / 2;
    return wall.wall.openings
      .filter(({ kind }) => kind === 'window')
      .map(({ alongMm: startMm, widthMm }) =>
        boxRound(
          [startMm, startMm + widthMm].flatMap((alongMm) =>
            [half, -half].map((aside) => toSheet(frame, placeByWall(wall, alongMm, aside))),
          ),
        ),
      );
  });

/** The room on paper that walls take between their openings, corners and chimney breasts with them: upright rectangles round each solid part. */
export function wallBoxes(frame: SheetFrame, walls: readonly PlanWall[]): readonly Rectangle[] {
  const boxOf = (corners: readonly PlanPoint[]): Rectangle =>
    boxRound(corners.map((corner) => toSheet(frame, corner)));
  return walls
    .filter((wall) => wall.wall.core !== 'open')
    .flatMap((wall) => {
      const half = wall.wall.thicknessMm / 2;
      const slabs = drawnStretches(wall, walls).map(([from, to]) =>
        boxOf([
          placeByWall(wall, from, half),
          placeByWall(wall, from, -half),
          placeByWall(wall, to, half),
          placeByWall(wall, to, -half),
        ]),
      );
      const breasts = wall.wall.openings.filter(({ kind }) => kind === 'breast');
      return [...slabs, ...breasts.map((breast) => boxOf(breastCorners(wall, breast)))];
    });
}
