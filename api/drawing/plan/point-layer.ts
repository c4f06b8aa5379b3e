import type { Worked } from '#engine/connections/worked.ts';
import type { Position } from '#engine/plan/plane.ts';
import { directionOnSheet, type SheetPoint, sheetPoint, toSheet } from '#engine/plan/sheet-frame.ts';
import type { Point } from '#model/installation.ts';
import { boxCorners, type LabelPlacer, placesAround, type Rectangle, textBox } from '../label-placer.ts';
import { movedOnSheet } from '../moved-on-sheet.ts';
import { scaledAbout } from '../scaled-about.ts';
import { line, type Shape, words } from '../scene.ts';
import { drawSymbol, type SymbolName, type SymbolPlace, type SymbolState } from '../symbols.ts';
import { storeysOf } from './cable-shapes.ts';
import { heightSaid } from './sheet/height-said.ts';
import type { SheetLabels } from './sheet/sheet-labels.ts';
import { SYMBOL_HALF_MM, sheetSymbol, symbolHalfMm, symbolMiddle } from './sheet/sheet-symbol.ts';
import type { SheetLayout } from './sheet-layout.ts';

/** The points of a storey as drawn. */
export interface PointLayer {
  readonly shapes: readonly Shape[];
  /** Where each thing stands on paper, by the id of the point, joint, unit or board. */
  readonly spots: ReadonlyMap<string, SheetPoint>;
  /** The middles of their symbols. */
  readonly middles: ReadonlyMap<string, SheetPoint>;
  readonly used: readonly { readonly name: SymbolName; readonly state: SymbolState }[];
}

/** How points are drawn where that differs from paper. */
export interface PointLook {
  /** Size of symbols against those on paper. */
  readonly symbolSize: number;
  /** Labels by name only, without heights and ratings. */
  readonly terse: boolean;
  /** From a symbol's middle to its label, mm. */
  readonly labelNearMm: number;
  /** Points that are wanted although no scheme is drawn. */
  readonly withWanted: boolean;
  /** How a sheet for the work differs; absent: for screens, customers and drafting programs. */
  readonly sheet?: SheetLook;
}

/** What points carry on a sheet that is worked from. */
export interface SheetLook {
  /** What joints and units that no point stands for are called. */
  readonly markOf: (nodeId: string) => string;
  /** Points that something is done to: their heights are told. */
  readonly workedOn: ReadonlySet<string>;
  /** Called when the room of symbols is taken, before that of labels. */
  readonly beforeLabels: () => void;
  /** Where the sheet's lettering finds room. */
  readonly labels: SheetLabels;
}

const paperLook: PointLook = { symbolSize: 1, terse: false, labelNearMm: 4.4, withWanted: false };

interface Thing {
  readonly id: string;
  readonly label: string;
  readonly title: string;
  readonly symbol: SymbolName;
  readonly state: SymbolState;
  readonly position: Position;
  /** Storeys on whose plan it is drawn. */
  readonly storeyIds: ReadonlySet<string>;
}

const ownStorey = (position: Position): ReadonlySet<string> => new Set([position.storeyId]);

const stateOf = (point: Point): SymbolState =>
  point.status === 'existing' ? 'found' : point.status === 'wanted' ? 'new' : 'removed';

function pointThings(worked: Worked, { terse, withWanted, sheet }: PointLook): readonly Thing[] {
  return worked.job.points.flatMap((point): Thing[] => {
    const position = worked.plan.positionOfPoint.get(point.id);
    if (position === undefined || point.kind === 'joint') return [];
    if (worked.scheme === null && point.status === 'wanted' && !withWanted) return [];
    const hasHeight = point.status === 'wanted' || sheet?.workedOn.has(point.id) === true;
    const height = sheet === undefined ? position.heightMm : Math.round(position.heightMm);
    const label = hasHeight && !terse ? `${point.label} h ${height}` : point.label;
    const title = `${point.label}, ${position.heightMm} mm above floor`;
    const storeyIds = ownStorey(position);
    return [{ id: point.id, label, title, symbol: point.kind, state: stateOf(point), position, storeyIds }];
  });
}

