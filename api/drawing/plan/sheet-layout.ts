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

/** The papers that sheets are made for. */
export const sheetNames = ['A4', 'A3'] as const;
export type SheetName = (typeof sheetNames)[number];

/** True for the name of such a paper. */
export const isSheetName = (text: string): text is SheetName => sheetNames.some((name) => name === text);

interface Paper {
  readonly name: SheetName;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly panelMm: number;
}

/** ISO 216: A4 upright and lying, A3 lying. */
const papers: readonly Paper[] = [
  { name: 'A4', widthMm: 210, heightMm: 297, panelMm: 72 },
  { name: 'A4', widthMm: 297, heightMm: 210, panelMm: 76 },
  { name: 'A3', widthMm: 420, heightMm: 297, panelMm: 110 },
];

/** Steps of ISO 5455 in use for house plans (from memory); those after 100 are for what no sheet holds otherwise. */
const scales = [20, 50, 100, 200, 500] as const;

interface Choice {
  readonly paper: Paper;
  readonly scale: number;
}

/**
 * What is tried in turn: the largest scale first, and the smaller paper first at each. 1:20 is for single rooms: on a larger paper than the
 * usual it is tried only where that paper is asked for.
 */
const choicesFor = (asked: SheetName | null): readonly Choice[] =>
  scales.flatMap((scale) =>
    papers
      .filter(({ name }) => (asked === null ? scale !== 20 || name === 'A4' : name === asked))
      .map((paper) => ({ paper, scale })),
  );

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

function layoutOn({ paper, scale }: Choice, extent: readonly [PlanPoint, PlanPoint]): SheetLayout | null {
  const border = {
    leftMm: FILING_MARGIN_MM,
    topMm: MARGIN_MM,
    rightMm: paper.widthMm - MARGIN_MM,
    bottomMm: paper.heightMm - MARGIN_MM,
  };
  const panel = { ...border, leftMm: border.rightMm - paper.panelMm };
  const plan = {
    leftMm: border.leftMm + PADDING_MM,
    topMm: border.topMm + PADDING_MM,
    rightMm: panel.leftMm - PADDING_MM,
    bottomMm: border.bottomMm - PADDING_MM - 6,
  };
  const at = inside(plan, (extent[1][0] - extent[0][0]) / scale, (extent[1][1] - extent[0][1]) / scale);
  if (at === null) return null;
  const { widthMm, heightMm, name: sheetName } = paper;
  return { widthMm, heightMm, sheetName, border, plan, panel, frame: { scale, origin: extent[0], at } };
}

/**
 * The largest scale and then the smallest sheet on which the extent fits; a house that not even 1:500 gets on to the sheet is squeezed to fit.
 *
 * @param asked the paper to be used whatever the scale; null: A4 where that holds the plan at no smaller scale.
 */
export function layOut(extent: readonly [PlanPoint, PlanPoint], asked: SheetName | null = null): SheetLayout {
  const choices = choicesFor(asked);
  for (const choice of choices) {
    const layout = layoutOn(choice, extent);
    if (layout !== null) return layout;
  }
  const [last] = choices.slice(-1);
  if (last === undefined) throw new Error(`There is no paper "${asked}".`);
  for (let scale = 1000; ; scale *= 2) {
    const layout = layoutOn({ ...last, scale }, extent);
    if (layout !== null) return layout;
  }
}

/** The paper that lists have for themselves: A4 upright, with the title block where a plan has it. */
export function listLayout(): SheetLayout {
  const [paper] = papers;
  const layout =
    paper === undefined ? null : layoutOn({ paper, scale: 50 }, [planPoint(0, 0), planPoint(0, 0)]);
  if (layout === null) throw new Error('There is no paper for lists.');
  return layout;
}
