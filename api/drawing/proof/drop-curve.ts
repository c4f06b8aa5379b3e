import type { CircuitPicture } from './circuit-picture.ts';
import { pictureTree } from './picture-tree.ts';

/** Where along the cable a node is, mm from the board; of a ring from end A. */
export interface CurveNode {
  readonly node: number;
  readonly alongMm: number;
  readonly dropV: number;
  /** True where it hangs from the ring. */
  readonly isSpur: boolean;
}

/** A cable between two places of the curve; `node` is null for a ring's end B at the board. */
export interface CurveLeg {
  readonly leg: number;
  readonly from: readonly [alongMm: number, dropV: number];
  readonly to: readonly [alongMm: number, dropV: number];
  readonly isSpur: boolean;
}

/** The volt drop along a circuit. */
export interface DropCurve {
  readonly nodes: readonly CurveNode[];
  readonly legs: readonly CurveLeg[];
  /** The ring's whole length, or how far the furthest point is. */
  readonly lengthMm: number;
}

/**
 * Unrolls a circuit along its cable: a ring from end A to end B, its spurs as branches toward the middle of the picture,
 * anything else from the board outward.
 */
export function dropCurve(picture: CircuitPicture): DropCurve {
  const { ring, legs, nodes } = picture;
  const tree = pictureTree(picture);
  const out: CurveNode[] = [];
  const curve: CurveLeg[] = [];
  const dropOf = (node: number): number => nodes[node]?.dropV ?? 0;
  const hang = (root: number, alongMm: number, toward: 1 | -1): void => {
    for (const { leg, to } of tree.branches.get(root) ?? []) {
      const at = alongMm + toward * (legs[leg]?.lengthMm ?? 0);
      const isSpur = ring !== null;
      curve.push({ leg, from: [alongMm, dropOf(root)], to: [at, dropOf(to)], isSpur });
      out.push({ node: to, alongMm: at, dropV: dropOf(to), isSpur });
      hang(to, at, toward);
    }
  };
  const lengths = (ring?.legs ?? []).map((leg) => legs[leg]?.lengthMm ?? 0);
  const totalMm = lengths.reduce((sum, length) => sum + length, 0);
  let walked = 0;
  ring?.legs.forEach((leg, i) => {
    const before = ring.nodes[i - 1] ?? 0;
    const after = ring.nodes[i];
    const start = walked;
    walked += lengths[i] ?? 0;
    const drop = after === undefined ? 0 : dropOf(after);
    curve.push({ leg, from: [start, dropOf(before)], to: [walked, drop], isSpur: false });
    if (after === undefined) return;
    out.push({ node: after, alongMm: walked, dropV: drop, isSpur: false });
    hang(after, walked, walked <= totalMm / 2 ? 1 : -1);
  });
  hang(0, 0, 1);
  return { nodes: out, legs: curve, lengthMm: Math.max(totalMm, ...out.map(({ alongMm }) => alongMm)) };
}
