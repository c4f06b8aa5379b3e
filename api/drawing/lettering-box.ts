import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import { type Rectangle, textBox } from './label-placer.ts';
import type { Shape } from './scene.ts';

type Lettering = Extract<Shape, { readonly kind: 'text' }>;

/** The narrow face, which is at hand on screen, against the wider ones that a sheet is laid out for. */
const NARROW = 0.85;

/** The room that lettering about its middle takes in the narrow face: the placer reckons with wider ones. */
export const narrowTextBox = (at: SheetPoint, text: string, sizeMm: number): Rectangle =>
  textBox(at, text, sizeMm * NARROW);

/** The rectangle that level or upright lettering about its middle takes on screen, units of the scene. */
export function letteringBox({ at: [x, y], text, sizeMm, angleDeg }: Lettering): Rectangle {
  const isUpright = angleDeg !== 0;
  const rise = sizeMm * 0.35;
  const { rightMm: half, bottomMm: halfUp } = narrowTextBox(sheetPoint(0, 0), text, sizeMm);
  const [midX, midY] = isUpright ? [x - rise, y] : [x, y - rise];
  const [across, up] = isUpright ? [halfUp, half] : [half, halfUp];
  return { leftMm: midX - across, rightMm: midX + across, topMm: midY - up, bottomMm: midY + up };
}
