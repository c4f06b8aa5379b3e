import { isStop, LineMeasures, SAME_MM, type WayLine } from './line.ts';
import { MeasurePool, type Pooled } from './measure-pool.ts';
import { AlongLine, type Join, type NetEdge, OverJoin, type Stop, wayOf } from './net-edge.ts';
import { OwnWays } from './own-ways.ts';

/** A place on a line of a net. */
export interface NetNode {
  readonly id: number;
  readonly tMm: number;
  /** What the line comes to up to there. */
  readonly measured: Pooled;
}

/** A place that is measured when somebody asks: of most that an end brings nobody does. */
class LazyNode implements NetNode, Stop {
  readonly id: number;
  readonly line: number;
  readonly tMm: number;
  readonly #pool: MeasurePool;
  readonly #measures: LineMeasures;
  #measured: Pooled | null = null;

  constructor(id: number, { line, tMm }: Stop, measures: LineMeasures, pool: MeasurePool) {
    this.id = id;
    this.line = line;
    this.tMm = tMm;
    this.#pool = pool;
    this.#measures = measures;
  }

  get measured(): Pooled {
    if (this.#measured === null) {
      this.#measured = this.#pool.take();
      this.#measures.writeUpTo(this.tMm, this.#measured.page, this.#measured.at);
    }
    return this.#measured;
  }
}

/** A place by another number. */
export const numberedAs = (node: NetNode, id: number): NetNode => ({
  id,
  tMm: node.tMm,
  get measured() {
    return node.measured;
  },
});

const noStops: readonly LazyNode[] = [];

/** A net that more is laid over. */
export interface NetBelow {
  readonly lineCount: number;
  readonly nodeCount: number;
  line(index: number): WayLine;
  /** What a line comes to from its start to any place. */
  measuresOf(line: number): LineMeasures;
  stopOf(node: number): Stop;
  /** The node at a place of a line; null where there is none. */
  nodeAt(line: number, tMm: number): NetNode | null;
  /** The places on a line, in order along it. */
  stopsOn(line: number): readonly NetNode[];
}

/** Where in a list in order along a line the first place beyond a distance stands; its length where none does. */
function firstBeyond(stops: readonly NetNode[], tMm: number): number {
  let [low, high] = [0, stops.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((stops[middle] as NetNode).tMm <= tMm) low = middle + 1;
    else high = middle;
  }
  return low;
}

/**
 * Lines with the places on them where cable may turn, built up in layers: the house, then what an end of a cable brings,
 * then what is between two ends. A layer adds lines, places and ways; it never changes what is beneath it.
 */
export class WayNet implements NetBelow {
  readonly #below: NetBelow | null;
  readonly #cableMillipencePerM: number;
  readonly #firstLine: number;
  readonly #firstNode: number;
  readonly #lines: WayLine[] = [];
  readonly #measures: LineMeasures[] = [];
  readonly #pool = new MeasurePool();
  /** By line: the places that this layer adds, in order along it. */
  readonly #stops = new Map<number, LazyNode[]>();
  readonly #nodes: LazyNode[] = [];
  readonly #joins: Join[] = [];
  /** The nodes that each joins, by twos. */
  readonly #joined: number[] = [];
  /** The nodes that each way leads between, by twos. */
  readonly #ends: number[] = [];
  readonly #edges: NetEdge[] = [];
  /** The ways laid out; null until somebody asks. */
  #ways: OwnWays | null = null;

  constructor(below: NetBelow | null, cableMillipencePerM: number) {
    this.#below = below;
    this.#cableMillipencePerM = cableMillipencePerM;
    this.#firstLine = below?.lineCount ?? 0;
    this.#firstNode = below?.nodeCount ?? 0;
  }

  get lineCount(): number {
    return this.#firstLine + this.#lines.length;
  }

  get nodeCount(): number {
    return this.#firstNode + this.#nodes.length;
  }

  addLine(line: WayLine): number {
    this.#lines.push(line);
    this.#measures.push(new LineMeasures(line, this.#cableMillipencePerM));
    return this.lineCount - 1;
  }

  line(index: number): WayLine {
    const line = index < this.#firstLine ? this.#below?.line(index) : this.#lines[index - this.#firstLine];
    if (line === undefined) throw new Error(`No line ${index}.`);
    return line;
  }

  measuresOf(line: number): LineMeasures {
    const measures =
      line < this.#firstLine ? this.#below?.measuresOf(line) : this.#measures[line - this.#firstLine];
    if (measures === undefined) throw new Error(`No line ${line}.`);
    return measures;
  }

