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
