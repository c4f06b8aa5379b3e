import type { Worked } from '#engine/connections/worked.ts';
import type { PlanPoint } from '#engine/plan/plane.ts';
import {
  directionOnSheet,
  type SheetFrame,
  type SheetPoint,
  sheetPoint,
  toSheet,
} from '#engine/plan/sheet-frame.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { openedFloors } from '#engine/ways/opened-floors.ts';
import { boxRound, type LabelPlacer, labelPlacer, placesAround, type Rectangle } from '../label-placer.ts';
import { type DrawnCable, drawnCables } from '../plan/cable-layer.ts';
import { storeysOf } from '../plan/cable-shapes.ts';
import { drawnFixtures, fixtureOutline } from '../plan/fixtures.ts';
import { roomNames } from '../plan/room-names.ts';
import { extentOf, type SheetLayout } from '../plan/sheet-layout.ts';
import { wallBoxes, wallShapes } from '../plan/walls.ts';
import { line, type Scene, type Shape, words } from '../scene.ts';
import {
  boardSymbol,
  type CustomerSign,
  type CustomerSymbol,
  customerSymbol,
  FLOOR_MM,
  SYMBOL_MM,
} from './customer-symbols.ts';

/** Room round the walls, for labels outside them, mm on paper. */
const MARGIN_MM = 7;
/** Lettering of points, mm on paper: readable on a phone where the drawing fills its width. */
const LABEL_MM = 3;

/** Half of what a cable takes beside its middle, mm on paper. */
const CABLE_MM = 0.5;

/** A drawing of one storey for a customer. */
export interface CustomerPlan {
  readonly storeyId: string;
  readonly storeyName: string;
  readonly scene: Scene;
  /** What is drawn in it that a customer may ask about. */
  readonly signs: ReadonlySet<CustomerSign>;
}

