import type { OwnWays } from './own-ways.ts';
import type { Weighing } from './weigh.ts';

/** The ways of a layer weighed for one kind of cable, each when it is first met: of most that an end brings none ever is. */
export class WeighedWays {
  readonly ways: OwnWays;
  readonly weighing: Weighing;
  /** By way; NaN where it has not been weighed yet. */
  readonly #weights: Float64Array;

  constructor(ways: OwnWays, weighing: Weighing) {
    [this.ways, this.weighing] = [ways, weighing];
    this.#weights = new Float64Array(ways.wayCount).fill(Number.NaN);
  }

  /** By the way's place in the arrays; either direction of one weighs the same. */
  weightAt(at: number): number {
    const way = this.ways.way[at] as number;
    const known = this.#weights[way] as number;
    if (!Number.isNaN(known)) return known;
    const weight = this.ways.edgeAt(at).weigh(this.weighing);
    this.#weights[way] = weight;
    return weight;
  }
}
