import type { Worked } from '#engine/connections/worked.ts';
import type { PlanWall } from '#engine/plan/plan.ts';
import { type PlanPoint, planPoint } from '#engine/plan/plane.ts';
import { type SheetFrame, type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import { wallWords } from '#engine/plan/wall-words.ts';
import type { Finding } from '#engine/rules/finding.ts';
import { type LabelPlacer, labelPlacer } from '../label-placer.ts';
import type { Scene, Shape } from '../scene.ts';
import { cableLayer, type DrawnCable, drawnCables } from './cable-layer.ts';
import { drawnFixtures, fixtureOutline, stairwellShapes, worktopOutlines } from './fixtures.ts';
import { lockBeside, lockMarks } from './lock-marks.ts';
import { photoMarks } from './photo-marks.ts';
import { pointLayer } from './point-layer.ts';
import { labelsAlong } from './screen-cables.ts';
import { screenMarks } from './screen-marks.ts';
import { SMALL, screenFixtureNames, screenRoomNames } from './screen-names.ts';
import { withTitles } from './screen-titles.ts';
import { extentOf, type SheetLayout } from './sheet-layout.ts';
import { shapesOfWall, studsFirst, wallBoxes } from './walls.ts';

/** Room round the walls for labels outside them, in units of the scene. */
const MARGIN = 14;
/** Up to this scale symbols have their full size; further away they shrink, down to a least size. */
const FULL_SYMBOLS_SCALE = 95;
const SMALLEST_SYMBOL = 0.68;
/** Beyond this scale labels are names only. */
const TERSE_SCALE = 115;

/** On screen lettering has an outline of its own: rather across a cable than far from what it names. */
const placingCosts = { crossing: 0.3, farther: 0.12 };

/** What a plan on screen is drawn of. */
export interface ScreenPlanRequest {
  readonly worked: Worked;
  readonly storeyId: string;
  readonly findings: readonly Finding[];
  /** Millimetres of the house to a unit of the scene; lettering keeps its size whatever it is. */
  readonly scale: number;
  /** Wanted points are drawn even where no scheme is; else only with a scheme. */
  readonly withWanted?: boolean;
  /** Lettering of lengths and sizes, units of the scene; absent: that of the smallest words. */
  readonly figuresMm?: number;
}

/** A plan on screen, with what brings its positions back into the house. */
export interface ScreenPlan {
  readonly scene: Scene;
  readonly frame: SheetFrame;
  /** Where things stand in the scene, by id: points, boards, joints, units, cables at their middles, circuits at their boards. */
  readonly spots: ReadonlyMap<string, SheetPoint>;
}

/** Where no walls are drawn, points are seen as in a house of at least this size, mm. */
const LEAST_SIDE_MM = 6000;

function grownTo(
  sideMm: number,
  [low, high]: readonly [PlanPoint, PlanPoint],
): readonly [PlanPoint, PlanPoint] {
  const [x, y] = [Math.max(0, sideMm - high[0] + low[0]) / 2, Math.max(0, sideMm - high[1] + low[1]) / 2];
  return [planPoint(low[0] - x, low[1] - y), planPoint(high[0] + x, high[1] + y)];
}

/** The corners of the picture that is traced, as it lies; none where none is in sight. */
function pictureCorners({ plan }: Worked, storeyId: string): readonly PlanPoint[] {
  const underlay = plan.storeyById.get(storeyId)?.storey.underlay;
  if (underlay === undefined || underlay.hidden === true) return [];
  const { at, widthPx, heightPx, scaleMmPerPx, angleDeg } = underlay;
  const [right, up] = [(widthPx * scaleMmPerPx) / 2, (heightPx * scaleMmPerPx) / 2];
  const [cos, sin] = [Math.cos((angleDeg * Math.PI) / 180), Math.sin((angleDeg * Math.PI) / 180)];
  return [
    [-right, -up],
    [right, -up],
    [right, up],
    [-right, up],
  ].map(([x = 0, y = 0]) => planPoint(at[0] + x * cos - y * sin, at[1] + x * sin + y * cos));
}

/** The extent of what is drawn of a storey, mm in the house: opposite corners; without walls six metres at least. */
export function screenExtent(worked: Worked, storeyId: string): readonly [PlanPoint, PlanPoint] {
  const walls = [...worked.plan.wallById.values()].filter((wall) => wall.storeyId === storeyId);
  const positions = [...worked.plan.positionOfPoint.values(), ...worked.plan.positionOfBoard.values()]
    .filter((at) => at.storeyId === storeyId)
    .map(({ at }) => at);
  const extent = extentOf(walls, [...positions, ...pictureCorners(worked, storeyId)]);
  return walls.length > 0 ? extent : grownTo(LEAST_SIDE_MM, extent);
}

/** How large symbols are drawn at a scale, against those on paper. */
export const symbolSizeAt = (scale: number): number =>
  Math.min(1, Math.max(SMALLEST_SYMBOL, FULL_SYMBOLS_SCALE / scale));

function layoutAt(extent: readonly [PlanPoint, PlanPoint], scale: number): SheetLayout {
  const [low, high] = extent;
  const widthMm = (high[0] - low[0]) / scale + 2 * MARGIN;
  const heightMm = (high[1] - low[1]) / scale + 2 * MARGIN;
  const whole = { leftMm: 0, topMm: 0, rightMm: widthMm, bottomMm: heightMm };
  const frame: SheetFrame = { scale, origin: low, at: sheetPoint(MARGIN, heightMm - MARGIN) };
  return { widthMm, heightMm, sheetName: 'screen', border: whole, plan: whole, panel: whole, frame };
}

function takeCableRoom(free: LabelPlacer, cables: readonly DrawnCable[]): void {
  for (const { path } of cables)
    path.slice(1).forEach((at, i) => {
      const before = path[i] ?? at;
      free.take(
        {
          leftMm: Math.min(at[0], before[0]) - 0.4,
          rightMm: Math.max(at[0], before[0]) + 0.4,
          topMm: Math.min(at[1], before[1]) - 0.4,
          bottomMm: Math.max(at[1], before[1]) + 0.4,
        },
        'cable',
      );
    });
}

const wallGroups = (worked: Worked, frame: SheetFrame, walls: readonly PlanWall[]): readonly Shape[] =>
  studsFirst(walls).map((wall) => {
    const words = wallWords(worked.plan, wall.wall.id);
    const title = words.charAt(0).toUpperCase() + words.slice(1);
    return { kind: 'group', subject: wall.wall.id, title, shapes: shapesOfWall(frame, wall, walls) };
  });

/** Where each circuit's board stands. */
const circuitSpots = (worked: Worked, spots: ReadonlyMap<string, SheetPoint>) =>
  worked.proposed.circuits.flatMap(({ id, board }) => {
    const spot = board === null ? undefined : spots.get(board.id);
    return spot === undefined ? [] : [[id, spot] as const];
  });

/** Draws a storey for the screen: as on paper, without the sheet, at any scale. */
export function screenPlan(request: ScreenPlanRequest): ScreenPlan {
  const { worked, storeyId, scale, withWanted = false, figuresMm = SMALL } = request;
  const layout = layoutAt(screenExtent(worked, storeyId), scale);
  const { frame } = layout;
  const walls = [...worked.plan.wallById.values()].filter((wall) => wall.storeyId === storeyId);
  const free = labelPlacer(layout.plan, placingCosts);
  const drawn = drawnCables(worked, storeyId, layout);
  for (const box of wallBoxes(frame, walls)) free.take(box, 'wall');
  takeCableRoom(free, drawn);
  const symbolSize = symbolSizeAt(scale);
  // Clear of the ring that a chosen symbol gets.
  const labelNearMm = 1.6 + 3.5 * symbolSize;
  const look = { symbolSize, labelNearMm, terse: scale > TERSE_SCALE, withWanted };
  const points = pointLayer(worked, storeyId, layout, free, look);
  const cables = cableLayer(worked, drawn, labelsAlong(free, look.terse, figuresMm));
  const spots = new Map([...circuitSpots(worked, points.spots), ...cables.middles, ...points.spots]);
  const middles = new Map([...circuitSpots(worked, points.middles), ...cables.middles, ...points.middles]);
  const { marks, leaders } = screenMarks(request.findings, middles, free);
  const locks = lockMarks(worked, middles, lockBeside(free));
  const photos = photoMarks(worked, middles, free);
  const fixtures = drawnFixtures(frame, worked.plan, storeyId);
  const names = screenFixtureNames(fixtures, free);
  const rooms = screenRoomNames(worked, storeyId, { frame, free, figuresMm });
  return {
    frame,
    spots,
    scene: {
      title: worked.plan.storeyById.get(storeyId)?.storey.name ?? 'No storey drawn yet',
      widthMm: layout.widthMm,
      heightMm: layout.heightMm,
      scale,
      layers: [
        {
          name: 'fixtures',
          shapes: [
            ...stairwellShapes(frame, worked.plan, storeyId),
            ...worktopOutlines(frame, worked.plan, storeyId),
            ...fixtures.map(fixtureOutline),
            ...names,
          ],
        },
        { name: 'walls', shapes: wallGroups(worked, frame, walls) },
        { name: 'leaders', shapes: leaders },
        { name: 'cables', shapes: withTitles(worked, cables.shapes) },
        // Lettering has an outline of paper: a cable that must go through a name is interrupted by it.
        { name: 'rooms', shapes: rooms },
        { name: 'points', shapes: withTitles(worked, points.shapes) },
        { name: 'locks', shapes: locks },
        ...(photos.length > 0 ? [{ name: 'photos', shapes: photos }] : []),
        { name: 'findings', shapes: marks },
      ],
    },
  };
}
