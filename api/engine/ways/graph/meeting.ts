import type { NetEdge } from './net-edge.ts';
import { NodePlaces, type Place } from './node-places.ts';
import { ReachedFrom } from './reached-from.ts';
import { stepsTo } from './reached-nodes.ts';
import type { FoundWay } from './shortest.ts';
import type { TwoEnds } from './two-ends.ts';
import type { WeighedWays } from './weighed-ways.ts';

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
  between(weighed: WeighedWays, sought: MeetingEnds): FoundWay | null {
    const { ends, start, target } = sought;
    const first: Side = { reached: this.#reached[0], to: this.#places.placeOf(ends, target) };
    const second: Side = { reached: this.#reached[1], to: this.#places.placeOf(ends, start) };
    beginAt(first.reached, start, ends.wholeNodeCount);
    beginAt(second.reached, target, ends.wholeNodeCount);
    const ground = { weighed, sought, places: this.#places, houseNodes: this.#houseNodes };
    const growth = new Growth(ground, [first, second]);
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

function beginAt(reached: ReachedFrom, node: number, nodeCount: number): void {
  reached.begin(nodeCount);
  reached.reach(node, 0, node, null);
  reached.setLengthMm(node, 0);
}

/** In what a pair of ends is sought. */
interface Ground {
  readonly weighed: WeighedWays;
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
  /** What is grown from, and what it weighs to there. */
  #side: Side;
  #other: Side;
  #from = 0;
  #weight = 0;

  constructor(ground: Ground, [side, other]: readonly [Side, Side]) {
    [this.#ground, this.#side, this.#other] = [ground, side, other];
    this.#isLimited = ground.sought.withinMm < Number.POSITIVE_INFINITY;
  }

  /** Reaches from a node of one side on to its neighbours. */
  growFrom(from: number, side: Side, other: Side): void {
    [this.#from, this.#side, this.#other] = [from, side, other];
    this.#weight = side.reached.weightOf(from);
    const { weighed, sought, houseNodes } = this.#ground;
    if (from < houseNodes) {
      const { ways } = weighed;
      const end = ways.first[from + 1] as number;
      for (let at = ways.first[from] as number; at < end; at += 1)
        this.#reach(ways.to[at] as number, ways.edgeAt(at), weighed.weightAt(at));
    }
    sought.ends.eachEdge(from, this.#overEdge);
  }

  readonly #overEdge = (to: number, edge: NetEdge): void =>
    this.#reach(to, edge, edge.weightBy(this.#ground.weighed.weighing));

  #reach(to: number, edge: NetEdge, by: number): void {
    const { reached, to: aim } = this.#side;
    const weight = this.#weight + by;
    if (weight >= reached.weightOf(to)) return;
    if (this.#isLimited) {
      const { sought, places } = this.#ground;
      const lengthMm = reached.lengthMm(this.#from) + edge.lengthMm;
      if (lengthMm + places.distanceMm(sought.ends, to, aim) > sought.withinMm) return;
      reached.setLengthMm(to, lengthMm);
    }
    reached.reach(to, weight, this.#from, edge);
    const whole = weight + this.#other.reached.weightOf(to);
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
