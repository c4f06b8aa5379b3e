import type { Worked } from '#engine/connections/worked.ts';
import type { PlanWall } from '#engine/plan/plan.ts';
import type { PlanPoint } from '#engine/plan/plane.ts';
import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import { metres } from '#engine/quotation/said.ts';
import type { Finding } from '#engine/rules/finding.ts';
import { outcomeCount } from '#engine/rules/outcome-count.ts';
import { type References, referencesOf } from '#engine/work/references.ts';
import { workedOnPoints } from '#engine/work/worked-on-points.ts';
import { boxCorners, type LabelPlacer, labelPlacer } from '../label-placer.ts';
import { LOCK_HALF_MM } from '../lock-mark.ts';
import { line, type Scene, type Shape, words } from '../scene.ts';
import { type CableLayer, cableLayer, type DrawnCable, drawnCables } from './cable-layer.ts';
import { markShapes, type NumberedFinding, numberedFindings } from './finding-marks.ts';
import { drawnFixtures, fixtureOutline } from './fixtures.ts';
import { joistShapes } from './joists.ts';
import { lockMarks } from './lock-marks.ts';
import { listSheets, panelShapes, type SharedOut, sharedOut } from './panel.ts';
import { type PointLayer, pointLayer, type SheetLook, symbolsUsed } from './point-layer.ts';
import { roomNames } from './room-names.ts';
import { scaleBar } from './scale-bar.ts';
import { cableLabels } from './sheet/cable-labels.ts';
import { fixtureNames, takeOutlines } from './sheet/fixture-names.ts';
import { boardMarks, floorNumbers, holeMarks } from './sheet/floor-marks.ts';
import { legendSection } from './sheet/legend.ts';
import { LETTERS_MM } from './sheet/lettering.ts';
import { pointDimensions } from './sheet/point-dimensions.ts';
import { riseMarks } from './sheet/rise-marks.ts';
import { storeyLists } from './sheet/sections.ts';
import { type SheetLabels, sheetLabels } from './sheet/sheet-labels.ts';
import { extentOf, layOut, type SheetLayout, type SheetName } from './sheet-layout.ts';
import { isEmptyStorey, NO_STOREY } from './storeys-to-draw.ts';
import { type TitleBlockContent, titleBlock } from './title-block.ts';
import { wallBoxes, wallShapes, windowBoxes } from './walls.ts';

/** What stands on the sheet of a storey of which there is nothing to draw, a line each. */
const NOTHING_TO_DRAW = ['Nothing to draw yet: no walls,', 'and no point placed on this storey.'] as const;

/** The room of a lock's mark. */
const LOCK_ROOM = { wideMm: 2 * LOCK_HALF_MM, highMm: 2 * LOCK_HALF_MM } as const;

/** What a plan is drawn of: a worked job, with what the sheet's words need. */
export interface PlanRequest {
  readonly worked: Worked;
  readonly storeyId: string;
  readonly findings: readonly Finding[];
  /** Whose drawing it is. */
  readonly firm: string;
  readonly title: string;
  readonly reference: string;
  readonly schemeName: string;
  readonly date: string;
  /** The name of the job's state. */
  readonly state: string;
  /** How far it has got, in two words. */
  readonly status: string;
  /** What the sheet says of a firm and prices that are the demo's still; null when nothing is. */
  readonly demoNote: string | null;
  readonly edition: string;
  readonly editionNote: string;
  readonly cautions: readonly string[];
  /** The paper that is asked for; absent: the smallest that holds the plan at the larger scale. */
  readonly paper?: SheetName;
}

/** A sheet as drawn, before it is known which of how many it is. */
export interface DrawnSheet {
  readonly storeyId: string;
  /** False for lists that had no room beside their plan. */
  readonly isPlan: boolean;
  readonly scene: (sheet: TitleBlockContent['sheet']) => Scene;
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
      sizeMm: LETTERS_MM.names,
      anchor: 'middle',
    }),
  );
}

/** A storey's plan as drawn, without the words beside it. */
interface DrawnStorey {
  readonly layout: SheetLayout;
  readonly layers: Scene['layers'];
  readonly points: PointLayer;
  readonly cables: readonly DrawnCable[];
  readonly marks: readonly NumberedFinding[];
  /** What found no room on the plan. */
  readonly unmarked: readonly string[];
}

