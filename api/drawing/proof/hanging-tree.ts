import { textWidthMm } from '../label-placer.ts';
import type { CircuitPicture } from './circuit-picture.ts';
import {
  LABEL_SIZE,
  type LabelForm,
  type LabelLine,
  LINE_PITCH,
  labelWidth,
  legLabel,
  NAME_SIZE,
} from './leg-label.ts';
import type { Branch, PictureTree } from './picture-tree.ts';

/** From a lane to the lane of a branch, and between branches from one place. */
const INDENT = 6;
const BESIDE = 3.4;
/** From a lane to its lettering. */
export const TEXT_GAP = 2.6;
/** Height of a name's line. */
export const NAME_HEIGHT = 4.4;

/**
 * A branch of a tree as laid out: y grows away from where the tree hangs, x outward; both from there. All lettering
 * stands outward of its lane.
 */
export interface HungBranch {
  readonly leg: number;
  readonly node: number;
  readonly corners: readonly (readonly [number, number])[];
  readonly at: readonly [number, number];
  readonly label: readonly LabelLine[];
  /** Middle of the first line of the label. */
  readonly labelAt: readonly [number, number];
}

/** A tree as laid out. */
export interface HungTree {
  readonly branches: readonly HungBranch[];
  readonly depth: number;
  readonly width: number;
}

/** How a tree is laid out. */
export interface HangingOptions {
  readonly picture: CircuitPicture;
  readonly tree: PictureTree;
  readonly form: LabelForm;
  /** Units of the scene to a metre of cable, where there is room to be true to it. */
  readonly unitsPerM: number;
  /** True where the first branch may go straight on from the root. */
  readonly isStraight: boolean;
}

/** Words beside a node: its name, and the fuse in it. */
export function nodeWords({ nodes }: CircuitPicture, node: number, form: LabelForm): string {
  const { label = '', fuseA = null } = nodes[node] ?? {};
  return fuseA === null ? label : `${label}, ${fuseA} A${form === 3 ? '' : ' fuse'}`;
}

/** Lays out what hangs from a node: no line of lettering shares its height with another one that it could meet. */
export function hangTree(root: number, options: HangingOptions): HungTree {
  const out: HungBranch[] = [];
  const depth = hang(root, [0, 0], options.isStraight ? 0 : 1.5, { options, out, isRoot: true });
  const width = out.reduce((most, { at, label, node }) => {
    const name = textWidthMm(nodeWords(options.picture, node, options.form), NAME_SIZE);
    return Math.max(most, at[0] + TEXT_GAP + Math.max(labelWidth(label), name));
  }, 0);
  return { branches: out, depth, width };
}

interface Hanging {
  readonly options: HangingOptions;
  readonly out: HungBranch[];
  readonly isRoot: boolean;
}

/** @returns how far down the tree comes. */
function hang(
  node: number,
  from: readonly [number, number],
  top: number,
  { options, out, isRoot }: Hanging,
): number {
  const all = options.tree.branches.get(node) ?? [];
  const mayGoOn = !isRoot || options.isStraight;
  const straight = mayGoOn ? all.at(-1) : undefined;
  const aside = all.filter((branch) => branch !== straight);
  let y = top;
  aside.forEach((branch, i) => {
    const x = from[0] + INDENT + (aside.length - 1 - i) * BESIDE;
    y = place(branch, from, x, y, { options, out, isRoot: false });
  });
  return straight === undefined ? y : place(straight, from, from[0], y, { options, out, isRoot: false });
}

function place(
  { leg, to }: Branch,
  from: readonly [number, number],
  x: number,
  top: number,
  hanging: Hanging,
): number {
  const { picture, form, unitsPerM } = hanging.options;
  const drawn = picture.legs[leg];
  if (drawn === undefined) return top;
  const label = legLabel(drawn, form);
  const room = label.length * LINE_PITCH + 1;
  const length = (drawn.lengthMm / 1000) * unitsPerM - Math.abs(x - from[0]);
  const y = Math.max(top + room, from[1] + length) + NAME_HEIGHT / 2;
  const corners: readonly (readonly [number, number])[] =
    x === from[0] ? [from, [x, y]] : [from, [x, from[1]], [x, y]];
  const first = (top + y - NAME_HEIGHT / 2) / 2 - ((label.length - 1) * LINE_PITCH) / 2;
  hanging.out.push({ leg, node: to, corners, at: [x, y], label, labelAt: [x + TEXT_GAP, first] });
  return hang(to, [x, y], y + NAME_HEIGHT / 2 + 0.6, hanging);
}

/** The height of lettering above the line that it stands on, against its middle. */
export const baseline = (middle: number, size = LABEL_SIZE): number => middle + size * 0.35;
