import type { Position } from '../../plan/plane.ts';
import { remembered } from '../../plan/remembered.ts';
import type { Lay, SegmentDetails } from '../segment.ts';
import { noWork, type WorkCost } from '../way-tariff.ts';
import { MEASURE_SIZE, slots } from './measure-pool.ts';

/** Which of a sheet's two directions a line runs in. Faces: 0 level, 1 plumb. Voids: 0 along the joists, 1 across. */
export type Axis = 0 | 1;

/** A flat part of the building that cable runs in: a wall's face, the space under a floor, a loft. */
export interface Sheet {
  readonly key: string;
  /** Where a spot of the sheet is in the building. */
  readonly positionAt: (a: number, b: number) => Position;
}

/** A stretch of a line in which one metre is like another. Costs are by the metre and by each thing crossed. */
export interface LinePart {
  readonly fromMm: number;
  readonly toMm: number;
  readonly lay: Lay;
  readonly details: SegmentDetails;
  readonly perM: WorkCost;
  /** For passing the part as a whole: the hole through a wall. */
  readonly once?: WorkCost;
  /** Joists or studs before a place on the line, one exactly there counting half; absent: none. */
  readonly crossedBefore?: (tMm: number) => number;
  readonly perCrossing?: WorkCost;
  /** Whether each crossing is where a joist may not be cut. */
  readonly unfit?: boolean;
  /** For opening the floor over a place on it; absent where nothing has to be opened. */
  readonly opening?: WorkCost;
  /** Floors opened on the way to a place on the line, from where cable comes into the void; absent: by the metre, or none. */
  readonly openedBefore?: (tMm: number) => number;
  /** An electrician would avoid it. */
  readonly poor?: boolean;
  /** In insulation, or maybe: too warm for the 20 A of a ring and its spurs. */
  readonly warm?: boolean;
  /** A chase in a party wall, or level where people drive nails: avoided where it costs little to. */
  readonly unliked?: boolean;
  /** On the surface of a wall that could be chased: poor unless an end of the cable is on the surface too. */
  readonly onSurface?: boolean;
}

/** A straight line that cable may run along from its first part's start to its last part's end. */
export interface WayLine {
  readonly sheet: Sheet;
  readonly axis: Axis;
  /** The coordinate that stays the same along it. */
  readonly fixedMm: number;
  readonly parts: readonly LinePart[];
  /** Where on it a cable comes into the void, for lines that are there for that cable's sake. */
  readonly dropMm?: number;
  /** The height of the box that a plumb line is there for; absent for the others. Nothing turns that ends there. */
  readonly boxMm?: number;
  /** For turning into it or off it on its face. */
  readonly atTurn?: WorkCost;
  /** For turning into it or off it, or going through the wall from it: half of what a drop takes, which has two ends. */
  readonly atEnd?: WorkCost;
}

/** What a line comes to from its start to a place on it. */
export interface Measure {
  readonly millipence: number;
  readonly minutes: number;
  readonly mess: number;
  readonly lengthMm: number;
  readonly poorMm: number;
  readonly surfaceMm: number;
  readonly unlikedMm: number;
  readonly warmMm: number;
  /** Joists crossed where they may not be cut. */
  readonly unfit: number;
}

/** Places nearer than this are one place, mm. */
export const SAME_MM = 0.05;

export const startOf = ({ parts }: WayLine): number => parts[0]?.fromMm ?? 0;
export const endOf = ({ parts }: WayLine): number => parts.at(-1)?.toMm ?? 0;

export const positionOn = ({ sheet, axis, fixedMm }: WayLine, tMm: number): Position =>
  axis === 0 ? sheet.positionAt(tMm, fixedMm) : sheet.positionAt(fixedMm, tMm);

/** Nought of everything. */
export const nothing: Measure = {
  millipence: 0,
  minutes: 0,
  mess: 0,
  lengthMm: 0,
  poorMm: 0,
  surfaceMm: 0,
  unlikedMm: 0,
  warmMm: 0,
  unfit: 0,
};

/** What work comes to where no way is gone: a floor that is opened. */
export const measureOf = remembered((work: WorkCost): Measure => ({ ...nothing, ...work }));

/**
 * What a line comes to from its start to any place on it, as numbers by `slots`. Never falls along the line, so differences
 * are costs.
 */
export class LineMeasures {
  readonly #parts: readonly LinePart[];
  readonly #cableMillipencePerM: number;
  /** Up to where each part begins, one after another, as far as anybody asked. */
  #before: Float64Array | null = null;
  #known = 1;