/** A joint shows wherever a new cable that ends in it does: the void it lies in belongs to another storey's floor. */
function jointThings(worked: Worked, { terse, sheet }: PointLook): readonly Thing[] {
  return worked.things.joints.flatMap((joint): Thing[] => {
    const { position, id, state } = joint;
    if (position === null) return [];
    const runs = worked.runs.filter((run) => run.from.nodeId === id || run.to.nodeId === id);
    const storeyIds = new Set([position.storeyId, ...runs.flatMap((run) => [...storeysOf(run)])]);
    const symbol: SymbolName = joint.accessible === true ? 'joint' : 'joint-hidden';
    const title = `${joint.kind} joint, ${joint.ratingA} A`;
    const mark = sheet === undefined ? '' : `${sheet.markOf(id)} `;
    const height = sheet === undefined ? '' : ` h ${heightSaid(position.heightMm)}`;
    const label = terse ? '' : `${mark}${joint.ratingA} A${height}`;
    return [{ id, label, title, symbol, state, position, storeyIds }];
  });
}

function unitThings(worked: Worked, { terse, sheet }: PointLook): readonly Thing[] {
  return worked.things.fusedUnits.flatMap((unit): Thing[] => {
    const { position, id, state } = unit;
    if (unit.pointId !== null || position === null) return [];
    const fuse = unit.fuseA === null ? 'fuse not known' : `${unit.fuseA} A fuse`;
    const told = sheet === undefined ? fuse : `${sheet.markOf(id)} h ${Math.round(position.heightMm)}`;
    const label = terse ? '' : told;
    const title = `Fused connection unit, ${fuse}`;
    return [{ id, label, title, symbol: 'fused-unit', state, position, storeyIds: ownStorey(position) }];
  });
}

function boardThings(worked: Worked, { terse }: PointLook): readonly Thing[] {
  return worked.job.boards.flatMap(({ id, label: title }): Thing[] => {
    const position = worked.plan.positionOfBoard.get(id);
    if (position === undefined) return [];
    const label = terse ? 'CU' : title;
    return [{ id, label, title, symbol: 'board', state: 'found', position, storeyIds: ownStorey(position) }];
  });
}

function symbolPlace(worked: Worked, thing: Thing, layout: Pick<SheetLayout, 'frame'>): SymbolPlace {
  const at = toSheet(layout.frame, thing.position.at);
  const wall =
    thing.position.onWall === undefined ? undefined : worked.plan.wallById.get(thing.position.onWall.wallId);
  if (wall === undefined || thing.position.onWall === undefined) return { at, into: [0, -1] };
  const sign = thing.position.onWall.side === 'left' ? 1 : -1;
  return { at, into: directionOnSheet([wall.leftNormal[0] * sign, wall.leftNormal[1] * sign]) };
}

interface Placed {
  readonly thing: Thing;
  readonly place: SymbolPlace;
}

/** Things at one place (two joints in one cut) are drawn side by side, the first of them where it is. */
function apart(placed: readonly Placed[], stepMm: number): readonly Placed[] {
  const count = new Map<string, number>();
  return placed.map(({ thing, place }) => {
    const key = `${Math.round(place.at[0])} ${Math.round(place.at[1])}`;
    const before = count.get(key) ?? 0;
    count.set(key, before + 1);
    const at = sheetPoint(
      place.at[0] - place.into[1] * stepMm * before,
      place.at[1] + place.into[0] * stepMm * before,
    );
    return { thing, place: { ...place, at } };
  });
}

/** A strip of paper under a label, so that what it must cross does not strike it out. */
function labelHalo(at: SheetPoint, text: string): Shape {
  const box = textBox(at, text, 2.5);
  const corners = boxCorners({ ...box, topMm: box.topMm + 0.3, bottomMm: box.bottomMm - 0.3 });
  return line('halo', corners, true);
}

const outwards = ({ at, into }: SymbolPlace, byMm: number): SheetPoint => movedOnSheet(at, into, byMm);

/** In front of a wall, the ways to both sides first: straight before it are dimensions. */
const IN_FRONT_DEG = [0, 35, -35, 65, -65, 20, -20, 90, -90];

