import { type InkLook, inkLooks, tokens } from '#drawing/ink.ts';
import { readableText } from '#drawing/readable-text.ts';
import type { Ink, Scene, Shape } from '#drawing/scene.ts';
import { arcPath } from '#drawing/svg.ts';
import { drawingFaces } from '../quotation/pdf-fonts.ts';

/** A document of the PDF writer. */
export type Pdf = PDFKit.PDFDocument;

/** Points a millimetre. */
export const POINTS_PER_MM = 72 / 25.4;

/** Paper is white: what is drawn on the sheet's own ground stands on it as it is. */
const onWhite = (colour: string): string => (colour === tokens.sheet ? '#ffffff' : colour);

/** Paints the path that was just drawn as its ink looks. */
function paint(pdf: Pdf, ink: Ink): void {
  const { stroke, fill, widthMm = 0.25, dashMm }: InkLook = inkLooks[ink];
  if (stroke !== undefined) {
    pdf.lineWidth(widthMm).lineJoin('round');
    if (dashMm === undefined) pdf.undash();
    else pdf.dash(dashMm[0] ?? 1, { space: dashMm[1] ?? 1 });
  }
  if (stroke !== undefined && fill !== undefined) pdf.fillAndStroke(onWhite(fill), onWhite(stroke));
  else if (stroke !== undefined) pdf.stroke(onWhite(stroke));
  else if (fill !== undefined) pdf.fill(onWhite(fill));
}

function drawLine(pdf: Pdf, { points, closed, ink }: Extract<Shape, { kind: 'line' }>): void {
  const [first, ...rest] = points;
  if (first === undefined) return;
  pdf.moveTo(first[0], first[1]);
  for (const [x, y] of rest) pdf.lineTo(x, y);
  if (closed) pdf.closePath();
  paint(pdf, ink);
}

/** Lettering as text, so that it can be searched, on its base line. */
function drawText(pdf: Pdf, shape: Extract<Shape, { kind: 'text' }>): void {
  const text = readableText(shape.text).replace(/\s/g, ' ');
  pdf.font(shape.strong ? drawingFaces.strong : drawingFaces.plain).fontSize(shape.sizeMm);
  const wide = pdf.widthOfString(text);
  const back = { start: 0, middle: wide / 2, end: wide }[shape.anchor];
  pdf.save();
  pdf.translate(shape.at[0], shape.at[1]);
  if (shape.angleDeg !== 0) pdf.rotate(shape.angleDeg);
  pdf
    .fillColor(onWhite(inkLooks[shape.ink].fill ?? tokens.ink))
    .text(text, -back, 0, { lineBreak: false, baseline: 'alphabetic' });
  pdf.restore();
}

function drawShape(pdf: Pdf, shape: Shape): void {
  switch (shape.kind) {
    case 'line':
      drawLine(pdf, shape);
      return;
    case 'circle':
      pdf.circle(shape.at[0], shape.at[1], shape.radiusMm);
      paint(pdf, shape.ink);
      return;
    case 'arc':
      pdf.path(arcPath(shape));
      paint(pdf, shape.ink);
      return;
    case 'text':
      drawText(pdf, shape);
      return;
    case 'group':
      for (const one of shape.shapes) drawShape(pdf, one);
      return;
  }
}

/**
 * Adds a scene to a PDF as a page of the scene's own size, in vectors true to the millimetre, lettering as text in the
 * embedded face, on white. Whoever has the page read aloud hears the scene's title for the drawing, and its words as they stand.
 */
export function addScenePage(pdf: Pdf, scene: Scene): void {
  pdf.addPage({
    size: [scene.widthMm * POINTS_PER_MM, scene.heightMm * POINTS_PER_MM],
    margins: { top: 0, left: 0, right: 0, bottom: 0 },
  });
  pdf.save();
  pdf.scale(POINTS_PER_MM);
  const draw = (layers: Scene['layers']) => (): void => {
    for (const { shapes } of layers) for (const shape of shapes) drawShape(pdf, shape);
  };
  const drawing = scene.layers.filter(({ name }) => name !== 'words');
  const words = scene.layers.filter(({ name }) => name === 'words');
  pdf.addStructure(pdf.struct('Figure', { alt: scene.title }, draw(drawing)));
  pdf.addStructure(pdf.struct('P', {}, draw(words)));
  pdf.restore();
}
