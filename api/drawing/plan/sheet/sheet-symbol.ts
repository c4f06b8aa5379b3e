import { sheetPoint } from '#engine/plan/sheet-frame.ts';
import { line, type Shape } from '../../scene.ts';
import { drawSymbol, type SymbolName, type SymbolPlace, type SymbolState } from '../../symbols.ts';
import { LETTERS_MM } from './lettering.ts';

/** Half of the room that a symbol takes on a sheet with the ring round a new one, mm. */
export const SYMBOL_HALF_MM = 3.9;

const RING_MM = { point: 3.7, joint: 2.4 } as const;
const isJoint = (name: SymbolName): boolean => name === 'joint' || name === 'joint-hidden';

/** Half of the room that a symbol takes on a sheet in its state, mm. */
export const symbolHalfMm = (name: SymbolName, state: SymbolState): number =>
  isJoint(name) ? (state === 'new' ? 2.6 : 1.8) : state === 'new' ? SYMBOL_HALF_MM : 3.2;

/** The middle of a symbol as it stands out from its wall. */
export const symbolMiddle = (name: SymbolName, { at, into }: SymbolPlace) =>
  isJoint(name) ? at : sheetPoint(at[0] + into[0] * 2.1, at[1] + into[1] * 2.1);

/** Letters within a symbol in a size of the sheet’s series, about the same middle. */
function inSeries(shape: Shape): Shape {
  if (shape.kind !== 'text') return shape;
  const lower = (LETTERS_MM.notes - shape.sizeMm) * 0.36;
  return { ...shape, sizeMm: LETTERS_MM.notes, at: sheetPoint(shape.at[0], shape.at[1] + lower) };
}

/** What tells new and removed symbols from those found where there is no colour: a ring round the one, a cross over the other. */
function stateMark(name: SymbolName, place: SymbolPlace, state: SymbolState): readonly Shape[] {
  const at = symbolMiddle(name, place);
  if (state === 'new')
    return [{ kind: 'circle', at, radiusMm: isJoint(name) ? RING_MM.joint : RING_MM.point, ink: 'ring-new' }];
  if (state === 'found') return [];
  const [x, y] = at;
  return [
    line('cross-removed', [sheetPoint(x - 2.4, y - 2.4), sheetPoint(x + 2.4, y + 2.4)]),
    line('cross-removed', [sheetPoint(x - 2.4, y + 2.4), sheetPoint(x + 2.4, y - 2.4)]),
  ];
}

/** A symbol as sheets have it: told apart without colour, letters in the sheet’s series. */
export const sheetSymbol = (name: SymbolName, place: SymbolPlace, state: SymbolState): readonly Shape[] => [
  ...drawSymbol(name, place, state).map(inSeries),
  ...stateMark(name, place, state),
];