  stopOf(node: number): Stop {
    const stop = node < this.#firstNode ? this.#below?.stopOf(node) : this.#nodes[node - this.#firstNode];
    if (stop === undefined) throw new Error(`No node ${node}.`);
    return stop;
  }

  /** The node at a place; added where there is none. */
  node(stop: Stop): number {
    const { line, tMm } = stop;
    const known = this.nodeAt(line, tMm);
    if (known !== null) return known.id;
    const node = new LazyNode(this.nodeCount, stop, this.measuresOf(line), this.#pool);
    const own = this.#stops.get(line);
    if (own === undefined) this.#stops.set(line, [node]);
    else own.splice(firstBeyond(own, tMm), 0, node);
    this.#nodes.push(node);
    return node.id;
  }

  nodeAt(line: number, tMm: number): NetNode | null {
    const own = this.ownStopsOn(line);
    // From a little before: whether one there is near enough is told by the distance, to the last digit.
    for (let at = firstBeyond(own, tMm - 2 * SAME_MM); at < own.length; at += 1) {
      const each = own[at] as NetNode;
      if (Math.abs(each.tMm - tMm) <= SAME_MM) return each;
      if (each.tMm > tMm) break;
    }
    return line < this.#firstLine && this.#below !== null ? this.#below.nodeAt(line, tMm) : null;
  }

  /** Joins two places; nothing where either is no place to stop. */
  join(join: Join): void {
    if (!isStop(this.line(join.a.line), join.a.tMm) || !isStop(this.line(join.b.line), join.b.tMm)) return;
    this.turn(join);
  }

  /** Joins two places that are known to be places to stop. */
  turn(join: Join): void {
    this.#joins.push(join);
    this.#joined.push(this.node(join.a), this.node(join.b));
  }

  /** Works the ways out once all lines, places and joins of this layer are there. */
  finish(): this {
    for (const [line, added] of this.#stops) this.#linkAlong(line, added);
    for (const [index, join] of this.#joins.entries()) {
      const [a, b] = [this.#joined[2 * index] as number, this.#joined[2 * index + 1] as number];
      if (a !== b) this.#add(a, b, new OverJoin(join));
    }
    return this;
  }

  /** Neighbours on a line are linked, where one of the two is new. */
  #linkAlong(line: number, added: readonly NetNode[]): void {
    const old = line < this.#firstLine ? (this.#below?.stopsOn(line) ?? noStops) : noStops;
    let last: NetNode | undefined;
    for (const [index, node] of added.entries()) {
      const at = firstBeyond(old, node.tMm);
      const [before, after, next] = [old[at - 1], old[at], added[index + 1]];
      const nearest = last !== undefined && (before === undefined || last.tMm >= before.tMm) ? last : before;
      if (nearest !== undefined) this.linkOnLine(line, nearest, node);
      // The next new place links itself with this one where nothing old is between them.
      if (after !== undefined && (next === undefined || after.tMm <= next.tMm))
        this.linkOnLine(line, node, after);
      last = node;
    }
  }

  /** Links two places on a line. */
  linkOnLine(line: number, a: NetNode, b: NetNode): void {
    this.#add(a.id, b.id, new AlongLine(a, b, wayOf(this.line(line))));
  }

  /** Whether this layer has a place on a line between two others. */
  hasStopBetween(line: number, fromMm: number, toMm: number): boolean {
    const stops = this.ownStopsOn(line);
    return (stops[firstBeyond(stops, fromMm)]?.tMm ?? Number.POSITIVE_INFINITY) < toMm;
  }

  #add(a: number, b: number, edge: NetEdge): void {
    this.#ends.push(a, b);
    this.#edges.push(edge);
    this.#ways = null;
  }

  /** The lines that this layer adds places to. */
  linesWithStops(): Iterable<number> {
    return this.#stops.keys();
  }

  /** The places on a line that this layer adds, in order along it. */
  ownStopsOn(line: number): readonly NetNode[] {
    return this.#stops.get(line) ?? noStops;
  }

  stopsOn(line: number): readonly NetNode[] {
    const own = this.ownStopsOn(line);
    const below = line < this.#firstLine ? (this.#below?.stopsOn(line) ?? noStops) : noStops;
    if (below.length === 0) return own;
    return own.length === 0 ? below : [...below, ...own].toSorted((a, b) => a.tMm - b.tMm);
  }

  /** The ways that this layer adds. */
  ways(): OwnWays {
    const nodes = { nodesBelow: this.#firstNode, nodeCount: this.nodeCount };
    this.#ways ??= new OwnWays({ ends: this.#ends, edges: this.#edges }, nodes);
    return this.#ways;
  }
}
