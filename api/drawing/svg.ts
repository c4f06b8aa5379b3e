import type { SheetPoint } from '#engine/plan/sheet-frame.ts';
import { drawingFont, inkLooks } from './ink.ts';
import { readableText } from './readable-text.ts';
import type { Ink, Scene, Shape } from './scene.ts';

const number = (value: number): string => String(Math.round(value * 1000) / 1000);
const pair = (point: SheetPoint): string => `${number(point[0])} ${number(point[1])}`;

/** Makes text harmless in markup. */
export const xmlText = (text: string): string =>
  readableText(text)
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;');

function strokeAndFill(ink: Ink): string {
  const look = inkLooks[ink];
  const parts = [`fill="${look.fill ?? 'none'}"`];
  if (look.stroke !== undefined) parts.push(`stroke="${look.stroke}" stroke-width="${look.widthMm ?? 0.25}"`);
  if (look.dashMm !== undefined) parts.push(`stroke-dasharray="${look.dashMm.join(' ')}"`);
  return parts.join(' ');
}

/** An arc as path data. */
export function arcPath(shape: Extract<Shape, { kind: 'arc' }>): string {
  const on = (deg: number): string => {
    const radians = (deg * Math.PI) / 180;
    return `${number(shape.at[0] + shape.radiusMm * Math.cos(radians))} ${number(shape.at[1] + shape.radiusMm * Math.sin(radians))}`;
  };
  const large = shape.toDeg - shape.fromDeg > 180 ? 1 : 0;
  const radius = number(shape.radiusMm);
  return `M${on(shape.fromDeg)}A${radius} ${radius} 0 ${large} 1 ${on(shape.toDeg)}${shape.closed ? 'z' : ''}`;
}

function textSvg(shape: Extract<Shape, { kind: 'text' }>): string {
  const turn = shape.angleDeg === 0 ? '' : ` transform="rotate(${number(shape.angleDeg)} ${pair(shape.at)})"`;
  const weight = shape.strong ? ' font-weight="600"' : '';
  return `<text x="${number(shape.at[0])}" y="${number(shape.at[1])}" font-size="${number(shape.sizeMm)}" text-anchor="${shape.anchor}"${weight}${turn} ${strokeAndFill(shape.ink)}>${xmlText(shape.text)}</text>`;
}

function shapeSvg(shape: Shape): string {
  switch (shape.kind) {
    case 'line':
      return `<path d="M${shape.points.map(pair).join('L')}${shape.closed ? 'z' : ''}" stroke-linejoin="round" ${strokeAndFill(shape.ink)}/>`;
    case 'circle':
      return `<circle cx="${number(shape.at[0])}" cy="${number(shape.at[1])}" r="${number(shape.radiusMm)}" ${strokeAndFill(shape.ink)}/>`;
    case 'arc':
      return `<path d="${arcPath(shape)}" ${strokeAndFill(shape.ink)}/>`;
    case 'text':
      return textSvg(shape);
    case 'group':
      return `<g data-subject="${xmlText(shape.subject)}"><title>${xmlText(shape.title)}</title>${shape.shapes.map(shapeSvg).join('')}</g>`;
  }
}

/**
 * Writes a scene as SVG text, true to scale: its width and height are in mm. Presentation attributes only,
 * no script, no style, no outside reference. Equal scenes give equal text.
 */
export function svgOf(scene: Scene): string {
  const width = number(scene.widthMm);
  const height = number(scene.heightMm);
  const layers = scene.layers.map(
    (layer) => `<g data-layer="${xmlText(layer.name)}">${layer.shapes.map(shapeSvg).join('\n')}</g>`,
  );
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" role="img" font-family="${drawingFont}">`,
    `<title>${xmlText(scene.title)}</title>`,
    ...layers,
    '</svg>',
    '',
  ].join('\n');
}