interface Naming {
  readonly references: References;
  readonly workedOn: ReadonlySet<string>;
}

function layoutOf({ worked, storeyId, paper }: PlanRequest): SheetLayout {
  const walls = [...worked.plan.wallById.values()].filter((wall) => wall.storeyId === storeyId);
  const placed = [...worked.plan.positionOfPoint.values(), ...worked.plan.positionOfBoard.values()];
  const positions: PlanPoint[] = placed.filter((at) => at.storeyId === storeyId).map((at) => at.at);
  return layOut(extentOf(walls, positions), paper ?? null);
}

/** A storey's sheet while it is being drawn. */
interface Ground {
  readonly layout: SheetLayout;
  readonly free: LabelPlacer;
  readonly labels: SheetLabels;
  readonly walls: readonly PlanWall[];
  readonly cables: readonly DrawnCable[];
}

/** What is rigid takes its room first: walls, cables, marks of floors and joists. */
function groundOf(request: PlanRequest): Ground & { readonly rigid: Scene['layers'] } {
  const { worked, storeyId } = request;
  const layout = layoutOf(request);
  const { frame } = layout;
  const walls = [...worked.plan.wallById.values()].filter((wall) => wall.storeyId === storeyId);
  const free = labelPlacer(layout.plan);
  const cables = drawnCables(worked, storeyId, layout);
  for (const box of [...wallBoxes(frame, walls), ...windowBoxes(frame, walls)]) free.take(box, 'wall');
  takeRoom(free, cables);
  const boards = boardMarks(worked, storeyId, frame, free);
  const holes = holeMarks(cables, storeyId, { frame, free });
  const rigid = [
    { name: 'boards-up', shapes: boards },
    { name: 'joist-holes', shapes: holes },
    { name: 'joists', shapes: holes.length === 0 ? [] : joistShapes(frame, worked.plan, storeyId, 'joist') },
  ];
  return { layout, free, labels: sheetLabels(free), walls, cables, rigid };
}

/** The points of a sheet with its dimensions, which are laid between their symbols and their labels. */
function pointsOf({ worked, storeyId }: PlanRequest, { references, workedOn }: Naming, ground: Ground) {
  const { layout, free, labels } = ground;
  const { frame } = layout;
  const fixtures = drawnFixtures(frame, worked.plan, storeyId);
  let dimensions: readonly Shape[] = [];
  const sheet: SheetLook = {
    markOf: references.place,
    workedOn,
    labels,
    beforeLabels: () => {
      dimensions = pointDimensions(worked, storeyId, frame, { free, labels });
      takeOutlines(fixtures, free);
    },
  };
  const look = { symbolSize: 1, terse: false, labelNearMm: 5.6, withWanted: false, sheet };
  const points = pointLayer(worked, storeyId, layout, free, look);
  return { points, dimensions, fixtures };
}

/** Draws a storey: what is rigid first, then the lettering that can give way, the most wanted first. */
function drawnStorey(request: PlanRequest, naming: Naming): DrawnStorey {
  const { worked, storeyId } = request;
  const { references } = naming;
  const ground = groundOf(request);
  const { layout, free, labels, walls, cables, rigid } = ground;
  const { frame } = layout;
  const { points, dimensions, fixtures } = pointsOf(request, naming, ground);
  const lettering: Shape[] = [];
  const label = cableLabels(labels, free, (shapes) => lettering.push(...shapes));
  const drawnCableLayer = cableLayer(worked, cables, label, (run) => {
    const length = run.lengthMm === null ? '?' : metres(run.lengthMm);
    return `${references.cable(run.id)} ${length}`;
  });
  const names = fixtureNames(fixtures, labels);
  const rooms = roomNames(worked, storeyId, layout, free, labels.leaveOut);
  const rises = riseMarks(cables, storeyId, { frame, references, labels });
  const numbers = floorNumbers(worked, storeyId, frame, labels);
  const spots = spotsOf(worked, points, drawnCableLayer);
  const marks = numberedFindings(request.findings, elsewhere(worked, spots));
  const middles = new Map([...drawnCableLayer.middles, ...points.middles]);
  const locks = lockMarks(worked, middles, (at, subject) =>
    labels.placeBox({ ...LOCK_ROOM, saidAs: `lock of ${references.cable(subject)}` }, { at, halfMm: 2.6 }),
  );
  const findings = markShapes(marks, spots, labels);
  const layerOf = (name: string) => rigid.filter((layer) => layer.name === name);
  const layers = [
    ...layerOf('joists'),
    { name: 'fixtures', shapes: fixtures.map(fixtureOutline) },
    { name: 'walls', shapes: wallShapes(frame, walls) },
    ...layerOf('boards-up'),
    { name: 'cables', shapes: drawnCableLayer.shapes },
    ...layerOf('joist-holes'),
    { name: 'leaders', shapes: labels.leaders() },
    { name: 'dimensions', shapes: dimensions },
    // Lettering has a ground of its own, so that a line which must go through is interrupted, and strikes nothing out.
    { name: 'fixture-names', shapes: names },
    { name: 'rooms', shapes: rooms },
    { name: 'points', shapes: points.shapes },
    { name: 'cable-labels', shapes: lettering },
    { name: 'rises', shapes: rises },
    { name: 'locks', shapes: locks },
    { name: 'findings', shapes: findings },
    { name: 'floor-numbers', shapes: numbers },
  ].filter(({ shapes }) => shapes.length > 0);
  return { layout, points, cables, marks, unmarked: labels.unmarked(), layers };
}

