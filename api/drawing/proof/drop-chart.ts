import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import {
  boxRound,
  type LabelPlacer,
  labelPlacer,
  type Rectangle,
  textBox,
  textWidthMm,
} from '../label-placer.ts';
import { axisGround, axisWords, multiplesWithin, roundStep } from '../plot-axes.ts';
import { type Ink, line, type Scene, type Shape, words } from '../scene.ts';
import { partOfLine } from './cable-band.ts';
import { type CircuitPicture, nodeTitle, type PictureNode } from './circuit-picture.ts';
import { type CurveLeg, type CurveNode, type DropCurve, dropCurve } from './drop-curve.ts';
import { baseline } from './hanging-tree.ts';
import { LABEL_SIZE, legTitle } from './leg-label.ts';
import { noteRows } from './note-rows.ts';
import { limitWords, voltsWords } from './proof-words.ts';

const LEFT = 9;
const RIGHT = 5;
const TOP = 7;
/** The least and the greatest height of what lies between the axes. */
const LOWEST = 44;
const TALLEST = 76;
/** Below this width, or this height, names stand without their volts. */
const TERSE_WIDTH = 110;
const TERSE_HEIGHT = 60;

/** The room that a chart has, units of the scene. */
interface DropRequest {
  readonly widthMm: number;
  /** How much of the height its curve may take; absent: as much as is good for the eye. */
  readonly plotMm?: number;
}

interface Axes {
  readonly widthMm: number;
  readonly plot: Rectangle;
  readonly mostV: number;
  readonly lengthMm: number;
  readonly on: (alongMm: number, dropV: number) => SheetPoint;
}

function axesOf(picture: CircuitPicture, curve: DropCurve, { widthMm, plotMm = TALLEST }: DropRequest): Axes {
  const worst = Math.max(0, ...curve.nodes.map(({ dropV }) => dropV));
  const mostV = Math.max(picture.dropLimitV, picture.lightingDropLimitV, worst) * 1.14;
  const plot = {
    leftMm: LEFT,
    topMm: TOP,
    rightMm: widthMm - RIGHT,
    bottomMm: TOP + Math.max(LOWEST, Math.min(plotMm, TALLEST, widthMm * 0.8)),
  };
  const lengthMm = Math.max(1, curve.lengthMm);
  return {
    widthMm,
    plot,
    mostV,
    lengthMm,
    on: (alongMm, dropV) =>
      sheetPoint(
        plot.leftMm + (alongMm / lengthMm) * (plot.rightMm - plot.leftMm),
        plot.topMm + (dropV / mostV) * (plot.bottomMm - plot.topMm),
      ),
  };
}

/**
 * Volt drop against length of cable: nought at the top, so that the line sags as the voltage does; a ring from end A to
 * end B. With the limits, every point named.
 */
export function dropChart(picture: CircuitPicture, request: DropRequest): Scene {
  const { widthMm } = request;
  const curve = dropCurve(picture);
  if (curve.nodes.length === 0) return withoutCurve(picture, widthMm);
  const axes = axesOf(picture, curve, request);
  const { plot } = axes;
  const free = labelPlacer({ ...plot, rightMm: widthMm - 1 }, { crossing: 1, farther: 0.02 });
  for (const { from, to } of curve.legs) takeLine(free, [axes.on(...from), axes.on(...to)]);
  for (const { alongMm, dropV } of curve.nodes) takeDot(free, axes.on(alongMm, dropV));
  const limits = limitShapes(picture, axes, free);
  const worst = curve.nodes.toSorted((a, b) => b.dropV - a.dropV)[0]?.node ?? null;
  const points = curve.nodes
    .toSorted((a, b) => b.dropV - a.dropV)
    .map((at) => pointGroup(picture, at, { axes, free, isWorst: at.node === worst }));
  const isRing = picture.ring !== null;
  const note = noteRows(picture, { leftMm: 4, topMm: plot.bottomMm + 17, widthMm: widthMm - 8 });
  return {
    title: isRing ? 'Volt drop along the ring' : 'Volt drop along the circuit',
    widthMm,
    heightMm: plot.bottomMm + 13 + note.heightMm,
    scale: null,
    layers: [
      { name: 'axes', shapes: axisShapes(axes, isRing) },
      { name: 'limits', shapes: limits },
      { name: 'cables', shapes: curve.legs.map((leg) => curveGroup(picture, leg, axes)) },
      { name: 'points', shapes: points },
      { name: 'notes', shapes: note.shapes },
    ],
  };
}

