import type { Worked } from '#engine/connections/worked.ts';
import type { PlanPoint } from '#engine/plan/plane.ts';
import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import { metres } from '#engine/quotation/said.ts';
import type { Finding } from '#engine/rules/finding.ts';
import { outcomeCount } from '#engine/rules/outcome-count.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { boxCorners, type LabelPlacer, labelPlacer } from '../label-placer.ts';
import { line, type Scene, type Shape, words } from '../scene.ts';
import { type CableLayer, cableLayer, type DrawnCable, drawnCables } from './cable-layer.ts';
import { markShapes, numberedFindings } from './finding-marks.ts';
import { fixtureShapes } from './fixtures.ts';
import { lockMarks } from './lock-marks.ts';
import { type PanelContent, panelOf } from './panel.ts';
import { type PointLayer, pointLayer, symbolsUsed } from './point-layer.ts';
import { roomNames } from './room-names.ts';
import { scaleBar } from './scale-bar.ts';
import { extentOf, layOut, type SheetLayout } from './sheet-layout.ts';
import { wallBoxes, wallShapes } from './walls.ts';

/** What an empty sheet is of. */
const NO_STOREY = 'no storey drawn yet';

/** What stands on the sheet of a storey of which there is nothing to draw, a line each. */
const NOTHING_TO_DRAW = ['Nothing to draw yet: no walls,', 'and no point placed on this storey.'] as const;

/** What a plan is drawn of: one storey of a worked job, with what the sheet's words need. */
export interface PlanRequest {
  readonly worked: Worked;
  readonly storeyId: string;
  readonly findings: readonly Finding[];
  readonly title: string;
  readonly reference: string;
  readonly schemeName: string;
  readonly date: string;
  /** The name of the job's state. */
  readonly state: string;
  /** What the sheet says of a firm and prices that are the demo's still; null when nothing is. */
  readonly demoNote: string | null;
  readonly edition: string;
  readonly editionNote: string;
  readonly cautions: readonly string[];
}

/** Where things are on this sheet: points and boards, cables at their middles, circuits at their board. */
function spotsOf(worked: Worked, points: PointLayer, cables: CableLayer): ReadonlyMap<string, SheetPoint> {
  const circuits = worked.proposed.circuits.flatMap(({ id, board }) => {
    const spot = board === null ? undefined : points.spots.get(board.id);
    return spot === undefined ? [] : [[id, spot] as const];
  });
  return new Map([...circuits, ...cables.middles, ...points.spots]);
}

/** True for what has a place in the house, but not on this sheet. */
function elsewhere(worked: Worked, spots: ReadonlyMap<string, SheetPoint>): (subject: string) => boolean {
  const placed = new Set([
    ...worked.plan.positionOfPoint.keys(),
    ...worked.plan.positionOfBoard.keys(),
    ...worked.foundRuns.keys(),
    ...worked.runs.map((run) => run.id),
    ...worked.things.joints.filter((joint) => joint.position !== null).map((joint) => joint.id),
    ...worked.things.fusedUnits.filter((unit) => unit.position !== null).map((unit) => unit.id),
  ]);
  return (subject) => placed.has(subject) && !spots.has(subject);
}

function runRows(cables: CableLayer): PanelContent['runs'] {
  return cables.drawnRuns.map((run) => ({
    label: `${run.fromLabel} to ${run.toLabel}`,
    way: run.words,
    length: run.lengthMm === null ? 'length not known' : metres(run.lengthMm),
  }));
}

