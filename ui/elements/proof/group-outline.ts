import { textWidthMm } from '#drawing/label-placer.ts';
import type { Scene, Shape } from '#drawing/scene.ts';
import { type Extent, grown } from '../plan/group-extent.ts';
import { linePath } from '../plan/shape-template.ts';

/** A thing of a picture. */
export type PictureGroup = Extract<Shape, { kind: 'group' }>;

/** The things of a picture in the order in which the keyboard comes to them: points, then cables, then all others. */
export const groupsInOrder = ({ layers }: Scene): readonly PictureGroup[] =>
  ['points', 'cables', 'readings', 'notes'].flatMap((name) =>
    (layers.find((layer) => layer.name === name)?.shapes ?? []).filter(
      (shape): shape is PictureGroup => shape.kind === 'group',
    ),
  );

/** Least size of what a finger must hit, in units of the picture: 44 px. */
const FINGER = 8.8;

/** The lines that a cable is drawn by. */
const cablePaths = ({ shapes }: PictureGroup): readonly string[] =>
  shapes.flatMap((shape) =>
    shape.kind === 'line' && shape.ink !== 'opening' ? [linePath(shape.points, shape.closed)] : [],
  );

function cornersOf(shape: Shape): readonly (readonly [number, number])[] {
  if (shape.kind === 'line') return shape.points;
  if (shape.kind === 'text') {
    const width = textWidthMm(shape.text, shape.sizeMm);
    const [x, y] = shape.at;
    const left = shape.anchor === 'start' ? x : shape.anchor === 'end' ? x - width : x - width / 2;
    return [
      [left, y - shape.sizeMm * 0.8],
      [left + width, y + shape.sizeMm * 0.2],
    ];
  }
  if (shape.kind === 'group') return [];
  const [x, y] = shape.at;
  return [
    [x - shape.radiusMm, y - shape.radiusMm],
    [x + shape.radiusMm, y + shape.radiusMm],
  ];
}

/** The box round some shapes, lettering with them. */
function extentOf(shapes: readonly Shape[]): Extent {
  const all = shapes.flatMap(cornersOf);
  const [xs, ys] = [all.map(([x]) => x), all.map(([, y]) => y)];
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}

const isSymbol = (shape: Shape): boolean =>
  shape.kind === 'circle' || (shape.kind === 'line' && shape.closed);

/** How the outline of a thing is drawn: along its cable, or as a box. */
export type GroupOutline =
  | { readonly kind: 'paths'; readonly paths: readonly string[] }
  | { readonly kind: 'box'; readonly ring: Extent; readonly hit: Extent };

/** What lights up of a thing, and where it can be touched. */
export function outlineOf(layer: string, group: PictureGroup): GroupOutline {
  if (layer === 'cables') return { kind: 'paths', paths: cablePaths(group) };
  const symbols = layer === 'points' ? group.shapes.filter(isSymbol) : group.shapes;
  const extent = extentOf(symbols);
  if (layer === 'points')
    return { kind: 'box', ring: grown(extent, 0.9, 4), hit: grown(extent, 0.5, FINGER) };
  return { kind: 'box', ring: grown(extent, 0.6, 0), hit: grown(extent, 0.6, 0) };
}
