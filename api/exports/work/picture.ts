import type { Content } from 'pdfmake/interfaces.js';
import { tokens } from '#drawing/ink.ts';
import type { Scene } from '#drawing/scene.ts';
import { svgOf } from '#drawing/svg.ts';
import { mm } from '../quotation/pdf-parts.ts';

/** A scene on a page as vectors, as wide as it is unless that is more than there is room for. Lettering stands on strips of the sheet's colour, which in print is white. */
export const picture = (scene: Scene, roomMm: number): Content => ({
  svg: svgOf(scene).replaceAll(tokens.sheet, '#ffffff'),
  width: mm(Math.min(scene.widthMm, roomMm)),
  margin: [0, 2, 0, 6],
});