/** The largest a drawing may be, mm on paper. */
export interface DrawingRoom {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** The scale at which a storey just fits its room: no customer measures on it. */
function layoutIn(
  [low, high]: readonly [PlanPoint, PlanPoint],
  { widthMm, heightMm }: DrawingRoom,
): SheetLayout {
  const [across, up] = [Math.max(1, high[0] - low[0]), Math.max(1, high[1] - low[1])];
  const scale = Math.max(across / (widthMm - 2 * MARGIN_MM), up / (heightMm - 2 * MARGIN_MM));
  const size = { widthMm: across / scale + 2 * MARGIN_MM, heightMm: up / scale + 2 * MARGIN_MM };
  const whole = { leftMm: 0, topMm: 0, rightMm: size.widthMm, bottomMm: size.heightMm };
  const frame: SheetFrame = { scale, origin: low, at: sheetPoint(MARGIN_MM, size.heightMm - MARGIN_MM) };
  return { ...size, sheetName: 'quotation', border: whole, plan: whole, panel: whole, frame };
}

/** What stands on a storey and is shown: where, as which symbol, by which name (null: none). */
interface Shown {
  readonly id: string;
  readonly at: SheetPoint;
  readonly symbol: CustomerSymbol;
  readonly label: string | null;
  readonly into: readonly [number, number];
}

/** Points that are new, those that new cable begins at, the rest; and units that the work brings along. */
function shownThings(
  { job, plan, runs, things }: Worked,
  storeyId: string,
  frame: SheetFrame,
): readonly Shown[] {
  const ends = new Set(runs.flatMap(({ from, to }) => [from.pointId, to.pointId]));
  const opened = new Set(
    things.boxes
      .filter(({ action }) => action === 're-box' || action === 'frame')
      .map(({ pointId }) => pointId),
  );
  const into = (
    wallId: string | undefined,
    side: 'left' | 'right' | undefined,
  ): readonly [number, number] => {
    const normal = wallId === undefined ? undefined : plan.wallById.get(wallId)?.leftNormal;
    if (normal === undefined) return [0, -1];
    return directionOnSheet(side === 'left' ? normal : [-normal[0], -normal[1]]);
  };
  const points = job.points.flatMap(({ id, label, status }): Shown[] => {
    const position = plan.positionOfPoint.get(id);
    if (position === undefined || position.storeyId !== storeyId) return [];
    const symbol = status === 'wanted' ? 'new' : status === 'removed' ? 'going' : 'there';
    const named = symbol !== 'there' || ends.has(id) || opened.has(id);
    const inwards = into(position.onWall?.wallId, position.onWall?.side);
    return [{ id, at: toSheet(frame, position.at), symbol, label: named ? label : null, into: inwards }];
  });
  const units = things.fusedUnits.flatMap(({ id, pointId, position, state }): Shown[] => {
    if (pointId !== null || state !== 'new' || position === null || position.storeyId !== storeyId) return [];
    const inwards = into(position.onWall?.wallId, position.onWall?.side);
    return [{ id, at: toSheet(frame, position.at), symbol: 'fuse', label: 'fuse', into: inwards }];
  });
  return [...points, ...units];
}

function placed({ id, at, symbol, label, into }: Shown, free: LabelPlacer): Shape {
  const shapes = [...customerSymbol(symbol, at)];
  if (label !== null) {
    const spot = free.place(label, LABEL_MM, placesAround(at, into, SYMBOL_MM + 2.6));
    const isNew = symbol === 'new' || symbol === 'fuse';
    shapes.push(
      words(isNew ? 'text-new' : 'text', sheetPoint(spot[0], spot[1] + LABEL_MM * 0.35), label, {
        sizeMm: LABEL_MM,
        anchor: 'middle',
        strong: isNew,
      }),
    );
  }
  return { kind: 'group', subject: id, title: label ?? 'Socket that is there', shapes };
}

const boxAt = ([x, y]: SheetPoint, halfMm: number): Rectangle => ({
  leftMm: x - halfMm,
  rightMm: x + halfMm,
  topMm: y - halfMm,
  bottomMm: y + halfMm,
});

/** Where the name of the fuse box goes beside it, mm: above, below, left, right. */
const BOARD_LABELS = [
  [0, -3.6],
  [0, 3.6],
  [-10, 0],
  [10, 0],
] as const;

function boards({ plan }: Worked, storeyId: string, frame: SheetFrame, free: LabelPlacer): readonly Shape[] {
  return [...plan.positionOfBoard].flatMap(([id, position]) => {
    if (position.storeyId !== storeyId) return [];
    const at = toSheet(frame, position.at);
    free.take(boxAt(at, SYMBOL_MM));
    const spot = free.place('fuse box', LABEL_MM, [
      ...BOARD_LABELS.map(([x, y]) => sheetPoint(at[0] + x, at[1] + y)),
      ...placesAround(at, [0, -1], 10),
    ]);
    const name = words('text', sheetPoint(spot[0], spot[1] + LABEL_MM * 0.35), 'fuse box', {
      sizeMm: LABEL_MM,
      anchor: 'middle',
    });
    return [{ kind: 'group', subject: id, title: 'Fuse box', shapes: [...boardSymbol(at), name] }];
  });
}

/** Names keep off cables and opened floors where they can. */
function takeRoom(free: LabelPlacer, cables: readonly DrawnCable[], floors: readonly SheetPoint[]): void {
  for (const at of floors) free.take(boxAt(at, FLOOR_MM));
  for (const { path } of cables)
    path.slice(1).forEach((at, i) => {
      const round = boxRound([at, path[i] ?? at]);
      free.take(
        {
          leftMm: round.leftMm - CABLE_MM,
          rightMm: round.rightMm + CABLE_MM,
          topMm: round.topMm - CABLE_MM,
          bottomMm: round.bottomMm + CABLE_MM,
        },
        'cable',
      );
    });
}

const drawnIn = (
  worked: Worked,
  storeyId: string,
  room: DrawingRoom,
): Pick<CustomerPlan, 'scene' | 'signs'> => {
  const walls = [...worked.plan.wallById.values()].filter((wall) => wall.storeyId === storeyId);
  const positions = [...worked.plan.positionOfPoint.values(), ...worked.plan.positionOfBoard.values()]
    .filter((position) => position.storeyId === storeyId)
    .map(({ at }) => at);
  const layout = layoutIn(extentOf(walls, positions), room);
  const { frame } = layout;
  const free = labelPlacer(layout.plan);
  for (const box of wallBoxes(frame, walls)) free.take(box, 'wall');
  const cables = drawnCables(worked, storeyId, layout).filter(
    ({ isFound, path }) => !isFound && path.length > 1,
  );
  const floorSpots = openedFloors(worked.runs, worked.plan)
    .filter(({ board }) => board.storeyId === storeyId)
    .map(({ board }) => toSheet(frame, board.at.at));
  const shown = shownThings(worked, storeyId, frame);
  takeRoom(free, cables, floorSpots);
  for (const { at } of shown) free.take(boxAt(at, SYMBOL_MM));
  // New points first: their labels matter most, and take the best places.
  const points = [...shown].sort((a, b) => Number(a.symbol !== 'new') - Number(b.symbol !== 'new'));
  const labelled = points.map((one) => placed(one, free));
  const box = boards(worked, storeyId, frame, free);
  const signs = new Set<CustomerSign>([
    ...shown.map(({ symbol }) => symbol),
    ...(cables.length === 0 ? [] : (['cable'] as const)),
    ...(floorSpots.length === 0 ? [] : (['floor'] as const)),
    ...(box.length === 0 ? [] : (['board'] as const)),
  ]);
  const scene: Scene = {
    title: worked.plan.storeyById.get(storeyId)?.storey.name ?? '',
    widthMm: layout.widthMm,
    heightMm: layout.heightMm,
    scale: null,
    layers: [
      { name: 'fixtures', shapes: drawnFixtures(frame, worked.plan, storeyId).map(fixtureOutline) },
      { name: 'walls', shapes: wallShapes(frame, walls) },
      { name: 'rooms', shapes: roomNames(worked, storeyId, layout, free) },
      { name: 'floors', shapes: floorSpots.flatMap((at) => customerSymbol('floor', at)) },
      {
        name: 'cables',
        shapes: cables.flatMap(({ path }) => [line('halo-line', path), line('new', path)]),
      },
      { name: 'points', shapes: [...box, ...labelled] },
    ],
  };
  return { scene, signs };
};

/** True where a scheme does something on a storey that a drawing can show. */
function isWorkedOn({ plan, job, runs }: Worked, storeyId: string): boolean {
  const hasNew = job.points.some(
    ({ id, status }) => status !== 'existing' && plan.positionOfPoint.get(id)?.storeyId === storeyId,
  );
  return hasNew || runs.some((run) => run.segments.length > 0 && storeysOf(run).has(storeyId));
}

/**
 * The storeys on which a scheme does something, lowest first, drawn for its customer: rooms, new points by name, new cable,
 * where floors are opened, the sockets that are there, the fuse box. Storeys without walls are left out.
 *
 * @param room what each drawing has to fit.
 */
export function customerPlans(
  { worked }: Pick<SchemeEstimate, 'worked'>,
  room: DrawingRoom,
): readonly CustomerPlan[] {
  return worked.plan.storeys
    .filter(({ storey }) => storey.walls.length > 0 && isWorkedOn(worked, storey.id))
    .map(({ storey }) => ({
      storeyId: storey.id,
      storeyName: storey.name,
      ...drawnIn(worked, storey.id, room),
    }));
}
