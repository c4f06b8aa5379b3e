import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import { type Ink, line, type Shape, words } from '../scene.ts';
import { cableBand, widthOf, worstMark } from './cable-band.ts';
import { type CircuitPicture, nodeTitle } from './circuit-picture.ts';
import { baseline, nodeWords, TEXT_GAP } from './hanging-tree.ts';
import {
  isOverloaded,
  LABEL_SIZE,
  type LabelForm,
  type LabelLine,
  LINE_PITCH,
  legTitle,
  NAME_SIZE,
} from './leg-label.ts';
import { voltsWords } from './proof-words.ts';

/** A cable on the sheet with its label: `toward` is the side on which the label stands, from the cable. */
export interface DrawnLeg {
  readonly leg: number;
  readonly path: readonly SheetPoint[];
  readonly label: readonly LabelLine[];
  /** Middle of the first line of the label, at its side of the cable. */
  readonly labelAt: SheetPoint;
  readonly anchor: 'start' | 'middle' | 'end';
}

const textInk = (isNew: boolean): Ink => (isNew ? 'text-new' : 'text-soft');

/** A cable as a thing that can be touched. */
export function legGroup(picture: CircuitPicture, drawn: DrawnLeg): Shape {
  const leg = picture.legs[drawn.leg];
  if (leg === undefined) throw new Error(`The picture has no leg ${drawn.leg}.`);
  const [x, y] = drawn.labelAt;
  const isOver = isOverloaded(leg);
  const lines = drawn.label.map(({ text, strong }, i) =>
    words(
      isOver && strong ? 'fails' : strong ? 'text' : textInk(leg.isNew),
      sheetPoint(x, baseline(y + i * LINE_PITCH)),
      text,
      {
        sizeMm: LABEL_SIZE,
        anchor: drawn.anchor,
        strong,
      },
    ),
  );
  return {
    kind: 'group',
    subject: leg.subject,
    title: legTitle(picture, leg, drawn.label),
    shapes: [
      ...cableBand(leg, drawn.path),
      ...(leg.isWorst ? [markOf(drawn, widthOf(leg.currentA), isOver)] : []),
      ...lines,
    ],
  };
}

/** The worst leg's mark, on the side of the cable where there is no lettering. */
function markOf({ labelAt: [x, y], label, anchor, path }: DrawnLeg, width: number, isOver: boolean): Shape {
  const middle = y + ((label.length - 1) * LINE_PITCH) / 2;
  if (anchor === 'middle') {
    const top = Math.min(...path.map((at) => at[1]));
    const at = sheetPoint(x, top - width / 2 - 2.6);
    return line(
      isOver ? 'fails' : 'symbol-solid',
      [sheetPoint(at[0] - 1.4, at[1]), sheetPoint(at[0] + 1.4, at[1]), sheetPoint(at[0], at[1] + 2.2)],
      true,
    );
  }
  const side = anchor === 'start' ? 1 : -1;
  const lane = x - side * TEXT_GAP;
  return worstMark(sheetPoint(lane - side * (width / 2 + 2.8), middle), side, isOver);
}

/** A place on the sheet with its name. */
export interface DrawnNode {
  readonly node: number;
  readonly at: SheetPoint;
  readonly anchor: 'start' | 'end';
  readonly form: LabelForm;
}

/** A point, unit or joint as a thing that can be touched: full where it was found, hollow where it is new. */
export function nodeGroup(picture: CircuitPicture, { node, at, anchor, form }: DrawnNode): Shape {
  const drawn = picture.nodes[node];
  if (drawn === undefined) throw new Error(`The picture has no node ${node}.`);
  const side = anchor === 'start' ? 1 : -1;
  const name = words(
    drawn.isNew ? 'text-new' : 'text',
    sheetPoint(at[0] + side * TEXT_GAP, baseline(at[1], NAME_SIZE)),
    nodeWords(picture, node, form),
    { sizeMm: NAME_SIZE, anchor, strong: drawn.kind !== 'joint' },
  );
  return {
    kind: 'group',
    subject: drawn.subject,
    title: `${nodeTitle(drawn, nodeWords(picture, node, form))}${drawn.isNew ? ', new' : ''}, volt drop ${voltsWords(drawn.dropV)}`,
    shapes: [symbolOf(drawn.kind, drawn.isNew, at, drawn.fuseA !== null), name],
  };
}

