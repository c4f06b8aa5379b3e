import { type SheetPoint, sheetPoint } from '#engine/plan/sheet-frame.ts';
import type { ComparedReading } from '#engine/proof/compared-readings.ts';
import { textWidthMm } from '../label-placer.ts';
import { wrapped } from '../plan/text-rows.ts';
import { line, type Scene, type Shape, words } from '../scene.ts';
import { baseline } from './hanging-tree.ts';
import { LABEL_SIZE, NAME_SIZE } from './leg-label.ts';

const LEFT = 3;
const RIGHT = 2;
const ROW = 5;
const FIGURE = 11;
const SPAN = 15;
const VERDICT = 14;

/** What is said of the band: it is nobody's rule. */
const bandWords = (conductorC: number): string =>
  `Band: expected ± 0.05 Ω or 5 %, whichever is more. The band is ours; no standard sets one. All at ${conductorC} °C.`;

const groupWords: Readonly<Record<ComparedReading['group'], string>> = {
  ends: 'End to end',
  step2: 'Crossed, line and neutral (step 2)',
  step3: 'Crossed, line and protective conductor (step 3)',
  r1r2: 'R1 + R2, linked at the board',
  zs: 'Zs, from the loop tester to Ze and R1 + R2',
};
const groups = ['ends', 'step2', 'step3', 'r1r2', 'zs'] as const;

/** What a chart of readings is drawn of. */
export interface ReadingsRequest {
  readonly compared: readonly ComparedReading[];
  readonly labelOf: (subject: string) => string;
  readonly phase: 'before' | 'after';
  /** What the conductors are at in the test, °C. */
  readonly conductorC: number;
  readonly widthMm: number;
  /** What the bars reach to where the chart is one of several of one scale, Ω; absent: the greatest of its own. */
  readonly mostOhm?: number;
}

/** The greatest figure that a chart has to reach to, Ω. */
export const mostOf = (compared: readonly ComparedReading[]): number =>
  Math.max(0.1, ...compared.flatMap((one) => [(one.expectedToOhm ?? 0) + one.bandOhm, one.measuredOhm ?? 0]));

interface Columns {
  readonly nameRight: number;
  readonly barLeft: number;
  readonly barRight: number;
  readonly expectedRight: number;
  readonly measuredRight: number;
  readonly verdictLeft: number;
}

function columnsOf({ compared, labelOf, widthMm }: ReadingsRequest): Columns {
  const widest = Math.max(
    6,
    ...compared.map((one) => textWidthMm(one.name || labelOf(one.subject), NAME_SIZE)),
  );
  const nameRight = LEFT + Math.min(widest, widthMm / 4);
  const verdictLeft = widthMm - RIGHT - VERDICT;
  return {
    nameRight,
    barLeft: nameRight + 2,
    barRight: verdictLeft - 3 - FIGURE - SPAN,
    expectedRight: verdictLeft - 2 - FIGURE,
    measuredRight: verdictLeft - 2,
    verdictLeft,
  };
}

/** What is said above the chart: how much was measured. */
function summaryOf({ compared, phase }: ReadingsRequest): string {
  const measured = compared.filter(({ measuredOhm }) => measuredOhm !== null);
  const off = measured.filter(({ fits }) => fits === false).length;
  if (compared.length === 0) return 'Nothing can be expected of this circuit before its cables are recorded.';
  if (measured.length === 0)
    return phase === 'before'
      ? 'Nothing was measured of this circuit before the work: only what is expected is shown.'
      : 'Nothing was measured after the work: only what is expected is shown. Readings from before it are compared with the house as found.';
  return `${measured.length} of ${compared.length} measured; ${off === 0 ? 'all within the band' : `${off} off the band`}.`;
}

/** What a tester should read beside what was read, a row each. */
export function readingsChart(request: ReadingsRequest): Scene {
  const { compared, widthMm } = request;
  const columns = columnsOf(request);
  const mostOhm = request.mostOhm ?? mostOf(compared);
  const shapes: Shape[] = [];
  let y = 5;
  const say = (text: string, isStrong: boolean): void => {
    for (const row of wrapped(text, widthMm - LEFT - RIGHT, LABEL_SIZE)) {
      shapes.push(
        words(isStrong ? 'text' : 'text-soft', sheetPoint(LEFT, y), row, {
          sizeMm: LABEL_SIZE,
          strong: isStrong,
        }),
      );
      y += 4;
    }
  };
  say(summaryOf(request), true);
  if (compared.length > 0) say(bandWords(request.conductorC), false);
  for (const group of groups) {
    const rows = compared.filter((one) => one.group === group);
    if (rows.length === 0) continue;
    y += 3;
    say(groupWords[group], true);
    shapes.push(...headings(columns, y));
    y += 1;
    for (const one of rows) {
      y += ROW;
      shapes.push(rowOf(one, { request, columns, y: y - 1, mostOhm }));
    }
    y += 4;
  }
  return {
    title: 'Expected against measured',
    widthMm,
    heightMm: y + 2,
    scale: null,
    layers: [{ name: 'readings', shapes }],
  };
}