/** What is left where no recorded cable leads from the board: the names of what it does not reach. */
function withoutCurve(picture: CircuitPicture, widthMm: number): Scene {
  const note = noteRows(picture, { leftMm: 4, topMm: 6, widthMm: widthMm - 8 });
  const layers = [{ name: 'notes', shapes: note.shapes }];
  return { title: 'Volt drop along the circuit', widthMm, heightMm: 6 + note.heightMm, scale: null, layers };
}

function takeLine(free: LabelPlacer, path: readonly SheetPoint[]): void {
  const parts = 24;
  for (let i = 0; i < parts; i++) {
    const piece = partOfLine(path, i / parts, (i + 1) / parts);
    if (piece.length === 0) continue;
    const { leftMm, rightMm, topMm, bottomMm } = boxRound(piece);
    free.take(
      { leftMm: leftMm - 0.4, rightMm: rightMm + 0.4, topMm: topMm - 0.4, bottomMm: bottomMm + 0.4 },
      'cable',
    );
  }
}

const takeDot = (free: LabelPlacer, [x, y]: SheetPoint): void =>
  free.take({ leftMm: x - 1.5, rightMm: x + 1.5, topMm: y - 1.5, bottomMm: y + 1.5 });

function axisShapes({ plot, mostV, lengthMm, on }: Axes, isRing: boolean): readonly Shape[] {
  const stepV = roundStep(mostV, 6);
  const stepM = roundStep(lengthMm / 1000, (plot.rightMm - plot.leftMm) / 16);
  const volts = multiplesWithin(0, mostV, stepV).map((dropV) => ({
    atMm: on(0, dropV)[1],
    text: String(dropV),
  }));
  const metres = multiplesWithin(0, lengthMm / 1000, stepM).map((m) => ({
    atMm: on(m * 1000, 0)[0],
    text: String(m),
  }));
  return [
    ...axisGround(plot, volts, metres),
    axisWords(sheetPoint(1, plot.topMm - 3), isRing ? 'V, end A' : 'V, board'),
    ...(isRing ? [axisWords(sheetPoint(plot.rightMm, plot.topMm - 3), 'end B', 'end')] : []),
    axisWords(sheetPoint(plot.rightMm, plot.bottomMm + 8), 'm of cable', 'end'),
  ];
}

function limitShapes(picture: CircuitPicture, { plot, on }: Axes, free: LabelPlacer): readonly Shape[] {
  const limits: readonly (readonly [number, string, Ink, Ink])[] = [
    [picture.lightingDropLimitV, 'Lighting', 'mark-not-proven', 'decide'],
    [picture.dropLimitV, 'Limit', 'mark-fails', 'fails'],
  ];
  return limits.flatMap(([limitV, name, ink, textInk]) => {
    const y = on(0, limitV)[1];
    const text = `${name} ${limitWords(limitV)}`;
    const middle = sheetPoint(plot.leftMm + 1 + textWidthMm(text, LABEL_SIZE) / 2, y - 2);
    free.take(textBox(middle, text, LABEL_SIZE));
    free.take({ leftMm: plot.leftMm, rightMm: plot.rightMm, topMm: y - 0.3, bottomMm: y + 0.3 }, 'cable');
    return [
      line(ink, [sheetPoint(plot.leftMm, y), sheetPoint(plot.rightMm, y)]),
      words(textInk, sheetPoint(plot.leftMm + 1, baseline(y - 2)), text, {
        sizeMm: LABEL_SIZE,
        strong: true,
      }),
    ];
  });
}

