import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import { textWidthMm } from '../label-placer.ts';
import { rounded } from './cable-band.ts';
import type { CircuitPicture } from './circuit-picture.ts';
import { type HungTree, hangTree, NAME_HEIGHT, nodeWords, TEXT_GAP } from './hanging-tree.ts';
import { type LabelForm, LINE_PITCH, labelWidth, legLabel, NAME_SIZE } from './leg-label.ts';
import { pictureTree } from './picture-tree.ts';

const MARGIN = 3;
/** Least room for lettering on each side within the loop: the board must have its place. */
const NARROWEST_COLUMN = 9;
/** Radius of the loop's corners. */
const CORNER = 6;
/** Room above the loop for the mark of the worst leg. */
const HEAD = 6;

/** The forms of lettering from the widest to the narrowest: on the loop, and on what hangs from it. */
const forms: readonly (readonly [LabelForm, LabelForm])[] = [
  [1, 1],
  [1, 2],
  [2, 2],
  [2, 3],
  [3, 3],
];

/** A ring node's place on its side of the loop. */
export interface RingPlace {
  readonly node: number;
  readonly y: number;
  readonly side: -1 | 1;
  readonly tree: HungTree;
}

/** Where everything of a ring lies on the sheet. */
export interface RingLayout {
  readonly widthMm: number;
  readonly leftX: number;
  readonly rightX: number;
  readonly topY: number;
  readonly footY: number;
  readonly places: readonly RingPlace[];
  /** By leg in the ring's order: its path from end A on. */
  readonly paths: readonly (readonly SheetPoint[])[];
  /** Of lettering on the loop, and on what hangs from it. */
  readonly form: LabelForm;
  readonly treeForm: LabelForm;
  /** In the ring's order, which leg crosses from the left side to the right. */
  readonly crossing: number;
}

/** What is asked of a picture. */
export interface DiagramRequest {
  readonly widthMm: number;
  /** Units of the scene to a metre of cable, where there is room to be true to it. */
  readonly unitsPerM: number;
  /** The device at the board, in words: "32 A"; empty where it is not known. */
  readonly rating: string;
}

interface Sized {
  readonly picture: CircuitPicture;
  readonly trees: readonly HungTree[];
  readonly form: LabelForm;
  readonly treeForm: LabelForm;
  readonly split: number;
  readonly leftWidth: number;
  readonly rightWidth: number;
  readonly column: number;
}

/** Lays out a ring in the width that is asked for, or in the least that it needs. */
export function ringLayout(picture: CircuitPicture, size: DiagramRequest): RingLayout | null {
  const { ring } = picture;
  if (ring === null) return null;
  const split = halfWay(picture, ring);
  const sized = forms.map(([form, treeForm]) => sizedAs(picture, split, form, treeForm, size.unitsPerM));
  const needed = ({ leftWidth, rightWidth, column }: Sized): number =>
    2 * MARGIN + leftWidth + rightWidth + 2 * column + 4;
  const fits = sized.find((one) => needed(one) <= size.widthMm) ?? sized.at(-1);
  if (fits === undefined) return null;
  return placed(fits, Math.max(size.widthMm, needed(fits)), size.unitsPerM);
}

/** How many of the ring's nodes lie in its first half by length. */
function halfWay({ legs }: CircuitPicture, ring: NonNullable<CircuitPicture['ring']>): number {
  const lengths = ring.legs.map((leg) => legs[leg]?.lengthMm ?? 0);
  const half = lengths.reduce((sum, length) => sum + length, 0) / 2;
  let walked = 0;
  const count = ring.nodes.filter((_, i) => {
    walked += lengths[i] ?? 0;
    return walked <= half;
  }).length;
  // One on each side at least, where there are two: else half the loop would be bare.
  return Math.min(Math.max(count, 1), Math.max(1, ring.nodes.length - 1));
}

function sizedAs(
  picture: CircuitPicture,
  split: number,
  form: LabelForm,
  treeForm: LabelForm,
  unitsPerM: number,
): Sized {
  const { ring, legs } = picture;
  const tree = pictureTree(picture);
  const trees = (ring?.nodes ?? []).map((node) =>
    hangTree(node, { picture, tree, form: treeForm, unitsPerM, isStraight: false }),
  );
  const widest = (some: readonly HungTree[]): number => Math.max(0, ...some.map(({ width }) => width));
  const names = (ring?.nodes ?? []).map((node) => textWidthMm(nodeWords(picture, node, form), NAME_SIZE));
  const labels = (ring?.legs ?? [])
    .flatMap((leg) => legs[leg] ?? [])
    .map((leg) => labelWidth(legLabel(leg, form)));
  return {
    picture,
    trees,
    form,
    treeForm,
    split,
    leftWidth: Math.max(3, widest(trees.slice(0, split))),
    rightWidth: Math.max(3, widest(trees.slice(split))),
    column: TEXT_GAP + Math.max(NARROWEST_COLUMN, ...names, ...labels),
  };
}