  constructor({ parts }: WayLine, cableMillipencePerM: number) {
    [this.#parts, this.#cableMillipencePerM] = [parts, cableMillipencePerM];
  }

  /** Writes what the line comes to up to a place on it. */
  writeUpTo(tMm: number, into: Float64Array, at: number): void {
    const index = firstReaching(this.#parts, tMm);
    const before = this.#beforePart(index);
    const part = this.#parts[index];
    for (let key = 0; key < MEASURE_SIZE; key += 1)
      into[at + key] = before[index * MEASURE_SIZE + key] as number;
    if (part !== undefined && part.fromMm < tMm) this.#add(part, tMm, into, at);
  }

  #beforePart(index: number): Float64Array {
    this.#before ??= new Float64Array((this.#parts.length + 1) * MEASURE_SIZE);
    const before = this.#before;
    for (; this.#known <= index; this.#known += 1) {
      const at = this.#known * MEASURE_SIZE;
      const part = this.#parts[this.#known - 1] as LinePart;
      before.copyWithin(at, at - MEASURE_SIZE, at);
      this.#add(part, part.toMm, before, at);
    }
    return before;
  }

  /** Adds what a part comes to from its start to a place on it. */
  #add(part: LinePart, toMm: number, sums: Float64Array, at: number): void {
    const runMm = toMm - part.fromMm;
    const countTo = (before: (tMm: number) => number) => before(toMm) - before(part.fromMm);
    const crossed = part.crossedBefore ? countTo(part.crossedBefore) : 0;
    const opened = part.openedBefore ? countTo(part.openedBefore) : 0;
    const each = part.perCrossing ?? noWork;
    const board = part.opening ?? noWork;
    const once = part.once !== undefined && toMm >= part.toMm - SAME_MM ? part.once : noWork;
    const { perM } = part;
    const metres = runMm / 1000;
    const rate = perM.millipence + this.#cableMillipencePerM;
    addTo(
      sums,
      at + slots.millipence,
      rate * metres + each.millipence * crossed + board.millipence * opened + once.millipence,
    );
    addTo(
      sums,
      at + slots.minutes,
      perM.minutes * metres + each.minutes * crossed + board.minutes * opened + once.minutes,
    );
    addTo(sums, at + slots.mess, perM.mess * metres + each.mess * crossed + board.mess * opened + once.mess);
    addTo(sums, at + slots.lengthMm, runMm);
    if (part.poor === true) addTo(sums, at + slots.poorMm, runMm);
    if (part.onSurface === true) addTo(sums, at + slots.surfaceMm, runMm);
    if (part.unliked === true) addTo(sums, at + slots.unlikedMm, runMm);
    if (part.warm === true) addTo(sums, at + slots.warmMm, runMm);
    if (part.unfit === true) addTo(sums, at + slots.unfit, crossed);
  }
}

function addTo(sums: Float64Array, at: number, value: number): void {
  sums[at] = (sums[at] as number) + value;
}

/** The place in a line's parts of the first that reaches as far as a place on it; their number where none does. */
function firstReaching(parts: readonly LinePart[], tMm: number): number {
  let [low, high] = [0, parts.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((parts[middle] as LinePart).toMm < tMm) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Whether cable may turn, begin or end at a place on a line: on it, and not within the thickness of a wall. */
export function isStop({ parts }: WayLine, tMm: number): boolean {
  for (let at = firstReaching(parts, tMm - SAME_MM); at < parts.length; at += 1) {
    const { fromMm, toMm, once } = parts[at] as LinePart;
    if (fromMm > tMm + SAME_MM) return false;
    if (once === undefined || Math.abs(tMm - fromMm) <= SAME_MM || Math.abs(tMm - toMm) <= SAME_MM)
      return true;
  }
  return false;
}

/** What opening the floor takes over a place on a line, the dearest of what meets there; nothing where there is none to open. */
export function openingAt({ parts }: WayLine, tMm: number): WorkCost {
  let dearest = noWork;
  let isOpened = false;
  for (let at = firstReaching(parts, tMm - SAME_MM); at < parts.length; at += 1) {
    const { fromMm, opening } = parts[at] as LinePart;
    if (fromMm > tMm + SAME_MM) break;
    if (opening === undefined || (isOpened && opening.millipence <= dearest.millipence)) continue;
    [dearest, isOpened] = [opening, true];
  }
  return dearest;
}

/** What of a line lies within a stretch; null where nothing does. */
export function clipped(line: WayLine, [lowMm, highMm]: readonly [number, number]): WayLine | null {
  const parts = line.parts
    .map((part) => ({
      ...part,
      fromMm: Math.max(part.fromMm, lowMm),
      toMm: Math.min(part.toMm, highMm),
    }))
    .filter(({ fromMm, toMm }) => toMm - fromMm > SAME_MM);
  return parts.length === 0 ? null : { ...line, parts };
}
