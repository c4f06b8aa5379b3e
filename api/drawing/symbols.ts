import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import type { PointKind } from '#model/installation.ts';
import { pointKindWords } from './point-kind-words.ts';
import { type Ink, line, type Shape, words } from './scene.ts';

/** What a plan symbol can stand for: the kinds of point, a board, and two kinds of joint access. */
export type SymbolName = PointKind | 'board' | 'joint-hidden';

/** Where a symbol stands: its foot on the wall's face and the direction into the room, both on paper. */
export interface SymbolPlace {
  readonly at: SheetPoint;
  /** Unit vector on paper, pointing from the wall into the room. */
  readonly into: readonly [number, number];
}

/** found: ink. new: copper. removed: dashed grey. */
export type SymbolState = 'found' | 'new' | 'removed';

const ownSymbol = (kind: PointKind): string => `${pointKindWords[kind]} (own symbol)`;

/** What each symbol means, for the legend. Drawn afresh after the descriptions of IEC 60617-11; own ones say so. */
export const symbolWords: Readonly<Record<SymbolName, string>> = {
  'socket-single': pointKindWords['socket-single'],
  'socket-twin': pointKindWords['socket-twin'],
  'fused-unit': ownSymbol('fused-unit'),
  'flex-outlet': ownSymbol('flex-outlet'),
  joint: `${pointKindWords.joint}, accessible`,
  'joint-hidden': `${pointKindWords.joint}, maintenance-free, not accessible`,
  'dp-switch': pointKindWords['dp-switch'],
  'cooker-control': ownSymbol('cooker-control'),
  grid: ownSymbol('grid'),
  shaver: ownSymbol('shaver'),
  blank: ownSymbol('blank'),
  other: ownSymbol('other'),
  board: 'Consumer unit',
};

interface Pens {
  readonly open: Ink;
  readonly solid: Ink;
  readonly text: Ink;
}

const pens: Readonly<Record<SymbolState, Pens>> = {
  found: { open: 'symbol', solid: 'symbol-solid', text: 'text' },
  new: { open: 'symbol-new', solid: 'symbol-new-solid', text: 'text-new' },
  removed: {
    open: 'symbol-removed',
    solid: 'symbol-removed',
    text: 'text-soft',
  },
};

/** Puts local measures (u along the wall, v into the room, mm on paper) on the sheet. */
const placer =
  (place: SymbolPlace) =>
  (u: number, v: number): SheetPoint =>
    sheetPoint(
      place.at[0] + v * place.into[0] - u * place.into[1],
      place.at[1] + v * place.into[1] + u * place.into[0],
    );

type Local = (u: number, v: number) => SheetPoint;

function halfDisc(on: Local, place: SymbolPlace, u: number, ink: Ink): Shape {
  const crownDeg = (Math.atan2(-place.into[1], -place.into[0]) * 180) / Math.PI;
  return {
    kind: 'arc',
    at: on(u, 2.7),
    radiusMm: 1.5,
    fromDeg: crownDeg - 90,
    toDeg: crownDeg + 90,
    closed: true,
    ink,
  };
}

function socket(on: Local, place: SymbolPlace, outlets: readonly number[], pen: Pens): Shape[] {
  const half = Math.max(...outlets.map(Math.abs)) + 1.5;
  return [
    line(pen.open, [on(0, 0), on(0, 1.2)]),
    ...outlets.map((u) => halfDisc(on, place, u, pen.open)),
    line(pen.open, [on(-half, 1.2), on(half, 1.2)]),
  ];
}

const box = (on: Local, ink: Ink, half: number, from: number, to: number): Shape =>
  line(ink, [on(-half, from), on(half, from), on(half, to), on(-half, to)], true);

function lettered(on: Local, pen: Pens, letters: string): Shape[] {
  const middle = on(0, 2.1);
  return [
    line(pen.open, [on(0, 0), on(0, 0.7)]),
    box(on, pen.open, 1.9, 0.7, 3.5),
    words(pen.text, sheetPoint(middle[0], middle[1] + 0.65), letters, {
      sizeMm: 1.8,
      anchor: 'middle',
    }),
  ];
}

const drawings: Readonly<Record<SymbolName, (on: Local, place: SymbolPlace, pen: Pens) => readonly Shape[]>> =
  {
    'socket-single': (on, place, pen) => socket(on, place, [0], pen),
    'socket-twin': (on, place, pen) => socket(on, place, [-1.6, 1.6], pen),
    'fused-unit': (on, _place, pen) => [
      line(pen.open, [on(0, 0), on(0, 0.7)]),
      box(on, pen.open, 2.6, 0.7, 3.3),
      box(on, pen.open, 1.4, 1.5, 2.5),
      line(pen.open, [on(-2.6, 2), on(2.6, 2)]),
    ],
    'flex-outlet': (on, _place, pen) => [
      line(pen.open, [on(0, 0), on(0, 0.8)]),
      { kind: 'circle', at: on(0, 2), radiusMm: 1.2, ink: pen.open },
      line(pen.open, [on(0, 3.2), on(0.6, 3.7), on(-0.6, 4.2), on(0, 4.7)]),
    ],
    joint: (on, _place, pen) => [
      { kind: 'circle', at: on(0, 0), radiusMm: 1.2, ink: pen.open },
      { kind: 'circle', at: on(0, 0), radiusMm: 0.4, ink: pen.solid },
    ],
    'joint-hidden': (on, _place, pen) => [
      box(on, pen.open, 1.5, -1.5, 1.5),
      { kind: 'circle', at: on(0, 0), radiusMm: 1.1, ink: pen.open },
      { kind: 'circle', at: on(0, 0), radiusMm: 0.4, ink: pen.solid },
    ],
    'dp-switch': (on, _place, pen) => [
      { kind: 'circle', at: on(0, 0.9), radiusMm: 0.8, ink: pen.open },
      line(pen.open, [on(0.4, 1.6), on(1.6, 3.7)]),
      line(pen.open, [on(1.6, 3.7), on(2.4, 3.2)]),
      line(pen.open, [on(1.2, 3), on(2, 2.5)]),
    ],
    'cooker-control': (on, _place, pen) => lettered(on, pen, 'CC'),
    grid: (on, _place, pen) => [
      ...lettered(on, pen, ''),
      line(pen.open, [on(-0.6, 0.7), on(-0.6, 3.5)]),
      line(pen.open, [on(0.6, 0.7), on(0.6, 3.5)]),
    ],
    shaver: (on, _place, pen) => lettered(on, pen, 'SH'),
    blank: (on, _place, pen) => [...lettered(on, pen, ''), line(pen.open, [on(-1.9, 0.7), on(1.9, 3.5)])],
    other: (on, _place, pen) => lettered(on, pen, '?'),
    board: (on, _place, pen) => [
      // Off the wall's face on a stem, as accessories are: its dark half on the face would look as if it were in the wall.
      line(pen.open, [on(0, 0), on(0, 0.7)]),
      box(on, pen.open, 3.2, 0.7, 3.3),
      line(pen.solid, [on(-3.2, 0.7), on(3.2, 0.7), on(-3.2, 3.3)], true),
    ],
  };

/** Draws one symbol; every symbol used belongs in the legend, by `symbolWords`. */
export function drawSymbol(name: SymbolName, place: SymbolPlace, state: SymbolState): readonly Shape[] {
  return drawings[name](placer(place), place, pens[state]);
}
