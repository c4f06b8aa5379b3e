import type { Shape } from '#drawing/scene.ts';
import type { SheetPoint } from '#engine/plan/sheet-frame.ts';

/** A box in units of the scene. */
export interface Extent {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const cableInks: ReadonlySet<string> = new Set(['found', 'found-assumed', 'new', 'removed']);

/** The cable of a group, where it is one: its drawn lines, without halos. */
export function cableLines(shapes: readonly Shape[]): readonly (readonly SheetPoint[])[] {
  return shapes.flatMap((shape) =>
    shape.kind === 'line' && !shape.closed && cableInks.has(shape.ink) ? [shape.points] : [],
  );
}

function cornersOf(shape: Shape): readonly SheetPoint[] {
  if (shape.kind === 'line') return shape.ink === 'halo' ? [] : shape.points;
  return shape.kind === 'circle' || shape.kind === 'arc' ? [shape.at] : [];
}

/** The box round a symbol's drawn shapes, its lettering left out; null where nothing is drawn. */
export function symbolExtent(shapes: readonly Shape[]): Extent | null {
  const all = shapes.flatMap(cornersOf);
  if (all.length === 0) return null;
  const xs = all.map(([x]) => x);
  const ys = all.map(([, y]) => y);
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}

/** A box grown by this much on every side, and to at least this size about its middle. */
export function grown({ x, y, width, height }: Extent, by: number, least: number): Extent {
  const [w, h] = [Math.max(width + 2 * by, least), Math.max(height + 2 * by, least)];
  return { x: x + width / 2 - w / 2, y: y + height / 2 - h / 2, width: w, height: h };
}

/** A symbol that can be pointed at, with how far off it is still meant. */
export interface Target {
  readonly subject: string;
  readonly extent: Extent;
  readonly reach: number;
}

/** The symbol that a place means: of those within reach the nearest, and of equals the one whose middle is nearer. */
export function meantAt(targets: readonly Target[], [x, y]: SheetPoint): string | null {
  let best: { readonly subject: string; readonly off: number; readonly offMiddle: number } | null = null;
  for (const { subject, extent, reach } of targets) {
    const [right, bottom] = [extent.x + extent.width, extent.y + extent.height];
    const off = Math.hypot(Math.max(extent.x - x, 0, x - right), Math.max(extent.y - y, 0, y - bottom));
    if (off > reach) continue;
    const offMiddle = Math.hypot(extent.x + extent.width / 2 - x, extent.y + extent.height / 2 - y);
    if (best === null || off < best.off || (off === best.off && offMiddle < best.offMiddle))
      best = { subject, off, offMiddle };
  }
  return best?.subject ?? null;
}
