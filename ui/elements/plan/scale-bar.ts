import { html, svg, type TemplateResult } from 'lit';
import { PX_PER_UNIT } from './plan-window.ts';

/** Lengths that a bar may have, mm in the house. */
const lengthsMm = [100, 200, 500, 1000, 2000, 5000, 10_000, 20_000, 50_000];
const LONGEST_PX = 120;

/** The longest round length that a bar of no more than 120 px can show at a scale, and its px. */
export function barAt(scale: number): { readonly lengthMm: number; readonly px: number } {
  const pxOf = (lengthMm: number): number => (lengthMm / scale) * PX_PER_UNIT;
  const lengthMm = lengthsMm.findLast((one) => pxOf(one) <= LONGEST_PX) ?? 100;
  return { lengthMm, px: pxOf(lengthMm) };
}

/** A scale bar with its length in words. */
export function scaleBarTemplate(scale: number): TemplateResult {
  const { lengthMm, px } = barAt(scale);
  const words = lengthMm < 1000 ? `${lengthMm} mm` : `${lengthMm / 1000} m`;
  const end = px + 1;
  return html`<span class="scale"
    ><svg width=${px + 2} height="10" aria-hidden="true">
      ${svg`<path d=${`M1 1V9M1 5H${end}M${end} 1V9M${1 + px / 2} 3V7`}/>`}</svg
    ><span class="visually-hidden">Scale bar: </span>${words}</span
  >`;
}
