import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import type { Shape } from './scene.ts';

type Moved = (at: SheetPoint) => SheetPoint;

function scaled(shape: Shape, moved: Moved, factor: number): Shape {
  switch (shape.kind) {
    case 'line':
      return { ...shape, points: shape.points.map(moved) };
    case 'circle':
    case 'arc':
      return { ...shape, at: moved(shape.at), radiusMm: shape.radiusMm * factor };
    case 'text':
      return { ...shape, at: moved(shape.at), sizeMm: shape.sizeMm * factor };
    case 'group':
      return { ...shape, shapes: shape.shapes.map((one) => scaled(one, moved, factor)) };
  }
}

/** Shapes made larger or smaller about a place, their lettering with them; strokes keep their width. */
export function scaledAbout(shapes: readonly Shape[], about: SheetPoint, factor: number): readonly Shape[] {
  if (factor === 1) return shapes;
  const moved: Moved = (at) =>
    sheetPoint(about[0] + (at[0] - about[0]) * factor, about[1] + (at[1] - about[1]) * factor);
  return shapes.map((shape) => scaled(shape, moved, factor));
}
