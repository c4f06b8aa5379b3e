import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import { line, type Scene, type Shape, words } from '../scene.ts';

/** What a customer's drawing has symbols for. */
export type CustomerSymbol = 'new' | 'there' | 'going' | 'fuse' | 'floor';

/** Half the size of the largest symbol, mm on paper. */
export const SYMBOL_MM = 1.9;

/** Half the size of an opened floor: it shows round a point that stands over it. */
export const FLOOR_MM = 2.7;

const square = ([x, y]: SheetPoint, halfMm: number): readonly SheetPoint[] => [
  sheetPoint(x - halfMm, y - halfMm),
  sheetPoint(x + halfMm, y - halfMm),
  sheetPoint(x + halfMm, y + halfMm),
  sheetPoint(x - halfMm, y + halfMm),
];

/** A symbol at a place; told apart by shape and fill, not by colour alone. */
export function customerSymbol(symbol: CustomerSymbol, at: SheetPoint): readonly Shape[] {
  const [x, y] = at;
  switch (symbol) {
    case 'new':
      return [{ kind: 'circle', at, radiusMm: SYMBOL_MM, ink: 'symbol-new-solid' }];
    case 'there':
      return [{ kind: 'circle', at, radiusMm: 1.1, ink: 'symbol' }];
    case 'going':
      return [
        line('removed', [sheetPoint(x - 1.5, y - 1.5), sheetPoint(x + 1.5, y + 1.5)]),
        line('removed', [sheetPoint(x - 1.5, y + 1.5), sheetPoint(x + 1.5, y - 1.5)]),
      ];
    case 'fuse':
      return [line('symbol-new', square(at, 1.5), true)];
    case 'floor':
      return [
        line('symbol', square(at, FLOOR_MM), true),
        line('opening', [sheetPoint(x - FLOOR_MM, y + FLOOR_MM), sheetPoint(x + FLOOR_MM, y - FLOOR_MM)]),
        line('opening', [sheetPoint(x - FLOOR_MM, y), sheetPoint(x, y - FLOOR_MM)]),
        line('opening', [sheetPoint(x, y + FLOOR_MM), sheetPoint(x + FLOOR_MM, y)]),
      ];
  }
}

/** The fuse box: a solid upright rectangle. */
export const boardSymbol = ([x, y]: SheetPoint): readonly Shape[] => [
  line(
    'symbol-solid',
    [
      sheetPoint(x - 2.4, y - 1.3),
      sheetPoint(x + 2.4, y - 1.3),
      sheetPoint(x + 2.4, y + 1.3),
      sheetPoint(x - 2.4, y + 1.3),
    ],
    true,
  ),
];

const ROW_MM = 6;
const WORDS_AT_MM = 8;

/** What the symbols of a customer's drawing mean, in rows beneath each other. */
export function customerLegend(): Scene {
  const entries: readonly (readonly [(at: SheetPoint) => readonly Shape[], string])[] = [
    [(at) => customerSymbol('new', at), 'new, by its name'],
    [
      ([x, y]) => [line('new', [sheetPoint(x - 3, y), sheetPoint(x + 3, y)])],
      'new cable, in walls and below floors where not said otherwise',
    ],
    [(at) => customerSymbol('floor', at), 'the floor is opened here'],
    [(at) => customerSymbol('there', at), 'socket that is there; those worked on have a name'],
    [(at) => customerSymbol('fuse', at), 'new fuse for what is behind it'],
    [boardSymbol, 'fuse box'],
  ];
  return {
    title: 'What the signs in the drawing mean',
    widthMm: 96,
    heightMm: entries.length * ROW_MM,
    scale: null,
    layers: [
      {
        name: 'legend',
        shapes: entries.flatMap(([symbol, meaning], row) => {
          const y = (row + 0.5) * ROW_MM;
          return [
            ...symbol(sheetPoint(3.4, y)),
            words('text', sheetPoint(WORDS_AT_MM, y + 1), meaning, { sizeMm: 3 }),
          ];
        }),
      },
    ],
  };
}
