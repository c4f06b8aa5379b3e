import type { Worked } from '#engine/connections/worked.ts';
import type { PlanPoint } from '#engine/plan/plane.ts';
import { type SheetFrame, type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import type { Finding } from '#engine/rules/finding.ts';
import { type LabelPlacer, labelPlacer, placesAround } from '../label-placer.ts';
import { findingMark, outcomeOrder, outcomeWords } from '../marks.ts';
import { line, type Scene, type Shape } from '../scene.ts';
import { cableLayer, type DrawnCable, drawnCables } from './cable-layer.ts';
import { fixtureShapes } from './fixtures.ts';
import { pointLayer } from './point-layer.ts';
import { roomNames } from './room-names.ts';
import { extentOf, type SheetLayout } from './sheet-layout.ts';
import { wallBoxes, wallShapes } from './walls.ts';

/** Room round the walls for labels outside them, in units of the scene. */
const MARGIN = 14;
/** Spacing of the faint grid, mm in the house. */
const GRID_MM = 500;

/** What a plan on screen is drawn of. */
export interface ScreenPlanRequest {
  readonly worked: Worked;
  readonly storeyId: string;
  readonly findings: readonly Finding[];
  /** Millimetres of the house to a unit of the scene; lettering and symbols keep their size whatever it is. */
  readonly scale: number;
}

/** A plan on screen, with what brings its positions back into the house. */
export interface ScreenPlan {
  readonly scene: Scene;
  readonly frame: SheetFrame;
  /** Where things stand in the scene, by id: points, boards, joints, units, and cables at their middles. */
  readonly spots: ReadonlyMap<string, SheetPoint>;
}

/** The extent of what is drawn of a storey, mm in the house: opposite corners. */
export function screenExtent(worked: Worked, storeyId: string): readonly [PlanPoint, PlanPoint] {
  const walls = [...worked.plan.wallById.values()].filter((wall) => wall.storeyId === storeyId);
  const positions = [...worked.plan.positionOfPoint.values(), ...worked.plan.positionOfBoard.values()]
    .filter((at) => at.storeyId === storeyId)
    .map(({ at }) => at);
  return extentOf(walls, positions);
}

function layoutAt(extent: readonly [PlanPoint, PlanPoint], scale: number): SheetLayout {
  const [low, high] = extent;
  const widthMm = (high[0] - low[0]) / scale + 2 * MARGIN;
  const heightMm = (high[1] - low[1]) / scale + 2 * MARGIN;
  const whole = { leftMm: 0, topMm: 0, rightMm: widthMm, bottomMm: heightMm };
  const frame: SheetFrame = { scale, origin: low, at: sheetPoint(MARGIN, heightMm - MARGIN) };
  return { widthMm, heightMm, sheetName: 'screen', border: whole, plan: whole, panel: whole, frame };
}

function gridShapes({ widthMm, heightMm, frame }: SheetLayout): readonly Shape[] {
  const step = GRID_MM / frame.scale;
  if (step < 4) return [];
  const startX = frame.at[0] % step;
  const startY = frame.at[1] % step;
  const count = (length: number, start: number): number =>
    Math.max(0, Math.floor((length - start) / step) + 1);
  const upright = Array.from({ length: count(widthMm, startX) }, (_, i) => startX + i * step);
  const level = Array.from({ length: count(heightMm, startY) }, (_, i) => startY + i * step);
  return [
    ...upright.map((x) => line('rule', [sheetPoint(x, 0), sheetPoint(x, heightMm)])),
    ...level.map((y) => line('rule', [sheetPoint(0, y), sheetPoint(widthMm, y)])),
  ];
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

const signs = { fails: '!', decide: '?', 'not-proven': '–', advice: 'i' } as const;

/** One mark a thing, of the gravest that is said of it; advice and what is not proven is left to the list. */
function marksOf(
  findings: readonly Finding[],
  spots: ReadonlyMap<string, SheetPoint>,
  free: LabelPlacer,
): readonly Shape[] {
  const marked = new Set<string>();
  return outcomeOrder.flatMap((outcome) => {
    if (outcome !== 'fails' && outcome !== 'decide') return [];
    return findings.flatMap((finding): Shape[] => {
      const spot = spots.get(finding.subject);
      if (finding.outcome !== outcome || spot === undefined || marked.has(finding.subject)) return [];
      marked.add(finding.subject);
      const at = free.place('MM', 3.4, placesAround(spot, [0, 1], 5.5));
      const title = `${outcomeWords[outcome]}: ${finding.message}`;
      return [
        { kind: 'group', subject: finding.subject, title, shapes: findingMark(outcome, at, signs[outcome]) },
      ];
    });
  });
}

/** Draws a storey for the screen: as on paper, without the sheet, at any scale. */
export function screenPlan(request: ScreenPlanRequest): ScreenPlan {
  const { worked, storeyId, scale } = request;
  const layout = layoutAt(screenExtent(worked, storeyId), scale);
  const walls = [...worked.plan.wallById.values()].filter((wall) => wall.storeyId === storeyId);
  const free = labelPlacer(layout.plan);
  const drawn = drawnCables(worked, storeyId, layout);
  for (const box of wallBoxes(layout.frame, walls)) free.take(box);
  takeCableRoom(free, drawn);
  const fixtures = fixtureShapes(layout.frame, worked.plan, storeyId, free);
  const points = pointLayer(worked, storeyId, layout, free);
  const cables = cableLayer(worked, drawn, free);
  const rooms = roomNames(worked, storeyId, layout, free);
  const spots = new Map([...cables.middles, ...points.spots]);
  return {
    frame: layout.frame,
    spots,
    scene: {
      title: worked.plan.storeyById.get(storeyId)?.storey.name ?? 'No storey drawn yet',
      widthMm: layout.widthMm,
      heightMm: layout.heightMm,
      scale,
      layers: [
        { name: 'grid', shapes: gridShapes(layout) },
        { name: 'fixtures', shapes: fixtures },
        { name: 'walls', shapes: wallShapes(layout.frame, walls) },
        { name: 'rooms', shapes: rooms },
        { name: 'cables', shapes: cables.shapes },
        { name: 'points', shapes: points.shapes },
        { name: 'findings', shapes: marksOf(request.findings, spots, free) },
      ],
    },
  };
}
