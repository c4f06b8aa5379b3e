import {
  endOf,
  isStop,
  LineMeasures,
  type Measure,
  nothing,
  SAME_MM,
  startOf,
  type WayLine,
} from './line.ts';
import {
  addMeasure,
  lengthBetweenMm,
  MeasurePool,
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

/** One way out of a node: along a line or over a join. */
export interface NetEdge {
  readonly to: number;
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

/** A way along a line. There are many and few are ever measured: that waits until somebody asks. */
class AlongLine extends WeighedOnce implements NetEdge {
  readonly to: number;
  readonly way: string | null;
  readonly #from: NetNode;
  readonly #until: NetNode;

  constructor(from: NetNode, until: NetNode, way: string | null) {
    super();
    this.to = until.id;
    this.way = way;
    this.#from = from;
    this.#until = until;
  }

  get join(): null {
    return null;
  }

  get lengthMm(): number {
    return lengthBetweenMm(this.#from, this.#until);
  }

  get measure(): Measure {
    const measure = { ...nothing };
    writeDifference(measure, this.#from, this.#until);
    return measure;
  }

  addTo(sum: MeasureSum): void {
    writeDifference(difference, this.#from, this.#until);
    addMeasure(sum, difference);
  }

  weigh(weighing: Weighing): number {
    writeDifference(difference, this.#from, this.#until);
    return weightOf({ measure: difference, way: this.way, join: null }, weighing);
  }
}

/** Of the stretch that is being weighed or added, and of no other. */
const difference = { ...nothing };

/** A way over a join. */
class OverJoin extends WeighedOnce implements NetEdge {
  readonly to: number;
  readonly join: Join;

  constructor(to: number, join: Join) {
    super();
    this.to = to;
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
function wayOf({ sheet, axis }: WayLine): string | null {
  if (sheet.key.startsWith('void ')) return sheet.key;
  return axis === 0 ? 'level' : null;
}

/** A place on a line of a net, and what the line comes to up to there. */
export interface NetNode extends Pooled {
  readonly id: number;
  readonly tMm: number;
}

/** A place that is measured when somebody asks: of most that an end brings nobody does. */
class LazyNode implements NetNode {
  readonly id: number;
  readonly tMm: number;
  readonly pool: MeasurePool;
  readonly #line: LineMeasures;
  #at = -1;

  constructor({ id, tMm }: Pick<NetNode, 'id' | 'tMm'>, line: LineMeasures, pool: MeasurePool) {
    [this.id, this.tMm, this.pool, this.#line] = [id, tMm, pool, line];
  }

  get at(): number {
    if (this.#at < 0) {
      this.#at = this.pool.take();
      this.#line.writeUpTo(this.tMm, this.pool.values, this.#at);
    }
    return this.#at;
  }
}

/** A place by another number. */
export const numberedAs = (node: NetNode, id: number): NetNode => ({
  id,
  tMm: node.tMm,
  pool: node.pool,
  get at() {
    return node.at;
  },
});

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
  readonly #stops = new Map<number, NetNode[]>();
  readonly #nodeStops: Stop[] = [];
  readonly #edges = new Map<number, NetEdge[]>();
  /** With the nodes that each joins. */
  readonly #joins: { readonly join: Join; readonly a: number; readonly b: number }[] = [];

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
    return this.#firstNode + this.#nodeStops.length;
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
    const stop = node < this.#firstNode ? this.#below?.stopOf(node) : this.#nodeStops[node - this.#firstNode];
    if (stop === undefined) throw new Error(`No node ${node}.`);
    return stop;
  }

  /** The node at a place; added where there is none. */
  node({ line, tMm }: Stop): number {
    const known = this.nodeAt(line, tMm);
    if (known !== null) return known.id;
    const id = this.nodeCount;
    const node = new LazyNode({ id, tMm }, this.measuresOf(line), this.#pool);
    const own = this.#stops.get(line);
    if (own === undefined) this.#stops.set(line, [node]);
    else own.splice(firstBeyond(own, tMm), 0, node);
    this.#nodeStops.push({ line, tMm });
    return id;
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
    this.#joins.push({ join, a: this.node(join.a), b: this.node(join.b) });
  }

  /** Works the ways out once all lines, places and joins of this layer are there. */
  finish(): this {
    for (const [line, added] of this.#stops) this.#linkAlong(line, added);
    for (const { join, a, b } of this.#joins) {
      if (a === b) continue;
      this.#add(a, new OverJoin(b, join));
      this.#add(b, new OverJoin(a, join));
    }
    return this;
  }

  /** Neighbours on a line are linked, where one of the two is new. */
  #linkAlong(line: number, added: readonly NetNode[]): void {
    const old = line < this.#firstLine ? (this.#below?.stopsOn(line) ?? []) : [];
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
    const way = wayOf(this.line(line));
    this.#add(a.id, new AlongLine(a, b, way));
    this.#add(b.id, new AlongLine(b, a, way));
  }

  /** Whether this layer has a place on a line between two others. */
  hasStopBetween(line: number, fromMm: number, toMm: number): boolean {
    const stops = this.ownStopsOn(line);
    return (stops[firstBeyond(stops, fromMm)]?.tMm ?? Number.POSITIVE_INFINITY) < toMm;
  }

  #add(from: number, edge: NetEdge): void {
    const known = this.#edges.get(from);
    if (known === undefined) this.#edges.set(from, [edge]);
    else known.push(edge);
  }

  /** The lines that this layer adds places to. */
  linesWithStops(): Iterable<number> {
    return this.#stops.keys();
  }

  /** The places on a line that this layer adds, in order along it. */
  ownStopsOn(line: number): readonly NetNode[] {
    return this.#stops.get(line) ?? [];
  }

  stopsOn(line: number): readonly NetNode[] {
    const own = this.ownStopsOn(line);
    const below = line < this.#firstLine ? (this.#below?.stopsOn(line) ?? []) : [];
    if (below.length === 0) return own;
    return own.length === 0 ? below : [...below, ...own].toSorted((a, b) => a.tMm - b.tMm);
  }

  /** The nodes that this layer adds ways to, its own and those beneath. */
  nodesWithEdges(): Iterable<number> {
    return this.#edges.keys();
  }

  /** The ways out of a node that this layer adds. */
  edgesOf(node: number): readonly NetEdge[] {
    return this.#edges.get(node) ?? [];
  }
}

/** Where a line that runs in a sheet's first direction crosses one that runs in its second; null where they do not. */
export function crossingOf(level: WayLine, plumb: WayLine): readonly [aMm: number, bMm: number] | null {
  const [aMm, bMm] = [plumb.fixedMm, level.fixedMm];
  const meets =
    aMm >= startOf(level) - SAME_MM &&
    aMm <= endOf(level) + SAME_MM &&
    bMm >= startOf(plumb) - SAME_MM &&
    bMm <= endOf(plumb) + SAME_MM;
  return meets ? [aMm, bMm] : null;
}
