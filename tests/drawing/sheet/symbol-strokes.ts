import type { Scene, Shape } from '#drawing/scene.ts';
import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';

/** Strokes are looked at so finely, mm. */
const STEP_MM = 0.2;
/** Layers of a plan whose shapes are signs: accessories, joints and boards, marks of findings and of what is held fast. */
const signLayers: ReadonlySet<string> = new Set(['points', 'findings', 'locks']);

/** A sign of a plan by its strokes, and the letters that belong into it. */
export interface Sign {
  readonly title: string;
  /** Places along all its strokes, mm on paper. */
  readonly strokes: readonly SheetPoint[];
  /** Where its own letters begin, end or have their middle. */
  readonly letters: readonly SheetPoint[];
}

/** The signs of a sheet; none of a sheet of lists. */
export const signsOf = ({ layers }: Scene): readonly Sign[] =>
  layers
    .filter(({ name }) => signLayers.has(name))
    .flatMap(({ name, shapes }) => shapes.map((shape) => signOf(name, shape)));

function signOf(layer: string, shape: Shape): Sign {
  const all = shape.kind === 'group' ? shape.shapes : [shape];
  // A label is drawn last, on a ground that is drawn first: it is no letter of its sign.
  const hasLabel = layer === 'points' && isGround(all[0]) && all.at(-1)?.kind === 'text';
  const own = hasLabel ? all.slice(0, -1) : all;
  return {
    title: shape.kind === 'group' ? shape.title : layer,
    strokes: own.flatMap((each) => (isGround(each) ? [] : strokesOf(each))),
    letters: own.flatMap((each) => (each.kind === 'text' ? [each.at] : [])),
  };
}

const isGround = (shape: Shape | undefined): boolean =>
  shape !== undefined && 'ink' in shape && (shape.ink === 'halo' || shape.ink === 'halo-line');

/** Places along the strokes of a shape, closer together than letters are wide; none of text. */
export function strokesOf(shape: Shape): readonly SheetPoint[] {
  switch (shape.kind) {
    case 'text':
      return [];
    case 'group':
      return shape.shapes.flatMap(strokesOf);
    case 'circle':
      return around(shape.at, shape.radiusMm, 0, 360);
    case 'arc':
      return around(shape.at, shape.radiusMm, shape.fromDeg, shape.toDeg);
    case 'line': {
      const [first] = shape.points;
      const corners = shape.closed && first !== undefined ? [...shape.points, first] : shape.points;
      return corners.flatMap((to, i) => along(corners[i - 1] ?? to, to));
    }
  }
}

function along(from: SheetPoint, to: SheetPoint): readonly SheetPoint[] {
  const steps = Math.max(1, Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1]) / STEP_MM));
  return Array.from({ length: steps + 1 }, (_, i) =>
    sheetPoint(from[0] + ((to[0] - from[0]) * i) / steps, from[1] + ((to[1] - from[1]) * i) / steps),
  );
}

function around(at: SheetPoint, radiusMm: number, fromDeg: number, toDeg: number): readonly SheetPoint[] {
  const sweep = (((toDeg - fromDeg) % 360) + 360) % 360 || 360;
  const steps = Math.max(8, Math.ceil((radiusMm * sweep * Math.PI) / 180 / STEP_MM));
  return Array.from({ length: steps + 1 }, (_, i) => {
    const angle = ((fromDeg + (sweep * i) / steps) * Math.PI) / 180;
    return sheetPoint(at[0] + radiusMm * Math.cos(angle), at[1] + radiusMm * Math.sin(angle));
  });
}