function takeRoom(free: LabelPlacer, cables: readonly DrawnCable[]): void {
  for (const { path } of cables) {
    path.forEach((at, i) => {
      const before = path[i - 1];
      if (before === undefined) return;
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
}

function emptyWords({ plan }: SheetLayout): readonly Shape[] {
  const topMm = (plan.topMm + plan.bottomMm) / 2;
  return NOTHING_TO_DRAW.map((row, i) =>
    words('text-soft', sheetPoint((plan.leftMm + plan.rightMm) / 2, topMm + 6 * i), row, {
      sizeMm: 4,
      anchor: 'middle',
    }),
  );
}

/** Draws the plan of one storey with its cables, new and found, its points, findings' marks and the sheet's words. */
export function planScene(request: PlanRequest): Scene {
  const { worked, storeyId } = request;
  const walls = [...worked.plan.wallById.values()].filter((wall) => wall.storeyId === storeyId);
  const positions: PlanPoint[] = [...worked.plan.positionOfPoint.values()]
    .filter((at) => at.storeyId === storeyId)
    .map((at) => at.at);
  const layout = layOut(extentOf(walls, positions));
  const free = labelPlacer(layout.plan);
  const storey = worked.plan.storeyById.get(storeyId);
  const drawn = drawnCables(worked, storeyId, layout);
  for (const box of wallBoxes(layout.frame, walls)) free.take(box);
  takeRoom(free, drawn);
  const fixtures = fixtureShapes(layout.frame, worked.plan, storeyId, free);
  const points = pointLayer(worked, storeyId, layout, free);
  const cables = cableLayer(worked, drawn, free);
  const rooms = roomNames(worked, storeyId, layout, free);
  const spots = spotsOf(worked, points, cables);
  const marks = numberedFindings(request.findings, elsewhere(worked, spots));
  const locks = lockMarks(worked, new Map([...cables.middles, ...points.middles]), free);
  const panel = panelOf(layout, {
    ...request,
    storeyName: storey?.storey.name ?? NO_STOREY,
    symbols: symbolsUsed(points),
    hasLocks: locks.length > 0,
    runs: runRows(cables),
    marks,
    adviceCount: outcomeCount(request.findings, 'advice'),
  });
  const { border, widthMm, heightMm } = layout;
  const corners = boxCorners(border);
  const sheet = boxCorners({ leftMm: 0, topMm: 0, rightMm: widthMm, bottomMm: heightMm });
  return {
    title: `${request.title}: wiring plan, ${storey?.storey.name ?? NO_STOREY}`,
    widthMm,
    heightMm,
    scale: layout.frame.scale,
    layers: [
      { name: 'sheet', shapes: [line('paper', sheet, true), line('frame', corners, true)] },
      { name: 'fixtures', shapes: fixtures },
      { name: 'walls', shapes: wallShapes(layout.frame, walls) },
      { name: 'cables', shapes: cables.shapes },
      // On a ground of their own, so that a cable which must go through a name does not strike it out.
      { name: 'rooms', shapes: rooms },
      { name: 'points', shapes: points.shapes },
      ...(locks.length > 0 ? [{ name: 'locks', shapes: locks }] : []),
      { name: 'findings', shapes: markShapes(marks.slice(0, panel.listed), spots, free) },
      {
        name: 'words',
        shapes: [
          ...(isEmptyStorey(worked, storeyId) ? emptyWords(layout) : scaleBar(layout)),
          ...panel.shapes,
        ],
      },
    ],
  };
}

/** A storey of a job, and whether there is anything to draw of it. */
export interface StoreyToDraw {
  /** Empty when the job has no storey. */
  readonly id: string;
  readonly name: string;
  /** True without walls and without placed points: its sheet says so in words. */
  readonly isEmpty: boolean;
}

/** True for a storey that has neither walls nor placed points. */
function isEmptyStorey({ plan }: Worked, storeyId: string): boolean {
  const walls = plan.storeyById.get(storeyId)?.storey.walls ?? [];
  return walls.length === 0 && ![...plan.positionOfPoint.values()].some((at) => at.storeyId === storeyId);
}

/** The storeys that a scheme’s plan can be asked for, lowest first; one empty sheet for a job without storeys. */
export function storeysToDraw({ worked }: Pick<SchemeEstimate, 'worked'>): readonly StoreyToDraw[] {
  const all = worked.plan.storeys.map(({ storey: { id, name } }) => ({
    id,
    name,
    isEmpty: isEmptyStorey(worked, id),
  }));
  return all.length > 0 ? all : [{ id: '', name: NO_STOREY, isEmpty: true }];
}