function symbolOf(kind: string, isNew: boolean, at: SheetPoint, isFused: boolean): Shape {
  const ink = isNew ? 'symbol-new' : 'symbol';
  if (kind === 'joint') return { kind: 'circle', at, radiusMm: 1, ink };
  if (kind === 'unit' || isFused) return box(ink, at, 1.9, 1.5);
  return { kind: 'circle', at, radiusMm: 1.9, ink };
}

const box = (ink: Ink, at: SheetPoint, halfWidth: number, halfHeight: number): Shape =>
  line(
    ink,
    [
      sheetPoint(at[0] - halfWidth, at[1] - halfHeight),
      sheetPoint(at[0] + halfWidth, at[1] - halfHeight),
      sheetPoint(at[0] + halfWidth, at[1] + halfHeight),
      sheetPoint(at[0] - halfWidth, at[1] + halfHeight),
    ],
    true,
  );

/** How a board stands in a picture. */
export interface DrawnBoard {
  readonly at: SheetPoint;
  /** Its device in words; empty where it is not known. */
  readonly rating: string;
  /** `ring`: its name below its middle; `tree`: its name below from its left edge. */
  readonly of: 'ring' | 'tree';
}

/** The board at the foot of a picture, its name below it. */
export function boardGroup(picture: CircuitPicture, { at, rating, of }: DrawnBoard): Shape {
  const { subject = '', label = '' } = picture.nodes[0] ?? {};
  const told = rating === '' ? label : `${label}, ${rating}`;
  const isRing = of === 'ring';
  return {
    kind: 'group',
    subject,
    title: told,
    shapes: [
      box('symbol-solid', at, 6, 2.6),
      words('text', sheetPoint(at[0] - (isRing ? 0 : 6), at[1] + 6.4), told, {
        sizeMm: NAME_SIZE,
        anchor: isRing ? 'middle' : 'start',
        strong: true,
      }),
    ],
  };
}

/** The letters of a ring's two ends, on the board. */
export const endLetters = (at: SheetPoint): readonly Shape[] =>
  (['A', 'B'] as const).map((end, i) =>
    words('text-paper', sheetPoint(at[0] + (i * 2 - 1) * 4, baseline(at[1])), end, {
      sizeMm: LABEL_SIZE,
      anchor: 'middle',
      strong: true,
    }),
  );

/** How the pictures are read: width by current, full and hollow. */
export function legend(at: SheetPoint, hasNew: boolean): readonly Shape[] {
  const samples: { text: string; currentA: number; isNew: boolean }[] = [
    { text: '5 A', currentA: 5, isNew: false },
    { text: '20 A', currentA: 20, isNew: false },
    { text: 'found', currentA: 10, isNew: false },
    ...(hasNew ? [{ text: 'new', currentA: 10, isNew: true }] : []),
  ];
  return samples.flatMap(({ text, currentA, isNew }, i) => {
    const x = at[0] + i * 16;
    const half = widthOf(currentA) / 2;
    const bar = [
      sheetPoint(x, at[1] - half),
      sheetPoint(x + 5, at[1] - half),
      sheetPoint(x + 5, at[1] + half),
      sheetPoint(x, at[1] + half),
    ];
    return [
      line(isNew ? 'symbol-new' : 'wall', bar, true),
      words('text-soft', sheetPoint(x + 6.2, baseline(at[1])), text, { sizeMm: LABEL_SIZE }),
    ];
  });
}
