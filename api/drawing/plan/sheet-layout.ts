import type { PlanWall } from '#engine/plan/plan.ts';
import { type PlanPoint, planPoint } from '#engine/plan/plane.ts';
import { type SheetFrame, type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import type { Rectangle } from '../label-placer.ts';

/** A sheet with its frame, the room for the plan and the room for the words beside it; mm on paper. */
export interface SheetLayout {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly sheetName: string;
  readonly border: Rectangle;
  readonly plan: Rectangle;
  readonly panel: Rectangle;
  readonly frame: SheetFrame;
}

/** ISO 216 sheets, landscape and A4 upright as well; the smallest that fits wins. */
const sheets = [
  { name: 'A4', widthMm: 210, heightMm: 297, panelMm: 72 },
  { name: 'A4', widthMm: 297, heightMm: 210, panelMm: 72 },
  { name: 'A3', widthMm: 420, heightMm: 297, panelMm: 110 },
] as const;

/** Larger scales first. From memory, ISO 5455 steps in use for house plans. */
const scales = [50, 100, 200] as const;

const FILING_MARGIN_MM = 20;
const MARGIN_MM = 10;
const PADDING_MM = 6;

/** The extent of a storey's walls on plan, mm; a storey without walls gets a 4 m square to stand for it. */
export function extentOf(
  walls: readonly PlanWall[],
  points: readonly PlanPoint[],
): readonly [PlanPoint, PlanPoint] {
  const all = [...walls.flatMap((wall) => [wall.wall.from, wall.wall.to]), ...points];
  if (all.length === 0) return [planPoint(0, 0), planPoint(4000, 4000)];
  const xs = all.map((at) => at[0]);
  const ys = all.map((at) => at[1]);
  const half = Math.max(0, ...walls.map((wall) => wall.wall.thicknessMm / 2));
  return [
    planPoint(Math.min(...xs) - half, Math.min(...ys) - half),
    planPoint(Math.max(...xs) + half, Math.max(...ys) + half),
  ];
}

function inside(outer: Rectangle, widthMm: number, heightMm: number): SheetPoint | null {
  const roomW = outer.rightMm - outer.leftMm;
  const roomH = outer.bottomMm - outer.topMm;
  if (widthMm > roomW || heightMm > roomH) return null;
  return sheetPoint(outer.leftMm + (roomW - widthMm) / 2, outer.bottomMm - (roomH - heightMm) / 2);
}

function layoutOn(
  sheet: (typeof sheets)[number],
  scale: number,
  extent: readonly [PlanPoint, PlanPoint],
): SheetLayout | null {
  const border = {
    leftMm: FILING_MARGIN_MM,
    topMm: MARGIN_MM,
    rightMm: sheet.widthMm - MARGIN_MM,
    bottomMm: sheet.heightMm - MARGIN_MM,
  };
  const panel = { ...border, leftMm: border.rightMm - sheet.panelMm };
  const plan = {
    leftMm: border.leftMm + PADDING_MM,
    topMm: border.topMm + PADDING_MM,
    rightMm: panel.leftMm - PADDING_MM,
    bottomMm: border.bottomMm - PADDING_MM - 6,
  };
  const at = inside(plan, (extent[1][0] - extent[0][0]) / scale, (extent[1][1] - extent[0][1]) / scale);
  if (at === null) return null;
  return {
    widthMm: sheet.widthMm,
    heightMm: sheet.heightMm,
    sheetName: sheet.name,
    border,
    plan,
    panel,
    frame: { scale, origin: extent[0], at },
  };
}

/** The largest scale and then the smallest sheet on which the extent fits; a house beyond 1:200 on A3 is squeezed to fit. */
export function layOut(extent: readonly [PlanPoint, PlanPoint]): SheetLayout {
  for (const scale of scales) {
    for (const sheet of sheets) {
      const layout = layoutOn(sheet, scale, extent);
      if (layout !== null) return layout;
    }
  }
  for (let scale = 500; ; scale *= 2) {
    const layout = layoutOn(sheets[2], scale, extent);
    if (layout !== null) return layout;
  }
}
