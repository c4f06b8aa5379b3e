import { inkLooks } from '#drawing/ink.ts';
import { boxRound, type Rectangle } from '#drawing/label-placer.ts';
import { narrowTextBox } from '#drawing/lettering-box.ts';
import type { Scene, Shape } from '#drawing/scene.ts';
import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import { strokesOf } from './symbol-strokes.ts';

type Text = Extract<Shape, { readonly kind: 'text' }>;

/** A sheet's shapes in the order in which they are drawn, those of groups among them. */
const flat = (shapes: readonly Shape[]): readonly Shape[] =>
  shapes.flatMap((shape) => (shape.kind === 'group' ? flat(shape.shapes) : [shape]));

/** The letters themselves: capitals are 0.7 of the body, in the face that the sheet is set in. */
function lettersBox({ at: [x, y], text, sizeMm, anchor, angleDeg }: Text): Rectangle {
  const box = narrowTextBox(sheetPoint(0, 0), text, sizeMm);
  const half = box.rightMm - 0.3;
  const shift = anchor === 'start' ? half : anchor === 'end' ? -half : 0;
  const [up, down] = [sizeMm * 0.68, 0];
  return angleDeg === 0
    ? { leftMm: x + shift - half, rightMm: x + shift + half, topMm: y - up, bottomMm: y - down }
    : { leftMm: x - up, rightMm: x - down, topMm: y - half, bottomMm: y + half };
}

const within = ({ leftMm, rightMm, topMm, bottomMm }: Rectangle, [x, y]: SheetPoint): boolean =>
  x > leftMm && x < rightMm && y > topMm && y < bottomMm;

/** What a shape hides of what was drawn before it, as a box: strips of paper, and the insides of marks. */
function groundOf(shape: Shape): Rectangle | null {
  if (shape.kind === 'circle' && shape.ink === 'halo') {
    const { at, radiusMm } = shape;
    return {
      leftMm: at[0] - radiusMm,
      rightMm: at[0] + radiusMm,
      topMm: at[1] - radiusMm,
      bottomMm: at[1] + radiusMm,
    };
  }
  const covers =
    shape.kind === 'line' && shape.closed && (shape.ink === 'halo' || shape.ink.startsWith('mark-'));
  return covers ? boxRound(shape.points) : null;
}

/** A shape in the order of drawing. */
interface Drawn {
  readonly shape: Shape;
  readonly layer: string;
  readonly strokes: readonly SheetPoint[];
  readonly extent: Rectangle | null;
  readonly ground: Rectangle | null;
}

function drawnOf(shape: Shape, layer: string): Drawn {
  const isStroke =
    shape.kind !== 'text' &&
    shape.kind !== 'group' &&
    inkLooks[shape.ink].stroke !== undefined &&
    !shape.ink.startsWith('halo');
  const strokes = isStroke ? strokesOf(shape) : [];
  const extent = strokes.length === 0 ? null : boxRound(strokes);
  return { shape, layer, strokes, extent, ground: groundOf(shape) };
}

const meet = (one: Rectangle, other: Rectangle | null): boolean =>
  other !== null &&
  one.leftMm < other.rightMm &&
  other.leftMm < one.rightMm &&
  one.topMm < other.bottomMm &&
  other.topMm < one.bottomMm;

/** What spoils a text: strokes through it that no ground parts from it, and grounds laid over it. */
function spoilers(text: Text, i: number, all: readonly Drawn[]): readonly string[] {
  const box = lettersBox(text);
  const over = all.filter((one, k) => k > i && meet(box, one.ground)).map(({ layer }) => layer);
  // An upright's stroke has no width: its box is widened to be met at all.
  const struck = all.flatMap(({ strokes, extent, layer }, k) => {
    if (extent === null || !meet(box, widened(extent))) return [];
    const between = all.slice(k + 1, Math.max(k + 1, i));
    const open = strokes.some(
      (at) => within(box, at) && !between.some(({ ground }) => ground !== null && within(ground, at)),
    );
    return open ? [layer] : [];
  });
  return [...new Set([...over, ...struck])];
}

const widened = ({ leftMm, rightMm, topMm, bottomMm }: Rectangle): Rectangle => ({
  leftMm: leftMm - 0.01,
  rightMm: rightMm + 0.01,
  topMm: topMm - 0.01,
  bottomMm: bottomMm + 0.01,
});

/**
 * Words of a plan that cannot be read for what else is drawn there: a stroke goes over them, or under them with no strip of paper between, or
 * another strip of paper lies on them. A sign's own letters stand clear of its strokes, so they need no exception.
 */
export function struckWords(scene: Scene): readonly string[] {
  const all = scene.layers
    .filter(({ name }) => name !== 'sheet' && name !== 'words')
    .flatMap(({ name, shapes }) => flat(shapes).map((shape) => drawnOf(shape, name)));
  return all.flatMap(({ shape }, i) => {
    if (shape.kind !== 'text') return [];
    const by = spoilers(shape, i, all);
    return by.length === 0 ? [] : [`${scene.title}: ${shape.text} struck by ${by.join(', ')}`];
  });
}
