import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import type { Scene } from '../scene.ts';
import type { CircuitPicture } from './circuit-picture.ts';
import {
  boardGroup,
  type DrawnLeg,
  type DrawnNode,
  endLetters,
  legend,
  legGroup,
  nodeGroup,
} from './diagram-shapes.ts';
import { noteRows } from './note-rows.ts';

/** Room under the circuit for the board's name and the legend, without notes and above them. */
const FOOT = 18;
const FOOT_WITH_NOTES = 22;

/** A circuit laid out: where everything of it stands. */
export interface LaidOut {
  readonly of: 'ring' | 'tree';
  readonly widthMm: number;
  /** The board, at the foot. */
  readonly boardAt: SheetPoint;
  readonly rating: string;
  readonly legs: readonly DrawnLeg[];
  readonly nodes: readonly DrawnNode[];
}

/** The picture of a circuit that was laid out: cables, points with the board, the legend, and what no cable reaches. */
export function diagramScene(
  picture: CircuitPicture,
  { of, widthMm, boardAt, rating, legs, nodes }: LaidOut,
): Scene {
  const [, footY] = boardAt;
  const hasNew = picture.legs.some(({ isNew }) => isNew);
  const note = noteRows(picture, { leftMm: 4, topMm: footY + FOOT_WITH_NOTES, widthMm: widthMm - 8 });
  return {
    title: `${of === 'ring' ? 'Ring' : 'Circuit'}: ${picture.nodes[0]?.label ?? ''}`,
    widthMm,
    heightMm: footY + (note.shapes.length === 0 ? FOOT : FOOT_WITH_NOTES + note.heightMm),
    scale: null,
    layers: [
      { name: 'cables', shapes: legs.map((leg) => legGroup(picture, leg)) },
      {
        name: 'points',
        shapes: [
          ...nodes.map((node) => nodeGroup(picture, node)),
          boardGroup(picture, { at: boardAt, rating, of }),
        ],
      },
      {
        name: 'legend',
        shapes: [...(of === 'ring' ? endLetters(boardAt) : []), ...legend(sheetPoint(4, footY + 14), hasNew)],
      },
      { name: 'notes', shapes: note.shapes },
    ],
  };
}
