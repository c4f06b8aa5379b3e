import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import { textWidthMm } from '../label-placer.ts';
import { line, type Scene, type Shape, words } from '../scene.ts';

/** What a customer's drawing has symbols for. */
export type CustomerSymbol = 'new' | 'there' | 'going' | 'fuse' | 'floor';

/** All that a customer's drawing can have in it and that is explained. */
export type CustomerSign = CustomerSymbol | 'cable' | 'board';

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
const WORDS_MM = 3;

const symbolEntry = (symbol: CustomerSymbol) => (at: SheetPoint) => customerSymbol(symbol, at);

/** Every sign with what it means, in the order of the legend. */
const meanings: readonly {
  readonly sign: CustomerSign;
  readonly drawn: (at: SheetPoint) => readonly Shape[];
  readonly words: string;
}[] = [
  { sign: 'new', drawn: symbolEntry('new'), words: 'new, by its name' },
  {
    sign: 'cable',
    drawn: ([x, y]) => [line('new', [sheetPoint(x - 3, y), sheetPoint(x + 3, y)])],
    words: 'new cable, hidden unless we say so',
  },
  { sign: 'floor', drawn: symbolEntry('floor'), words: 'the floor is opened here' },
  {
    sign: 'there',
    drawn: symbolEntry('there'),
    words: 'socket there; named if worked on',
  },
  { sign: 'going', drawn: symbolEntry('going'), words: 'taken away, by its name' },
  { sign: 'fuse', drawn: symbolEntry('fuse'), words: 'new fuse for what is behind it' },
  { sign: 'board', drawn: boardSymbol, words: 'fuse box' },
];

/** What the signs in a customer's drawings mean, in rows beneath each other: of those that are drawn, and no others. */
export function customerLegend(drawn: ReadonlySet<CustomerSign>): Scene {
  const entries = meanings.filter(({ sign }) => drawn.has(sign));
  return {
    title: 'What the signs in the drawing mean',
    widthMm: WORDS_AT_MM + Math.max(0, ...entries.map(({ words: said }) => textWidthMm(said, WORDS_MM))),
    heightMm: entries.length * ROW_MM,
    scale: null,
    layers: [
      {
        name: 'legend',
        shapes: entries.flatMap((entry, row) => {
          const y = (row + 0.5) * ROW_MM;
          return [
            ...entry.drawn(sheetPoint(3.4, y)),
            words('text', sheetPoint(WORDS_AT_MM, y + 1), entry.words, { sizeMm: WORDS_MM }),
          ];
        }),
      },
    ],
  };
}
