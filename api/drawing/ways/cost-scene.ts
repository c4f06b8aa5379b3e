import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import { wholePounds } from '#engine/quotation/said.ts';
import { type LabelPlacer, labelPlacer, type Rectangle } from '../label-placer.ts';
import { axisGround, axisWords, multiplesWithin, roundStep } from '../plot-axes.ts';
import { baseline } from '../proof/hanging-tree.ts';
import { LABEL_SIZE } from '../proof/leg-label.ts';
import { line, type Scene, type Shape, words } from '../scene.ts';

/** One scheme in the chart. */
export interface CostMark {
  readonly id: string;
  /** Its number in the list, from 1. */
  readonly number: number;
  /** What a screen reader says of it. */
  readonly title: string;
  readonly grossPence: number;
  readonly messPoints: number;
  /** Nothing is cheaper without more disturbance, nor less disturbing without a higher price. */
  readonly efficient: boolean;
}

/** How large the chart is, and what its price is told with. */
interface CostRequest {
  readonly widthMm: number;
  /** Such as "with VAT". */
  readonly vatWords: string;
}

const LEFT = 9;
const RIGHT = 4;
const TOP = 8;
const PLOT_HEIGHT = 40;
/** Room beside the outermost marks, as a share of the span. */
const MARGIN = 0.1;
/** Half the height of an efficient one's diamond, and the radius of the others. */
const DIAMOND = 1.9;
const DOT = 1.2;

interface Span {
  readonly from: number;
  readonly to: number;
}

interface Axes {
  readonly plot: Rectangle;
  readonly cost: Span;
  readonly mess: Span;
  readonly on: (mark: Pick<CostMark, 'grossPence' | 'messPoints'>) => SheetPoint;
}

/** The span of some values with room beside them, never less than `least` wide. */
function spanOf(values: readonly number[], least: number): Span {
  const [from, to] = [Math.min(...values), Math.max(...values)];
  const besides = Math.max((to - from) * MARGIN, (least - (to - from)) / 2);
  return { from: Math.max(0, from - besides), to: to + besides };
}

function axesOf(marks: readonly CostMark[], widthMm: number): Axes {
  const plot = { leftMm: LEFT, topMm: TOP, rightMm: widthMm - RIGHT, bottomMm: TOP + PLOT_HEIGHT };
  const cost = spanOf(
    marks.map(({ grossPence }) => grossPence),
    4000,
  );
  const mess = spanOf(
    marks.map(({ messPoints }) => messPoints),
    8,
  );
  const share = (value: number, { from, to }: Span): number => (value - from) / (to - from);
  return {
    plot,
    cost,
    mess,
    on: ({ grossPence, messPoints }) =>
      sheetPoint(
        plot.leftMm + share(grossPence, cost) * (plot.rightMm - plot.leftMm),
        plot.bottomMm - share(messPoints, mess) * (plot.bottomMm - plot.topMm),
      ),
  };
}

/** The round values within a span. */
const roundValues = ({ from, to }: Span, parts: number): readonly number[] =>
  multiplesWithin(from, to, roundStep(to - from, parts));

/**
 * Price against disturbance: the further left the cheaper, the lower the less of the house is disturbed. Efficient schemes
 * are diamonds joined by a line and have their numbers; the others are rings. The axes do not begin at nought.
 */
export function costScene(marks: readonly CostMark[], { widthMm, vatWords }: CostRequest): Scene {
  const axes = axesOf(marks.length === 0 ? [nowhere] : marks, widthMm);
  const { plot } = axes;
  const free = labelPlacer(
    { ...plot, topMm: plot.topMm - 2, rightMm: widthMm - 1 },
    { crossing: 1, farther: 0.02 },
  );
  for (const mark of marks) takeMark(free, axes.on(mark), mark.efficient);
  return {
    title: 'Price against disturbance',
    widthMm,
    heightMm: plot.bottomMm + 10,
    scale: null,
    layers: [
      { name: 'axes', shapes: axisShapes(axes, vatWords) },
      { name: 'efficient', shapes: efficientLine(marks, axes) },
      { name: 'points', shapes: marks.map((mark) => markGroup(mark, axes, free)) },
    ],
  };
}

const nowhere: CostMark = { id: '', number: 0, title: '', grossPence: 0, messPoints: 0, efficient: false };

function takeMark(free: LabelPlacer, [x, y]: SheetPoint, efficient: boolean): void {
  const half = efficient ? DIAMOND : DOT;
  free.take({ leftMm: x - half, rightMm: x + half, topMm: y - half, bottomMm: y + half });
}

function axisShapes({ plot, cost, mess, on }: Axes, vatWords: string): readonly Shape[] {
  const levels = roundValues(mess, 5).map((messPoints) => ({
    atMm: on({ grossPence: cost.from, messPoints })[1],
    text: String(Math.round(messPoints * 10) / 10),
  }));
  const prices = roundValues(cost, (plot.rightMm - plot.leftMm) / 14).map((grossPence) => ({
    atMm: on({ grossPence, messPoints: mess.from })[0],
    text: wholePounds(grossPence),
  }));
  return [
    ...axisGround(plot, levels, prices),
    line('opening', [sheetPoint(plot.leftMm, plot.topMm), sheetPoint(plot.leftMm, plot.bottomMm)]),
    axisWords(sheetPoint(1, plot.topMm - 4), 'Disturbance, points'),
    axisWords(sheetPoint(plot.rightMm, plot.bottomMm + 8), `Price ${vatWords}, £`, 'end'),
  ];
}

/** From each efficient scheme to the next dearer: along, then down to the less disturbing one. */
function efficientLine(marks: readonly CostMark[], { on }: Axes): readonly Shape[] {
  const efficient = marks
    .filter((mark) => mark.efficient)
    .toSorted((a, b) => a.grossPence - b.grossPence || b.messPoints - a.messPoints);
  const path = efficient.flatMap((mark, i): readonly SheetPoint[] => {
    const at = on(mark);
    const before = efficient[i - 1];
    return before === undefined ? [at] : [sheetPoint(at[0], on(before)[1]), at];
  });
  return path.length < 2 ? [] : [line('removed', path)];
}

function markGroup(mark: CostMark, axes: Axes, free: LabelPlacer): Shape {
  const at = axes.on(mark);
  const [x, y] = at;
  const symbol: Shape = mark.efficient
    ? line(
        'symbol-new-solid',
        [
          sheetPoint(x, y - DIAMOND),
          sheetPoint(x + DIAMOND, y),
          sheetPoint(x, y + DIAMOND),
          sheetPoint(x - DIAMOND, y),
        ],
        true,
      )
    : { kind: 'circle', at, radiusMm: DOT, ink: 'symbol' };
  const label = mark.efficient ? [numberOf(mark, at, free)] : [];
  return { kind: 'group', subject: mark.id, title: mark.title, shapes: [...label, symbol] };
}

function numberOf(mark: CostMark, [x, y]: SheetPoint, free: LabelPlacer): Shape {
  const text = String(mark.number);
  const candidates = [3.6, 5.2, 7].flatMap((far) => [
    sheetPoint(x + far, y),
    sheetPoint(x, y - far),
    sheetPoint(x - far, y),
    sheetPoint(x, y + far),
    sheetPoint(x + far * 0.75, y - far * 0.75),
    sheetPoint(x - far * 0.75, y - far * 0.75),
  ]);
  const middle = free.place(text, LABEL_SIZE, candidates);
  return words('text-new', sheetPoint(middle[0], baseline(middle[1])), text, {
    sizeMm: LABEL_SIZE,
    anchor: 'middle',
    strong: true,
  });
}