/** Distances up one side, from the foot: to each node in its order from the board. */
function climb(
  { picture, trees, form }: Sized,
  order: readonly number[],
  legsBefore: readonly number[],
  unitsPerM: number,
): readonly number[] {
  let y = 0;
  return order.map((place, i) => {
    const leg = picture.legs[picture.ring?.legs[legsBefore[i] ?? 0] ?? 0];
    const label = leg === undefined ? 0 : legLabel(leg, form).length * LINE_PITCH;
    const least = NAME_HEIGHT + label + (i === 0 ? CORNER - NAME_HEIGHT / 2 : 1);
    const hung = trees[place]?.depth ?? 0;
    y += Math.max(
      least,
      hung === 0 ? 0 : hung + (i === 0 ? 1 : 3.5),
      ((leg?.lengthMm ?? 0) / 1000) * unitsPerM,
    );
    return y;
  });
}

function placed(sized: Sized, widthMm: number, unitsPerM: number): RingLayout {
  const { picture, trees, split, leftWidth, rightWidth, form, treeForm } = sized;
  const nodes = picture.ring?.nodes ?? [];
  const legs = picture.ring?.legs ?? [];
  const spare = widthMm - (2 * MARGIN + leftWidth + rightWidth + 2 * sized.column + 4);
  // A loop that is very wide for its height is no easier to read: what is left over goes to the sides.
  const aside = Math.max(0, spare - 40) / 2;
  const leftX = MARGIN + leftWidth + aside;
  const rightX = widthMm - MARGIN - rightWidth - aside;
  const left = nodes.slice(0, split).map((_, i) => i);
  const right = nodes.slice(split).map((_, i) => nodes.length - 1 - i);
  const leftClimb = climb(sized, left, left, unitsPerM);
  const rightClimb = climb(
    sized,
    right,
    right.map((i) => i + 1),
    unitsPerM,
  );
  const crossing = picture.legs[legs[split] ?? 0];
  const room = CORNER + 1 + (crossing === undefined ? 0 : legLabel(crossing, form).length * LINE_PITCH);
  const heights = [leftClimb.at(-1) ?? 0, rightClimb.at(-1) ?? 0];
  const height = Math.max(...heights) + room + NAME_HEIGHT / 2;
  const [topY, footY] = [HEAD, HEAD + height];
  const yOf = new Map<number, number>([
    ...left.map((place, i): [number, number] => [place, footY - (leftClimb[i] ?? 0)]),
    ...right.map((place, i): [number, number] => [place, footY - (rightClimb[i] ?? 0)]),
  ]);
  const places = nodes.map((node, i): RingPlace => {
    const tree = trees[i] ?? { branches: [], depth: 0, width: 0 };
    return { node, y: yOf.get(i) ?? footY, side: i < split ? -1 : 1, tree };
  });
  const box = { leftX, rightX, topY, footY };
  const paths = legs.map((_, i) => pathOf(i, places, box));
  return { widthMm, ...box, places, paths, form, treeForm, crossing: split };
}

type LoopBox = Pick<RingLayout, 'leftX' | 'rightX' | 'topY' | 'footY'>;

/** A corner of the loop with what goes into it and comes out of it. */
function cornerOf(
  x: number,
  y: number,
  into: readonly [number, number],
  out: readonly [number, number],
): readonly SheetPoint[] {
  const at = (by: readonly [number, number]): SheetPoint =>
    sheetPoint(x + by[0] * CORNER, y + by[1] * CORNER);
  return rounded(at(into), sheetPoint(x, y), at(out));
}

function pathOf(
  leg: number,
  places: readonly RingPlace[],
  { leftX, rightX, topY, footY }: LoopBox,
): readonly SheetPoint[] {
  const laneOf = (place: RingPlace): SheetPoint => sheetPoint(place.side < 0 ? leftX : rightX, place.y);
  const before = places[leg - 1];
  const after = places[leg];
  const middleX = (leftX + rightX) / 2;
  const start = before === undefined ? sheetPoint(middleX, footY) : laneOf(before);
  const end = after === undefined ? sheetPoint(middleX, footY) : laneOf(after);
  const corners = [
    ...(before === undefined ? cornerOf(leftX, footY, [1, 0], [0, -1]) : []),
    ...((before?.side ?? -1) < 0 && (after?.side ?? 1) > 0
      ? [...cornerOf(leftX, topY, [0, 1], [1, 0]), ...cornerOf(rightX, topY, [-1, 0], [0, 1])]
      : []),
    ...(after === undefined ? cornerOf(rightX, footY, [0, -1], [-1, 0]) : []),
  ];
  return [start, ...corners, end];
}
