import { nothing, type SVGTemplateResult, svg } from 'lit';
import type { Shape } from '#drawing/scene.ts';
import type { SheetPoint } from '#engine/plan/sheet-frame.ts';

const pair = (at: SheetPoint): string => `${at[0].toFixed(2)} ${at[1].toFixed(2)}`;

/** The path of a line through its corners. */
export const linePath = (points: readonly SheetPoint[], closed: boolean): string =>
  `M${points.map(pair).join('L')}${closed ? 'z' : ''}`;

function arcPath(shape: Extract<Shape, { kind: 'arc' }>): string {
  const on = (deg: number): string => {
    const radians = (deg * Math.PI) / 180;
    return `${(shape.at[0] + shape.radiusMm * Math.cos(radians)).toFixed(2)} ${(shape.at[1] + shape.radiusMm * Math.sin(radians)).toFixed(2)}`;
  };
  const large = shape.toDeg - shape.fromDeg > 180 ? 1 : 0;
  return `M${on(shape.fromDeg)}A${shape.radiusMm} ${shape.radiusMm} 0 ${large} 1 ${on(shape.toDeg)}${shape.closed ? 'z' : ''}`;
}

/** A whole circle, as two halves: an arc that ends where it begins is none. */
function circlePath([x, y]: SheetPoint, radius: number): string {
  const to = (along: number): string => `${(x + along).toFixed(2)} ${y.toFixed(2)}`;
  const half = `A${radius} ${radius} 0 0 1`;
  return `M${to(-radius)}${half} ${to(radius)}${half} ${to(-radius)}z`;
}

/** The outline of a shape as the data of a path; lettering and groups have none of their own. */
export function shapePath(shape: Extract<Shape, { kind: 'line' | 'circle' | 'arc' }>): string {
  if (shape.kind === 'line') return linePath(shape.points, shape.closed);
  return shape.kind === 'arc' ? arcPath(shape) : circlePath(shape.at, shape.radiusMm);
}

function textTemplate(shape: Extract<Shape, { kind: 'text' }>): SVGTemplateResult {
  const [x, y] = shape.at;
  return svg`<text class=${shape.ink} x=${x} y=${y} font-size=${shape.sizeMm} text-anchor=${shape.anchor}
    font-weight=${shape.strong ? 600 : nothing}
    transform=${shape.angleDeg === 0 ? nothing : `rotate(${shape.angleDeg} ${x} ${y})`}>${shape.text}</text>`;
}

/** One shape of a scene as SVG; a group only as its shapes, since what it means is the caller's. */
export function shapeTemplate(shape: Shape): SVGTemplateResult {
  switch (shape.kind) {
    case 'line':
      return svg`<path class=${shape.ink} stroke-linejoin="round" d=${linePath(shape.points, shape.closed)}/>`;
    case 'circle':
      return svg`<circle class=${shape.ink} cx=${shape.at[0]} cy=${shape.at[1]} r=${shape.radiusMm}/>`;
    case 'arc':
      return svg`<path class=${shape.ink} d=${arcPath(shape)}/>`;
    case 'text':
      return textTemplate(shape);
    case 'group':
      return svg`${shape.shapes.map(shapeTemplate)}`;
  }
}
