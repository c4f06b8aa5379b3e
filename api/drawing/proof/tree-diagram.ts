import { sheetPoint } from '#engine/plan/sheet-frame.ts';
import type { Scene } from '../scene.ts';
import type { CircuitPicture } from './circuit-picture.ts';
import { diagramScene } from './diagram-scene.ts';
import { hangTree } from './hanging-tree.ts';
import { hungOn } from './hung-on.ts';
import type { LabelForm } from './leg-label.ts';
import { pictureTree } from './picture-tree.ts';
import type { DiagramRequest } from './ring-layout.ts';

const LEFT = 12;
const HEAD = 6;
const forms: readonly LabelForm[] = [1, 2, 3];

/** A circuit that is no ring, as a tree that grows from the board at the foot. */
export function treeDiagram(picture: CircuitPicture, { widthMm, unitsPerM, rating }: DiagramRequest): Scene {
  const tree = pictureTree(picture);
  const all = forms.map((form) => ({
    form,
    hung: hangTree(0, { picture, tree, form, unitsPerM, isStraight: true }),
  }));
  const fits = all.find(({ hung }) => LEFT + hung.width + 4 <= widthMm) ?? all.at(-1);
  const { branches, depth, width } = fits?.hung ?? { branches: [], depth: 0, width: 0 };
  const form = fits?.form ?? 1;
  const wide = Math.max(widthMm, LEFT + width + 4);
  // The board is a box: what grows out of it begins at its upper edge.
  const footY = HEAD + depth + 4;
  const { legs, nodes } = hungOn(
    { branches, depth, width },
    { side: 1, x: LEFT, y: footY - 2.6, isUp: true, form },
  );
  return diagramScene(picture, {
    of: 'tree',
    widthMm: wide,
    boardAt: sheetPoint(LEFT, footY),
    rating,
    legs,
    nodes,
  });
}
