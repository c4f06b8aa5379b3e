import { itemOf } from './items.ts';
import type { Piece, TakeoffGroup, TakeoffLine } from './line.ts';
import type { LengthRange } from './run-length.ts';
import { inSizeOrder } from './size-order.ts';
import { twelveDigits } from './twelve-digits.ts';

/** What one cause asks of one item, before waste: metres, kilograms or pieces. */
export interface Demand {
  readonly item: string;
  readonly unit: TakeoffLine['unit'];
  readonly group: TakeoffGroup;
  readonly measured: number;
  /** By the low and the high ends of what is assumed; absent: as measured. */
  readonly low?: number;
  readonly high?: number;
  /** At least one id. */
  readonly causes: readonly string[];
  /** What must be cut as one; they add up to `measured`. Absent: it is not cut to length. */
  readonly pieces?: readonly Piece[];
  /** The length that the pieces are usually cut from, m, where there is one. */
  readonly soldM?: number;
}

/** What a piece is made of. */
interface PieceLengths extends LengthRange {
  readonly cause: string;
  readonly unbroken: boolean;
}

/** One length that must be cut as one. */
export function pieceOf({ cause, measuredM, lowM, highM, unbroken }: PieceLengths): Piece {
  const inMm = (lengthM: number) => twelveDigits(lengthM * 1e3);
  return {
    cause,
    lengthMm: inMm(measuredM),
    lowMm: inMm(Math.min(lowM, measuredM)),
    highMm: inMm(Math.max(highM, measuredM)),
    unbroken,
  };
}

/** Waste on top of what is measured, percent, as the library's norms give it. */
export interface WastePercents {
  readonly cable: number;
  readonly containment: number;
  readonly fixings: number;
  readonly fillers: number;
}

/** The order of a bill: what is chosen first, what is used up last. */
const groupOrder: readonly TakeoffGroup[] = [
  'cable',
  'accessories',
  'protection',
  'joints',
  'boxes',
  'containment',
  'fixings',
  'making-good',
  'sundries',
  'papers',
];

const byGroupAndItem = (a: TakeoffLine, b: TakeoffLine): number =>
  groupOrder.indexOf(a.group) - groupOrder.indexOf(b.group) || inSizeOrder(a.item, b.item);

/** Adds up what is asked of each item, with waste, in the order of a bill: by group, then by item id and size. */
export function linesOf(demands: readonly Demand[], waste: WastePercents): readonly TakeoffLine[] {
  const byItem = new Map<string, Demand[]>();
  for (const demand of demands) byItem.set(demand.item, [...(byItem.get(demand.item) ?? []), demand]);
  return [...byItem.values()].flatMap((asked) => lineOf(asked, waste) ?? []).toSorted(byGroupAndItem);
}

function lineOf(asked: readonly Demand[], waste: WastePercents): TakeoffLine | null {
  const first = asked[0];
  if (first === undefined) return null;
  const { id, description, unit, group } = itemOf(first.item, first.unit, first.group);
  const measured = sum(asked, (demand) => demand.measured);
  const low = sum(asked, (demand) => Math.min(demand.low ?? demand.measured, demand.measured));
  const high = sum(asked, (demand) => Math.max(demand.high ?? demand.measured, demand.measured));
  if (high === 0) return null;
  const counted = asked.filter((demand) => demand.measured > 0);
  const wastePercent = nestsExactly(asked, measured) ? 0 : wasteOf(id, unit, group, waste);
  const withWaste = (amount: number) => quantityWithWaste({ measured: amount, wastePercent, unit });
  return {
    item: id,
    description,
    group,
    unit,
    measured,
    wastePercent,
    quantity: withWaste(measured),
    lowQuantity: withWaste(low),
    highQuantity: withWaste(high),
    pieces: asked.flatMap(({ pieces }) => pieces ?? []).toSorted(byLength),
    // What may only turn out to be needed causes a line by itself, but is no cause of what is counted.
    causes: [...new Set((counted.length > 0 ? counted : asked).flatMap(({ causes }) => causes))].toSorted(),
  };
}

const byLength = (a: Piece, b: Piece): number =>
  b.lengthMm - a.lengthMm || (a.cause < b.cause ? -1 : Number(a.cause > b.cause)) || b.highMm - a.highMm;

function sum(asked: readonly Demand[], amountOf: (demand: Demand) => number): number {
  const total = asked.reduce((so, demand) => so + amountOf(demand), 0);
  return twelveDigits(total);
}

/** The waste on top of a demand, percent, where its pieces do not happen to nest. */
export function wastePercentOf({ item, unit, group }: Demand, waste: WastePercents): number {
  const known = itemOf(item, unit, group);
  return wasteOf(known.id, known.unit, known.group, waste);
}

/** Waste falls on what is cut, mixed or dropped; a piece that is counted is not wasted, nor is an allowance. */
function wasteOf(id: string, unit: TakeoffLine['unit'], group: TakeoffGroup, waste: WastePercents): number {
  if (group === 'cable') return id.startsWith('flex-') || id.startsWith('tails-') ? 0 : waste.cable;
  if (group === 'containment') return unit === 'm' ? waste.containment : 0;
  if (group === 'fixings') return id.startsWith('noggin-') ? 0 : waste.fixings;
  return unit === 'kg' ? waste.fillers : 0;
}

/** Whether all pieces can be cut from as few whole lengths as their sum takes: then the off-cuts are the waste. */
function nestsExactly(asked: readonly Demand[], measured: number): boolean {
  const soldM = asked[0]?.soldM;
  if (soldM === undefined || asked.some((demand) => demand.pieces === undefined)) return false;
  const pieces = asked.flatMap((demand) => (demand.pieces ?? []).map(({ lengthMm }) => lengthMm / 1e3));
  return lengthsTaken(pieces, soldM) <= Math.ceil(measured / soldM - 1e-9);
}

/** Lengths that the pieces are cut from, the longest piece first, each from the first length it fits. */
function lengthsTaken(pieces: readonly number[], soldM: number): number {
  const left: number[] = [];
  for (const piece of pieces.flatMap((longM) => sawn(longM, soldM)).toSorted((a, b) => b - a)) {
    const index = left.findIndex((leftM) => leftM >= piece - 1e-9);
    if (index < 0) left.push(soldM - piece);
    else left[index] = (left[index] ?? 0) - piece;
  }
  return left.length;
}

/** A piece longer than what is sold is put together from whole lengths and a rest. */
function sawn(longM: number, soldM: number): number[] {
  const whole = Math.floor(longM / soldM + 1e-9);
  const restM = longM - whole * soldM;
  return [...Array.from({ length: whole }, () => soldM), ...(restM > 1e-9 ? [restM] : [])];
}

/** What has to be there of what is measured: with its waste, rounded up as its unit is. */
export function quantityWithWaste({
  measured,
  wastePercent,
  unit,
}: Pick<TakeoffLine, 'measured' | 'wastePercent' | 'unit'>): number {
  return roundedUp(measured * (1 + wastePercent / 100), unit);
}

/** Up to whole pieces, or to a tenth of a metre or kilogram. A hair over, from adding fractions, is not over. */
function roundedUp(amount: number, unit: TakeoffLine['unit']): number {
  const steps = unit === 'each' || unit === 'set' ? 1 : 10;
  return Math.max(0, Math.ceil(amount * steps - 1e-6) / steps);
}
