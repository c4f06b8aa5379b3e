import { textWidthMm } from '#drawing/label-placer.ts';
import type { Scene, Shape } from '#drawing/scene.ts';

export type Group = Extract<Shape, { kind: 'group' }>;
export type Text = Extract<Shape, { kind: 'text' }>;

/** The things of a layer. */
export const groupsOf = ({ layers }: Scene, name: string): readonly Group[] =>
  (layers.find((layer) => layer.name === name)?.shapes ?? []).filter(
    (shape): shape is Group => shape.kind === 'group',
  );

const flat = (shapes: readonly Shape[]): readonly Shape[] =>
  shapes.flatMap((shape) => (shape.kind === 'group' ? flat(shape.shapes) : [shape]));

/** All lettering of a picture. */
export const textsOf = ({ layers }: Scene): readonly Text[] =>
  layers.flatMap(({ shapes }) => flat(shapes)).filter((shape): shape is Text => shape.kind === 'text');

/** The box that a line of lettering takes: its capitals and its width. */
export function boxOf({ at: [x, y], text, sizeMm, anchor }: Text): readonly [number, number, number, number] {
  const width = textWidthMm(text, sizeMm);
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
  return [left, y - sizeMm * 0.72, left + width, y];
}

/** Pairs of lettering that run into each other. */
export function overlaps(scene: Scene): readonly string[] {
  const all = textsOf(scene).map((text) => ({ text: text.text, box: boxOf(text) }));
  return all.flatMap((one, i) =>
    all.slice(i + 1).flatMap((other) => {
      const across = Math.min(one.box[2], other.box[2]) - Math.max(one.box[0], other.box[0]);
      const down = Math.min(one.box[3], other.box[3]) - Math.max(one.box[1], other.box[1]);
      return across > 0.05 && down > 0.05 ? [`${one.text} | ${other.text}`] : [];
    }),
  );
}

/** Lettering that leaves the sheet. */
export const outside = (scene: Scene): readonly string[] =>
  textsOf(scene)
    .filter((text) => {
      const [left, top, right, bottom] = boxOf(text);
      return left < -0.01 || top < 0 || right > scene.widthMm + 0.01 || bottom > scene.heightMm;
    })
    .map(({ text }) => text);