function curveGroup(picture: CircuitPicture, { leg, from, to }: CurveLeg, { on }: Axes): Shape {
  const drawn = picture.legs[leg];
  if (drawn === undefined) throw new Error(`The picture has no leg ${leg}.`);
  const path = [on(...from), on(...to)];
  const shapes = drawn.isOpen
    ? [line('removed', partOfLine(path, 0, 0.42)), line('removed', partOfLine(path, 0.58, 1))]
    : [line(drawn.isNew ? 'new' : 'found', path)];
  return { kind: 'group', subject: drawn.subject, title: legTitle(picture, drawn), shapes };
}

interface Pointing {
  readonly axes: Axes;
  readonly free: LabelPlacer;
  readonly isWorst: boolean;
}

function pointGroup(
  picture: CircuitPicture,
  { node, alongMm, dropV }: CurveNode,
  { axes, free, isWorst }: Pointing,
): Shape {
  const drawn = picture.nodes[node];
  if (drawn === undefined) throw new Error(`The picture has no node ${node}.`);
  const at = axes.on(alongMm, dropV);
  const isOver = dropV > picture.dropLimitV;
  const title = `${nodeTitle(drawn, letteringOf(drawn, axes, isWorst))}, volt drop ${voltsWords(dropV)}${isOver ? ', over the limit' : ''}${isWorst ? ', the greatest' : ''}`;
  return {
    kind: 'group',
    subject: drawn.subject,
    title,
    shapes: [...nameOf(drawn, at, { axes, free, isWorst }), dotOf(drawn, at)],
  };
}

const dotOf = ({ kind, isNew }: PictureNode, at: SheetPoint): Shape => ({
  kind: 'circle',
  at,
  radiusMm: kind === 'joint' ? 0.6 : 1.2,
  ink: isNew ? 'symbol-new' : 'symbol-solid',
});

/** What stands beside a point: its name, and its volts where there is room. */
const letteringOf = ({ label, dropV }: PictureNode, { widthMm, plot }: Axes, isWorst: boolean): string =>
  isWorst || (widthMm >= TERSE_WIDTH && plot.bottomMm - plot.topMm >= TERSE_HEIGHT)
    ? `${label} ${voltsWords(dropV)}`
    : label;

/** A point's name where there is room, with a line to its dot where that is not beside it; joints have none. */
function nameOf(drawn: PictureNode, at: SheetPoint, { axes, free, isWorst }: Pointing): readonly Shape[] {
  if (drawn.kind === 'joint') return [];
  const text = letteringOf(drawn, axes, isWorst);
  const half = textWidthMm(text, LABEL_SIZE) / 2;
  const candidates = [3.8, 5.9, 8.2, 11, 14, 18, 22].flatMap((far) => [
    sheetPoint(at[0], at[1] + far),
    ...(far < 6
      ? [sheetPoint(at[0] + half + far - 1, at[1]), sheetPoint(at[0] - half - far + 1, at[1])]
      : []),
    sheetPoint(at[0] + half * 0.8, at[1] + far),
    sheetPoint(at[0] - half * 0.8, at[1] + far),
    sheetPoint(at[0], at[1] - far),
    sheetPoint(at[0] + half * 0.8, at[1] - far),
    sheetPoint(at[0] - half * 0.8, at[1] - far),
  ]);
  const middle = free.place(text, LABEL_SIZE, candidates);
  const off = Math.hypot(middle[0] - at[0], middle[1] - at[1]);
  const isApart = Math.abs(middle[1] - at[1]) > 4;
  const near = sheetPoint(
    at[0] + (middle[0] - at[0]) * (1.4 / off),
    at[1] + (middle[1] - at[1]) * (1.4 / off),
  );
  const edge = sheetPoint(middle[0], middle[1] - Math.sign(middle[1] - at[1]) * LABEL_SIZE * 0.55);
  return [
    ...(isApart ? [line('opening', [near, edge])] : []),
    words(drawn.isNew ? 'text-new' : 'text', sheetPoint(middle[0], baseline(middle[1])), text, {
      sizeMm: LABEL_SIZE,
      anchor: 'middle',
      strong: isWorst,
    }),
  ];
}
