import { type Measure, nothing, type WayLine } from './line.ts';
import {
  addMeasure,
  lengthBetweenMm,
  type MeasureSum,
  type Pooled,
  writeDifference,
} from './measure-pool.ts';
import { type Weighing, weightOf } from './weigh.ts';

/** A place on a line of a net, by the line's number. */
export interface Stop {
  readonly line: number;
  readonly tMm: number;
}

/** Two places that are one, or that a hole or a turn joins. Its measure is nought where nothing has to be done. */
export interface Join {
  readonly a: Stop;
  readonly b: Stop;
  readonly measure: Measure;
  /** The wall that the join leads straight through, or null through a floor; absent: no way at all, only work. */
  readonly wallId?: string | null;
}

/** One way between two nodes, along a line or over a join: the same in both directions. */
export interface NetEdge {
  readonly lengthMm: number;
  readonly measure: Measure;
  /** Adds its measure to a sum. */
  addTo(sum: MeasureSum): void;
  readonly join: Join | null;
  /** What kind of way it is, so that it can be avoided: a void by its sheet, `level` on a wall, a `hole` through one. */
  readonly way: string | null;
  /** What it weighs, worked out anew. */
  weigh(weighing: Weighing): number;
  /** What it weighs; remembered for the weighing that was asked for last. */
  weightBy(weighing: Weighing): number;
}

/** Remembers what an edge weighs: the same end is asked for again and again by the same weighing. */
abstract class WeighedOnce {
  abstract weigh(weighing: Weighing): number;
  #weighing: Weighing | null = null;
  #weight = 0;

  weightBy(weighing: Weighing): number {
    if (this.#weighing !== weighing) {
      this.#weight = this.weigh(weighing);
      this.#weighing = weighing;
    }
    return this.#weight;
  }
}

/** A place on a line, measured when first asked. */
interface Place {
  readonly measured: Pooled;
}

/** A way along a line. There are many and few are ever measured: that waits until somebody asks. */
export class AlongLine extends WeighedOnce implements NetEdge {
  readonly way: string | null;
  readonly #from: Place;
  readonly #until: Place;

  constructor(from: Place, until: Place, way: string | null) {
    super();
    [this.way, this.#from, this.#until] = [way, from, until];
  }

  get join(): null {
    return null;
  }

  get lengthMm(): number {
    return lengthBetweenMm(this.#from.measured, this.#until.measured);
  }

  get measure(): Measure {
    const measure = { ...nothing };
    writeDifference(measure, this.#from.measured, this.#until.measured);
    return measure;
  }

  addTo(sum: MeasureSum): void {
    writeDifference(difference, this.#from.measured, this.#until.measured);
    addMeasure(sum, difference);
  }

  weigh(weighing: Weighing): number {
    writeDifference(difference, this.#from.measured, this.#until.measured);
    return weightOf({ measure: difference, way: this.way, join: null }, weighing);
  }
}

/** Of the stretch that is being weighed or added, and of no other. */
const difference = { ...nothing };

/** A way over a join. */
export class OverJoin extends WeighedOnce implements NetEdge {
  readonly join: Join;

  constructor(join: Join) {
    super();
    this.join = join;
  }

  get way(): string | null {
    return this.join.wallId === undefined ? null : 'hole';
  }

  get lengthMm(): number {
    return this.join.measure.lengthMm;
  }

  get measure(): Measure {
    return this.join.measure;
  }

  addTo(sum: MeasureSum): void {
    addMeasure(sum, this.join.measure);
  }

  weigh(weighing: Weighing): number {
    return weightOf(this, weighing);
  }
}

/** Ways of a kind go by the void that they lie in, or by being level on a wall. */
export function wayOf({ sheet, axis }: WayLine): string | null {
  if (sheet.key.startsWith('void ')) return sheet.key;
  return axis === 0 ? 'level' : null;
}
