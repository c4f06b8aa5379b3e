import { fromSheet, type SheetFrame, type SheetPoint } from '#engine/plan/sheet-frame.ts';
import type { Ink, Shape } from '../scene.ts';
import type { DraftLayer, DraftPoint, DraftThing } from './draft.ts';

/** Capitals of a face are so much of its size high. Common practice, no source: 0.7 of most faces without serifs. */
const CAPITALS = 0.7;

/** The layer that a stroke or a text goes to; null for what only covers what lies behind it on paper. */
export type LayerOf = (ink: Ink) => DraftLayer | null;

/** Brings shapes on a sheet back into the house, at true size, on level 0. */
export function draftOfShapes(
  frame: SheetFrame,
  shapes: readonly Shape[],
  layerOf: LayerOf,
): readonly DraftThing[] {
  return shapes.flatMap((shape) => {
    if (shape.kind === 'group') return draftOfShapes(frame, shape.shapes, layerOf);
    const layer = layerOf(shape.ink);
    return layer === null ? [] : thingsOf(frame, shape, layer);
  });
}

const placed = (frame: SheetFrame, at: SheetPoint): DraftPoint => {
  const [xMm, yMm] = fromSheet(frame, at);
  return [xMm, yMm, 0];
};

function thingsOf(
  frame: SheetFrame,
  shape: Exclude<Shape, { kind: 'group' }>,
  layer: DraftLayer,
): readonly DraftThing[] {
  switch (shape.kind) {
    case 'line':
      return [
        {
          kind: 'line',
          layer,
          points: shape.points.map((at) => placed(frame, at)),
          closed: shape.closed,
        },
      ];
    case 'circle':
      return [{ kind: 'circle', layer, at: placed(frame, shape.at), radiusMm: shape.radiusMm * frame.scale }];
    case 'arc':
      return arcThings(frame, shape, layer);
    case 'text':
      return [
        {
          kind: 'text',
          layer,
          at: placed(frame, shape.at),
          heightMm: shape.sizeMm * CAPITALS * frame.scale,
          text: shape.text,
          anchor: shape.anchor,
          angleDeg: -shape.angleDeg,
        },
      ];
  }
}

/** What turns clockwise on paper, whose y goes down, turns anticlockwise from its other end on plan. */
function arcThings(
  frame: SheetFrame,
  { at, radiusMm, fromDeg, toDeg, closed }: Extract<Shape, { kind: 'arc' }>,
  layer: DraftLayer,
): readonly DraftThing[] {
  const middle = placed(frame, at);
  const radius = radiusMm * frame.scale;
  const arc = { kind: 'arc', layer, at: middle, radiusMm: radius, fromDeg: -toDeg, toDeg: -fromDeg } as const;
  const end = (deg: number): DraftPoint => {
    const radians = (-deg * Math.PI) / 180;
    return [middle[0] + radius * Math.cos(radians), middle[1] + radius * Math.sin(radians), 0];
  };
  return closed ? [arc, { kind: 'line', layer, points: [end(fromDeg), end(toDeg)], closed: false }] : [arc];
}
