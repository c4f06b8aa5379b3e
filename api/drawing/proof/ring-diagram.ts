import { sheetPoint } from '#engine/plan/sheet-frame.ts';
import type { Scene } from '../scene.ts';
import type { CircuitPicture } from './circuit-picture.ts';
import { diagramScene } from './diagram-scene.ts';
import type { DrawnLeg, DrawnNode } from './diagram-shapes.ts';
import { NAME_HEIGHT, TEXT_GAP } from './hanging-tree.ts';
import { hungOn } from './hung-on.ts';
import { LINE_PITCH, legLabel } from './leg-label.ts';
import { type DiagramRequest, type RingLayout, ringLayout } from './ring-layout.ts';
import { treeDiagram } from './tree-diagram.ts';

/**
 * A circuit as it is wired: a ring as a closed loop with the board at its foot, end A on the left, its points in order
 * at distances by the length of cable (short cables get the room that their lettering needs), and spurs hanging
 * outward; anything else as a tree that grows from the board. Each cable is as wide as its current.
 */
export function circuitDiagram(picture: CircuitPicture, request: DiagramRequest): Scene {
  const layout = ringLayout(picture, request);
  return layout === null ? treeDiagram(picture, request) : ringScene(picture, layout, request.rating);
}

function ringScene(picture: CircuitPicture, layout: RingLayout, rating: string): Scene {
  const { leftX, rightX, footY, widthMm } = layout;
  const hung = layout.places.map((place) =>
    hungOn(place.tree, {
      side: place.side,
      x: place.side < 0 ? leftX : rightX,
      y: place.y,
      isUp: false,
      form: layout.treeForm,
    }),
  );
  const legs = [...ringLegs(picture, layout), ...hung.flatMap((one) => one.legs)];
  const nodes: DrawnNode[] = layout.places.map(({ node, y, side }) => ({
    node,
    at: sheetPoint(side < 0 ? leftX : rightX, y),
    // Names stand within the loop: outside it there may be a spur.
    anchor: side < 0 ? 'start' : 'end',
    form: layout.form,
  }));
  return diagramScene(picture, {
    of: 'ring',
    widthMm,
    boardAt: sheetPoint((leftX + rightX) / 2, footY),
    rating,
    legs,
    nodes: [...nodes, ...hung.flatMap((one) => one.nodes)],
  });
}

function ringLegs(
  picture: CircuitPicture,
  { places, paths, form, leftX, rightX, topY, footY, crossing }: RingLayout,
): readonly DrawnLeg[] {
  return (picture.ring?.legs ?? []).map((leg, i): DrawnLeg => {
    const drawn = picture.legs[leg];
    const label = drawn === undefined ? [] : legLabel(drawn, form);
    const path = paths[i] ?? [];
    if (i === crossing)
      return { leg, path, label, labelAt: sheetPoint((leftX + rightX) / 2, topY + 4.4), anchor: 'middle' };
    const isLeft = i < crossing;
    const [below, above] = isLeft ? [places[i - 1]?.y, places[i]?.y] : [places[i]?.y, places[i - 1]?.y];
    const low = below === undefined ? footY - 4.6 : below - NAME_HEIGHT / 2;
    const high = (above ?? topY) + NAME_HEIGHT / 2;
    const first = (low + high) / 2 - ((label.length - 1) * LINE_PITCH) / 2;
    const side = isLeft ? 1 : -1;
    return {
      leg,
      path,
      label,
      labelAt: sheetPoint((isLeft ? leftX : rightX) + side * TEXT_GAP, first),
      anchor: isLeft ? 'start' : 'end',
    };
  });
}