/** Where a thing's label stands; null where a sheet has no room for it. */
function labelAt(
  thing: Thing,
  place: SymbolPlace,
  { look, free }: { readonly look: PointLook; readonly free: LabelPlacer },
): SheetPoint | null {
  const { sheet, symbolSize, labelNearMm } = look;
  if (sheet === undefined)
    return free.place(
      thing.label,
      2.5,
      placesAround(outwards(place, 2.4 * symbolSize), place.into, labelNearMm),
    );
  const named = {
    at: symbolMiddle(thing.symbol, place),
    halfMm: symbolHalfMm(thing.symbol, thing.state),
    into: place.into,
  };
  // On a sheet that is worked from a label stands in the room of its point, not behind the wall.
  return sheet.labels.place(
    thing.label,
    thing.position.onWall === undefined ? named : { ...named, turnsDeg: IN_FRONT_DEG },
  );
}

/** A symbol with its label where there is room for it. */
function labelled(
  thing: Thing,
  place: SymbolPlace,
  symbol: readonly Shape[],
  { look, free }: { readonly look: PointLook; readonly free: LabelPlacer },
): readonly Shape[] {
  if (thing.label === '') return symbol;
  const label = labelAt(thing, place, { look, free });
  if (label === null) return symbol;
  const ink = thing.state === 'new' ? 'text-new' : thing.state === 'found' ? 'text' : 'text-soft';
  const text = words(ink, sheetPoint(label[0], label[1] + 0.9), thing.label, {
    sizeMm: 2.5,
    anchor: 'middle',
    strong: thing.state === 'new',
  });
  return [labelHalo(label, thing.label), ...symbol, text];
}

const roomAbout = ([x, y]: SheetPoint, halfMm: number, halfUpMm: number): Rectangle => ({
  leftMm: x - halfMm,
  rightMm: x + halfMm,
  topMm: y - halfUpMm,
  bottomMm: y + halfUpMm,
});

const symbolRoom = ({ place }: Placed, size: number): Rectangle =>
  roomAbout(outwards(place, 2.2 * size), 2.6 * size, 2.4 * size);

/** The room of a symbol on a sheet, with the ring round a new one. */
function ringRoom({ thing: { symbol, state }, place }: Placed): Rectangle {
  const half = symbolHalfMm(symbol, state);
  return roomAbout(symbolMiddle(symbol, place), half, half);
}

/** What is new stands where it will be, and what it replaces beside it. */
const newFirst = (things: readonly Thing[]): readonly Thing[] =>
  things.toSorted((a, b) => Number(b.state === 'new') - Number(a.state === 'new'));

/** Draws a storey's points, joints, units and boards; their room is taken before any label is placed. */
export function pointLayer(
  worked: Worked,
  storeyId: string,
  layout: Pick<SheetLayout, 'frame'>,
  free: LabelPlacer,
  look: PointLook = paperLook,
): PointLayer {
  const things = [
    ...pointThings(worked, look),
    ...jointThings(worked, look),
    ...unitThings(worked, look),
    ...boardThings(worked, look),
  ].filter((thing) => thing.storeyIds.has(storeyId));
  const { symbolSize: size, sheet } = look;
  const places = apart(
    (sheet === undefined ? things : newFirst(things)).map((thing) => ({
      thing,
      place: symbolPlace(worked, thing, layout),
    })),
    sheet === undefined ? 3.4 * size : 2 * SYMBOL_HALF_MM,
  );
  for (const placed of places) free.take(sheet === undefined ? symbolRoom(placed, size) : ringRoom(placed));
  sheet?.beforeLabels();
  const drawn = sheet === undefined ? drawSymbol : sheetSymbol;
  const shapes = places.map(({ thing, place }): Shape => {
    const symbol = scaledAbout(drawn(thing.symbol, place, thing.state), place.at, size);
    const { id: subject, title } = thing;
    return { kind: 'group', subject, title, shapes: labelled(thing, place, symbol, { look, free }) };
  });
  return {
    shapes,
    spots: new Map(places.map(({ thing, place }) => [thing.id, place.at])),
    middles: new Map(places.map(({ thing, place }) => [thing.id, outwards(place, 2.2 * size)])),
    used: things.map(({ symbol, state }) => ({ name: symbol, state })),
  };
}

/** Each symbol in each state once, in a fixed order. */
export function symbolsUsed(layer: PointLayer): PointLayer['used'] {
  const byKey = new Map(layer.used.map((entry) => [`${entry.state} ${entry.name}`, entry]));
  return [...byKey.entries()].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, entry]) => entry);
}
