import type { Content } from 'pdfmake/interfaces.js';
import type { Scene } from '#drawing/scene.ts';
import { svgOf } from '#drawing/svg.ts';
import { mm, onWhite } from '../quotation/pdf-parts.ts';

/** A scene on a page as vectors, as wide as it is unless that is more than there is room for. */
export const picture = (scene: Scene, roomMm: number): Content => ({
  svg: onWhite(svgOf(scene)),
  width: mm(Math.min(scene.widthMm, roomMm)),
  margin: [0, 2, 0, 6],
});