/** What is beside a storey's plan, and what goes on to sheets of its own. */
function listsOf(request: PlanRequest, { references, workedOn }: Naming, drawn: DrawnStorey): SharedOut {
  const { worked, storeyId, findings, cautions } = request;
  const { layout, layers, points, cables, marks, unmarked } = drawn;
  const legend = legendSection({
    symbols: symbolsUsed(points),
    drawn: layers.flatMap(({ shapes }) => shapes),
    hasLocks: layers.some(({ name }) => name === 'locks'),
  });
  const lists = storeyLists(
    {
      ...{ worked, storeyId, references, workedOn, marks, cautions, unmarked },
      runs: cables.filter(({ isFound }) => !isFound).map(({ run }) => run),
      adviceCount: outcomeCount(findings, 'advice'),
    },
    new Set(points.spots.keys()),
  );
  return sharedOut(layout, legend, lists);
}

const sheetLayer = ({ border, widthMm, heightMm }: SheetLayout): Scene['layers'][number] => ({
  name: 'sheet',
  shapes: [
    line('paper', boxCorners({ leftMm: 0, topMm: 0, rightMm: widthMm, bottomMm: heightMm }), true),
    line('frame', boxCorners(border), true),
  ],
});

/** The sheets of one storey: its plan, and its lists where these have no room beside it. */
export function storeySheets(request: PlanRequest): readonly DrawnSheet[] {
  const { worked, storeyId } = request;
  const naming: Naming = { references: referencesOf(worked), workedOn: workedOnPoints(worked) };
  const storeyName = worked.plan.storeyById.get(storeyId)?.storey.name ?? NO_STOREY;
  const drawn = drawnStorey(request, naming);
  const { layout, layers } = drawn;
  const shared = listsOf(request, naming, drawn);
  const content = (documentType: string, sheet: TitleBlockContent['sheet']): TitleBlockContent => ({
    ...request,
    documentType,
    sheet,
  });
  const { widthMm, heightMm, frame } = layout;
  const plan: DrawnSheet = {
    storeyId,
    isPlan: true,
    scene: (sheet) => ({
      title: `${request.title}: wiring plan, ${storeyName}`,
      ...{ widthMm, heightMm, scale: frame.scale },
      layers: [
        sheetLayer(layout),
        ...layers,
        {
          name: 'words',
          shapes: [
            ...(isEmptyStorey(worked, storeyId) ? emptyWords(layout) : scaleBar(layout)),
            ...panelShapes(layout, shared, content(`Wiring plan, ${storeyName}`, sheet)),
          ],
        },
      ],
    }),
  };
  const lists = listSheets(shared.away).map(
    (list): DrawnSheet => ({
      storeyId,
      isPlan: false,
      scene: (sheet) => ({
        title: `${request.title}: lists to the wiring plan, ${storeyName}`,
        ...{ widthMm: list.layout.widthMm, heightMm: list.layout.heightMm, scale: null },
        layers: [
          sheetLayer(list.layout),
          {
            name: 'words',
            shapes: [
              ...list.shapes,
              ...titleBlock(list.layout, content(`Lists, wiring plan, ${storeyName}`, sheet), false),
            ],
          },
        ],
      }),
    }),
  );
  return [plan, ...lists];
}