const headings = ({ expectedRight, measuredRight }: Columns, y: number): readonly Shape[] => [
  words('text-soft', sheetPoint(expectedRight, y), 'expected', { sizeMm: 2.5, anchor: 'end' }),
  words('text-soft', sheetPoint(measuredRight, y), 'read, Ω', { sizeMm: 2.5, anchor: 'end' }),
];

interface Row {
  readonly request: ReadingsRequest;
  readonly columns: Columns;
  readonly y: number;
  readonly mostOhm: number;
}

const ohms = (ohm: number | null): string => (ohm === null ? '–' : ohm.toFixed(2));

/** What is expected: one figure, or from one to another where both are told. */
function expectedWords({ expectedOhm, expectedToOhm }: ComparedReading): string {
  const [from, to] = [ohms(expectedOhm), ohms(expectedToOhm)];
  return from === to || expectedToOhm === null ? from : `${from}–${to}`;
}

/** How a reading stands to what is expected, in words. */
function verdictOf({ fits, measuredOhm, expectedOhm, expectedToOhm }: ComparedReading): string {
  if (fits === true) return 'within';
  if (fits === null) return measuredOhm === null ? 'not read' : '';
  const read = measuredOhm ?? 0;
  const nearest = Math.max(expectedOhm ?? 0, Math.min(read, expectedToOhm ?? 0));
  const off = read - nearest;
  return `${off < 0 ? '−' : '+'}${Math.abs(off).toFixed(2)} off`;
}

function rowOf(one: ComparedReading, { request, columns, y, mostOhm }: Row): Shape {
  const { barLeft, barRight, nameRight, expectedRight, measuredRight, verdictLeft } = columns;
  const xOf = (ohm: number): number => barLeft + (ohm / mostOhm) * (barRight - barLeft);
  const label = one.name || request.labelOf(one.subject);
  const foot = baseline(y);
  const isOff = one.fits === false;
  const verdict = verdictOf(one);
  return {
    kind: 'group',
    subject: one.subject,
    title: `${groupWords[one.group]}: ${label} ${expectedWords(one)} ${ohms(one.measuredOhm)} ${verdict}; expected, then read, Ω`,
    shapes: [
      words('text', sheetPoint(nameRight, foot), label, { sizeMm: LABEL_SIZE, anchor: 'end', strong: true }),
      line('rule', [sheetPoint(barLeft, y), sheetPoint(barRight, y)]),
      ...expectedShapes(one, xOf, y),
      ...(one.measuredOhm === null ? [] : [markAt(sheetPoint(xOf(one.measuredOhm), y), isOff)]),
      words('text-soft', sheetPoint(expectedRight, foot), expectedWords(one), {
        sizeMm: LABEL_SIZE,
        anchor: 'end',
      }),
      words('text', sheetPoint(measuredRight, foot), ohms(one.measuredOhm), {
        sizeMm: LABEL_SIZE,
        anchor: 'end',
        strong: true,
      }),
      words(isOff ? 'decide' : 'text-soft', sheetPoint(verdictLeft, foot), verdict, {
        sizeMm: LABEL_SIZE,
        strong: isOff,
      }),
    ],
  };
}

/** The band, and a stroke at what is expected. */
function expectedShapes(
  { expectedOhm, expectedToOhm, bandOhm }: ComparedReading,
  xOf: (ohm: number) => number,
  y: number,
): readonly Shape[] {
  if (expectedOhm === null) return [];
  const [left, right] = [
    xOf(Math.max(0, expectedOhm - bandOhm)),
    xOf((expectedToOhm ?? expectedOhm) + bandOhm),
  ];
  const box = [
    sheetPoint(left, y - 1.5),
    sheetPoint(right, y - 1.5),
    sheetPoint(right, y + 1.5),
    sheetPoint(left, y + 1.5),
  ];
  const x = xOf(expectedOhm);
  return [line('mark-advice', box, true), line('found', [sheetPoint(x, y - 1.5), sheetPoint(x, y + 1.5)])];
}

/** A reading: a dot within the band, a diamond off it. */
function markAt(at: SheetPoint, isOff: boolean): Shape {
  if (!isOff) return { kind: 'circle', at, radiusMm: 0.9, ink: 'symbol-solid' };
  const [x, y] = at;
  return line(
    'decide',
    [sheetPoint(x, y - 1.7), sheetPoint(x + 1.7, y), sheetPoint(x, y + 1.7), sheetPoint(x - 1.7, y)],
    true,
  );
}
