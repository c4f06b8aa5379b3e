import { sheetPoint } from '#engine/plan/sheet-frame.ts';
import type { DrawnLeg, DrawnNode } from './diagram-shapes.ts';
import type { HungTree } from './hanging-tree.ts';
import { type LabelForm, LINE_PITCH } from './leg-label.ts';

/** Where a tree hangs, which way outward is, and whether it grows up the sheet. */
export interface Hook {
  readonly side: -1 | 1;
  readonly x: number;
  readonly y: number;
  readonly isUp: boolean;
  readonly form: LabelForm;
}

/** A tree on the sheet. */
export interface Hung {
  readonly legs: readonly DrawnLeg[];
  readonly nodes: readonly DrawnNode[];
}

/** Brings a tree on to the sheet. */
export function hungOn(tree: HungTree, { side, x, y, isUp, form }: Hook): Hung {
  const on = ([dx, dy]: readonly [number, number]) => sheetPoint(x + side * dx, y + (isUp ? -dy : dy));
  const anchor = side > 0 ? 'start' : 'end';
  return {
    legs: tree.branches.map(({ leg, corners, label, labelAt }) => {
      // Lines are read downward, whichever way the tree grows.
      const first = isUp ? labelAt[1] + (label.length - 1) * LINE_PITCH : labelAt[1];
      return { leg, path: corners.map(on), label, labelAt: on([labelAt[0], first]), anchor };
    }),
    nodes: tree.branches.map(({ node, at }) => ({ node, at: on(at), anchor, form })),
  };
}
