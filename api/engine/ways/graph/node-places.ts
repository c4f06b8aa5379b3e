import { positionOn } from './line.ts';
import type { NetBelow } from './way-net.ts';

/** A place in the building, mm: x, y, level. */
export type Place = readonly [x: number, y: number, levelMm: number];

/** Where the nodes of a house are, for what asks again and again how far they are from somewhere. */
export class NodePlaces {
  readonly #houseNodes: number;
  /** NaN where nobody asked yet. */
  readonly #xs: Float64Array;
  readonly #ys: Float64Array;
  readonly #levels: Float64Array;

  /** @param houseNodes how many the house has: those of ends come and go, and are not kept. */
  constructor(houseNodes: number) {
    this.#houseNodes = houseNodes;
    this.#xs = new Float64Array(houseNodes).fill(Number.NaN);
    this.#ys = new Float64Array(houseNodes);
    this.#levels = new Float64Array(houseNodes);
  }

  /** Where a node of a net over this house is. */
  placeOf(net: NetBelow, node: number): Place {
    const { line, tMm } = net.stopOf(node);
    const { at, levelMm } = positionOn(net.line(line), tMm);
    return [at[0], at[1], levelMm];
  }

  /** How far a node is from a place in a straight line, mm: no way between them is shorter. */
  distanceMm(net: NetBelow, node: number, [x, y, levelMm]: Place): number {
    if (node >= this.#houseNodes) return apart(this.placeOf(net, node), x, y, levelMm);
    if (Number.isNaN(this.#xs[node])) {
      const place = this.placeOf(net, node);
      this.#xs[node] = place[0];
      this.#ys[node] = place[1];
      this.#levels[node] = place[2];
    }
    return Math.sqrt(
      ((this.#xs[node] as number) - x) ** 2 +
        ((this.#ys[node] as number) - y) ** 2 +
        ((this.#levels[node] as number) - levelMm) ** 2,
    );
  }
}

const apart = (place: Place, x: number, y: number, levelMm: number): number =>
  Math.sqrt((place[0] - x) ** 2 + (place[1] - y) ** 2 + (place[2] - levelMm) ** 2);
