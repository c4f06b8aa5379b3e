import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import { LOCK_WORDS, lockMark } from '../../lock-mark.ts';
import { findingMark, outcomeWords } from '../../marks.ts';
import { type Ink, line, type Shape } from '../../scene.ts';
import { type SymbolName, type SymbolState, symbolWords } from '../../symbols.ts';
import { type Block, type Section, textBlocks, withSign } from './column.ts';
import { boardMark, cutMark } from './floor-marks.ts';
import { riseMark } from './rise-marks.ts';
import { sheetSymbol } from './sheet-symbol.ts';

/** A sign that is explained where it is drawn. */
interface Sign {
  readonly meaning: string;
  /** About the middle of its room in the legend, 8 by 4 mm. */
  readonly sample: (middle: SheetPoint) => readonly Shape[];
}

const stroke =
  (ink: Ink) =>
  ([x, y]: SheetPoint): readonly Shape[] => [line(ink, [sheetPoint(x - 4, y), sheetPoint(x + 4, y)])];

const slab =
  (ink: Ink) =>
  ([x, y]: SheetPoint): readonly Shape[] => [
    line(
      ink,
      [
        sheetPoint(x - 4, y - 0.9),
        sheetPoint(x + 4, y - 0.9),
        sheetPoint(x + 4, y + 0.9),
        sheetPoint(x - 4, y + 0.9),
      ],
      true,
    ),
  ];

/** Every sign of a plan that is no symbol of a point, by the ink that it alone has, in the order of the legend. */
export const signs: ReadonlyMap<Ink, Sign> = new Map<Ink, Sign>([
  ['new', { meaning: 'new cable, with its number and length', sample: stroke('new') }],
  [
    'rise',
    { meaning: 'new cable goes up or down here, between heights h', sample: (at) => [riseMark(at, true)] },
  ],
  ['found', { meaning: 'cable as found, its way seen', sample: stroke('found') }],
  ['found-assumed', { meaning: 'cable as found, its way assumed (?)', sample: stroke('found-assumed') }],
  ['removed', { meaning: 'cable taken out of use', sample: stroke('removed') }],
  ['wall', { meaning: 'wall of masonry', sample: slab('wall') }],
  ['wall-light', { meaning: 'stud wall', sample: slab('wall-light') }],
  ['fixture', { meaning: 'what is fixed in the room', sample: slab('fixture') }],
  ['joist', { meaning: 'joists of this floor', sample: stroke('joist') }],
  ['hole', { meaning: 'joist drilled on its centre line', sample: (at) => cutMark('hole', at) }],
  ['notch', { meaning: 'joist notched, steel plate over it', sample: (at) => cutMark('notch', at) }],
  [
    'hole-unknown',
    { meaning: 'joist crossed, depth or span not known: see first', sample: (at) => cutMark('unknown', at) },
  ],
  ['hole-barred', { meaning: 'joist where neither is allowed', sample: (at) => cutMark('neither', at) }],
  ['board-up', { meaning: 'floor opened here', sample: (at) => [boardMark(at)] }],
  ['dimension', { meaning: 'mm from a new point to a corner', sample: stroke('dimension') }],
]);

const outcomes = ['fails', 'decide', 'not-proven', 'advice'] as const;

/** The inks of some shapes, those within groups too. */
export const inksOf = (shapes: readonly Shape[]): ReadonlySet<Ink> =>
  new Set(shapes.flatMap((shape) => (shape.kind === 'group' ? [...inksOf(shape.shapes)] : [shape.ink])));

/** What a legend is made for. */
export interface LegendContent {
  readonly symbols: readonly { readonly name: SymbolName; readonly state: SymbolState }[];
  /** All that is drawn of the plan. */
  readonly drawn: readonly Shape[];
  /** Whether something on the sheet carries the mark of a lock. */
  readonly hasLocks: boolean;
}

const SIGN_MM = 11;
const stateWords: Readonly<Record<SymbolState, string>> = {
  found: '',
  new: ', new (circled)',
  removed: ', taken out',
};

/** A row of the legend with its sign; taller where the words take two rows or the sign asks for it. */
function signRow(
  meaning: string,
  widthMm: number,
  leastMm: number,
  sample: (middle: SheetPoint) => readonly Shape[],
): Block {
  const rows = textBlocks(meaning, widthMm, { insetMm: SIGN_MM });
  const heightMm = Math.max(
    leastMm,
    rows.reduce((sum, row) => sum + row.heightMm, 0.6),
  );
  const padMm = (heightMm - rows.reduce((sum, row) => sum + row.heightMm, 0)) / 2;
  return withSign(
    {
      heightMm,
      shapesAt: ([x, y]) =>
        rows.flatMap((row, i) => row.shapesAt(sheetPoint(x, y + padMm + i * row.heightMm))),
    },
    ([x, y]) => sample(sheetPoint(x + 4, y + heightMm / 2)),
  );
}

/** What every sign on a sheet means: all that are drawn, and no other. */
export const legendSection = ({ symbols, drawn, hasLocks }: LegendContent): Section => ({
  title: 'Legend',
  blocks: (widthMm) => {
    const inks = inksOf(drawn);
    return [
      ...symbols.map(({ name, state }) => {
        const isJoint = name.startsWith('joint');
        const tall = state === 'found' ? (isJoint ? 4.4 : 5.6) : isJoint ? 5.6 : 8;
        return signRow(`${symbolWords[name]}${stateWords[state]}`, widthMm, tall, ([x, y]) =>
          sheetSymbol(name, { at: sheetPoint(x, isJoint ? y : y + 2.1), into: [0, -1] }, state),
        );
      }),
      ...[...signs]
        .filter(([ink]) => inks.has(ink))
        .map(([, { meaning, sample }]) => signRow(meaning, widthMm, 4, sample)),
      ...outcomes
        .filter((outcome) => inks.has(`mark-${outcome}`))
        .map((outcome) =>
          signRow(`check, numbered in the list: ${outcomeWords[outcome].toLowerCase()}`, widthMm, 5.8, (at) =>
            findingMark(outcome, at, '', 2.5),
          ),
        ),
      ...(hasLocks ? [signRow(LOCK_WORDS, widthMm, 4.8, lockMark)] : []),
    ];
  },
});
