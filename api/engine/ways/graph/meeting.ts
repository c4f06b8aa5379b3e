import { NodePlaces, type Place } from './node-places.ts';
import { ReachedFrom } from './reached-from.ts';
import { stepsTo } from './reached-nodes.ts';
import type { WeighedNet } from './row.ts';
import type { FoundWay } from './shortest.ts';
import type { TwoEnds } from './two-ends.ts';
import type { NetEdge } from './way-net.ts';

/** Two ends on a house, and how long a way between them may be. */
export interface MeetingEnds {
  readonly ends: TwoEnds;
  /** Where the first end's cable begins. */
  readonly start: number;
  /** Where the second's does. */
  readonly target: number;
  /** Infinity where any length will do. */
  readonly withinMm: number;
}

/** One of the two ends: what is reached from it, and where it wants to get to. */
interface Side {
  readonly reached: ReachedFrom;
  readonly to: Place;
}

/** A node that both ends reached, and what the way through it weighs. */
interface Meeting {
  readonly node: number;
  readonly weight: number;
}

/**
 * The least ways of a house for single pairs of ends: grown from both until neither can better where they met. Little of the
 * house is looked at, and nothing is kept. Of two ways that weigh the same always the same one.
 */
export class Meetings {
  readonly #houseNodes: number;
  readonly #places: NodePlaces;
  readonly #reached = [new ReachedFrom(), new ReachedFrom()] as const;

  /** @param houseNodes how many nodes the house has. */
  constructor(houseNodes: number) {
    this.#houseNodes = houseNodes;
    this.#places = new NodePlaces(houseNodes);
  }

  /**
   * The least way between two ends. Places are left out that a cable of the length cannot pass on its way; of several ways to
   * a place only the cheapest goes on, so a dearer one that is shorter may be lost.
   *
   * @returns null when nothing leads there.
   */
  between(weighed: WeighedNet, sought: MeetingEnds): FoundWay | null {
    const { ends, start, target } = sought;
    const first: Side = { reached: this.#reached[0], to: this.#places.placeOf(ends, target) };
    const second: Side = { reached: this.#reached[1], to: this.#places.placeOf(ends, start) };
    first.reached.begin(start, ends.wholeNodeCount);
    second.reached.begin(target, ends.wholeNodeCount);
    const growth = new Growth({ weighed, sought, places: this.#places, houseNodes: this.#houseNodes });
    if (start === target) growth.meeting = { node: start, weight: 0 };
    for (;;) {
      const [weightA, weightB] = [first.reached.frontier, second.reached.frontier];
      if (weightA + weightB >= (growth.meeting?.weight ?? Number.POSITIVE_INFINITY)) break;
      const [side, other] = weightA <= weightB ? [first, second] : [second, first];
      const node = side.reached.settleNext();
      if (node >= 0) growth.growFrom(node, side, other);
    }
    return growth.meeting === null ? null : wayThrough(growth.meeting, first.reached, second.reached);
  }
}

/** In what a pair of ends is sought. */
interface Ground {
  readonly weighed: WeighedNet;
  readonly sought: MeetingEnds;
  readonly places: NodePlaces;
  readonly houseNodes: number;
}

/** How far two sides have grown towards one another. */
class Growth {
  /** Where they have met at the least weight so far. */
  meeting: Meeting | null = null;
  readonly #ground: Ground;
  readonly #isLimited: boolean;

  constructor(ground: Ground) {
    this.#ground = ground;
    this.#isLimited = ground.sought.withinMm < Number.POSITIVE_INFINITY;
  }

  /** Reaches from a node on to its neighbours. */
  growFrom(from: number, side: Side, other: Side): void {
    const { weighed, sought, houseNodes } = this.#ground;
    const sides = [side, other] as const;
    if (from < houseNodes) {
      const { first, edges } = weighed.flat;
      for (let at = first[from] as number; at < (first[from + 1] as number); at += 1)
        this.#reach(
          sides,
          { from, to: (edges[at] as NetEdge).to },
          edges[at] as NetEdge,
          weighed.weightAt(at),
        );
    }
    sought.ends.eachEdge(from, (to, edge) =>
      this.#reach(sides, { from, to }, edge, edge.weightBy(weighed.weighing)),
    );
  }

  #reach(
    [side, other]: readonly [Side, Side],
    { from, to }: { readonly from: number; readonly to: number },
    edge: NetEdge,
    by: number,
  ): void {
    const weight = side.reached.weightOf(from) + by;
    if (weight >= side.reached.weightOf(to)) return;
    const { sought, places } = this.#ground;
    const lengthMm = side.reached.lengthMm(from) + edge.lengthMm;
    if (this.#isLimited && lengthMm + places.distanceMm(sought.ends, to, side.to) > sought.withinMm) return;
    side.reached.reach(to, { weight, lengthMm, from, edge });
    const whole = weight + other.reached.weightOf(to);
    if (whole < Number.POSITIVE_INFINITY) this.meeting = lesser(this.meeting, { node: to, weight: whole });
  }
}

function lesser(known: Meeting | null, met: Meeting): Meeting {
  if (known === null || met.weight < known.weight) return met;
  return met.weight === known.weight && met.node < known.node ? met : known;
}

/** From the first end to where both met, and on to the second: what lies along a way is the same in either direction. */
function wayThrough({ node, weight }: Meeting, first: ReachedFrom, second: ReachedFrom): FoundWay {
  const steps = stepsTo(first, node);
  let from = node;
  for (let step = second.stepTo(from); step !== null; step = second.stepTo(from)) {
    steps.push({ from, edge: step.edge });
    from = step.from;
  }
  return { weight, steps };
}
