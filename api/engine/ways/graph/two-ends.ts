import { crossings } from './crossings.ts';
import type { EndLayer } from './end-layer.ts';
import type { FaceLine } from './house-face-lines.ts';
import type { HouseNet } from './house-net.ts';
import { endOf, type LineMeasures, measureOf, nothing, startOf, type WayLine } from './line.ts';
import type { NumberedLine } from './line-index.ts';
import type { Join, NetEdge, Stop } from './net-edge.ts';
import type { OwnWays } from './own-ways.ts';
import { type LinesOf, wallHoles } from './wall-holes.ts';
import { type NetBelow, type NetNode, numberedAs, WayNet } from './way-net.ts';

/**
 * A house with both ends of a cable on it. What each end brings was worked out over the house alone, whichever other end
 * there is; here is only what is between the two. Numbers: the house's, those of the first end, then of the second,
 * then what is between.
 */
export class TwoEnds implements NetBelow {
  readonly #a: WayNet;
  readonly #b: WayNet;
  readonly #houseLines: number;
  readonly #houseNodes: number;
  readonly #between: WayNet;
  /** Where the second end's cable begins; null where nothing leads there. */
  readonly target: number | null;

  constructor(house: HouseNet, a: EndLayer, b: EndLayer) {
    [this.#a, this.#b] = [a.net, b.net];
    [this.#houseLines, this.#houseNodes] = [house.net.lineCount, house.net.nodeCount];
    this.target = b.node === null ? null : this.node(b.node);
    this.#between = new WayNet(this, house.material.tariff.cableMillipencePerM);
    for (const join of joinsBetween(house, a, b, a.net.lineCount - this.#houseLines))
      this.#between.join(join);
    this.#between.finish();
    for (const line of a.net.linesWithStops())
      if (line < this.#houseLines && b.net.ownStopsOn(line).length > 0) this.#linkOn(line, house.net);
  }

  get lineCount(): number {
    return this.#a.lineCount + this.#b.lineCount - this.#houseLines;
  }

  get nodeCount(): number {
    return this.#a.nodeCount + this.#b.nodeCount - this.#houseNodes;
  }

  /** All nodes: the house's, both ends', and those between them. */
  get wholeNodeCount(): number {
    return this.#between.nodeCount;
  }

  /** The ways that the first end brings. */
  get firstWays(): OwnWays {
    return this.#a.ways();
  }

  /** The ways that the second end brings, in its own numbers. */
  get secondWays(): OwnWays {
    return this.#b.ways();
  }

  /** The ways that neither brings alone. */
  get waysBetween(): OwnWays {
    return this.#between.ways();
  }

  /** What the second end calls a node or a line, as it is called here. */
  readonly node = (node: number): number =>
    node < this.#houseNodes ? node : node + this.#a.nodeCount - this.#houseNodes;
  readonly #line = (line: number): number =>
    line < this.#houseLines ? line : line + this.#a.lineCount - this.#houseLines;

  /** What is no node or line of the first end alone, as the second end calls it. */
  readonly #secondNode = (node: number): number =>
    node < this.#houseNodes ? node : node - this.#a.nodeCount + this.#houseNodes;
  readonly #ownLine = (line: number): number =>
    line < this.#houseLines ? line : line - this.#a.lineCount + this.#houseLines;

  /** The places that the second end adds to a line, in order along it. */
  #secondOn(line: number): readonly NetNode[] {
    return this.#b.ownStopsOn(this.#ownLine(line)).map((stop) => this.#numbered(stop, false));
  }

  /** Links the places that the two ends have on a line of the house, where nothing of the house is between them. */
  #linkOn(line: number, house: WayNet): void {
    const [own, other] = [this.#a.ownStopsOn(line), this.#b.ownStopsOn(line)];
    let last: { readonly stop: NetNode; readonly isFirst: boolean } | null = null;
    for (let i = 0, j = 0; i < own.length || j < other.length; ) {
      const isFirst =
        (own[i]?.tMm ?? Number.POSITIVE_INFINITY) <= (other[j]?.tMm ?? Number.POSITIVE_INFINITY);
      const stop = (isFirst ? own[i++] : other[j++]) as NetNode;
      if (last !== null && last.isFirst !== isFirst && !house.hasStopBetween(line, last.stop.tMm, stop.tMm))
        this.#between.linkOnLine(
          line,
          this.#numbered(last.stop, last.isFirst),
          this.#numbered(stop, isFirst),
        );
      last = { stop, isFirst };
    }
  }

  #numbered(stop: NetNode, isFirst: boolean): NetNode {
    return isFirst ? stop : numberedAs(stop, this.node(stop.id));
  }

  line(line: number): WayLine {
    if (line < this.#a.lineCount) return this.#a.line(line);
    return this.#b.line(this.#ownLine(line));
  }

  measuresOf(line: number): LineMeasures {
    if (line < this.#a.lineCount) return this.#a.measuresOf(line);
    return this.#b.measuresOf(this.#ownLine(line));
  }

  stopOf(node: number): Stop {
    if (node < this.#a.nodeCount) return this.#a.stopOf(node);
    if (node >= this.nodeCount) return this.#between.stopOf(node);
    const { line, tMm } = this.#b.stopOf(this.#secondNode(node));
    return { line: this.#line(line), tMm };
  }

  nodeAt(line: number, tMm: number): NetNode | null {
    if (line < this.#a.lineCount) {
      const known = this.#a.nodeAt(line, tMm);
      if (known !== null || line >= this.#houseLines) return known;
    }
    const known = this.#b.nodeAt(this.#ownLine(line), tMm);
    return known === null ? null : numberedAs(known, this.node(known.id));
  }

  stopsOn(line: number): readonly NetNode[] {
    const isOfA = line >= this.#houseLines && line < this.#a.lineCount;
    if (isOfA) return this.#a.stopsOn(line);
    const second = this.#secondOn(line);
    if (line >= this.#houseLines) return second;
    return [...this.#a.stopsOn(line), ...second].toSorted((x, y) => x.tMm - y.tMm);
  }

  /** The ways out of a node that are not the house's own. */
  eachEdge(node: number, visit: (to: number, edge: NetEdge) => void): void {
    if (node < this.#a.nodeCount) this.#a.ways().eachFrom(node, visit);
    const isOfB = node >= this.#a.nodeCount && node < this.nodeCount;
    if (isOfB || node < this.#houseNodes)
      this.#b.ways().eachFrom(this.#secondNode(node), (to, edge) => visit(this.node(to), edge));
    this.#between.ways().eachFrom(node, visit);
  }
}

/** Where the lines of two ends meet: turns, boxes in line, holes through a wall that both have lines on. */
function joinsBetween(house: HouseNet, a: EndLayer, b: EndLayer, by: number): readonly Join[] {
  const numbered = [...b.index.sheets].flatMap((sheet) =>
    a.index.has(sheet) ? b.index.in(sheet).map(({ number, line }) => ({ number: number + by, line })) : [],
  );
  const both = [...b.walls].filter((wall) => a.walls.has(wall));
  return [
    ...crossings(numbered, a.index),
    ...sameLines(numbered, a),
    ...wallHoles(house.material, both, renumbered(b.linesOf, by), a.linesOf),
  ];
}

const renumbered =
  (linesOf: LinesOf, by: number): LinesOf =>
  (face) =>
    linesOf(face).map((line): FaceLine => ({ ...line, number: line.number + by }));

/** Where an end lies on a line of the other that is in line with its own: boxes above one another, with nothing level between. */
function sameLines(own: readonly NumberedLine[], other: EndLayer): readonly Join[] {
  return own.flatMap(({ number, line }) => {
    return other.index.inLineWith(line).flatMap((one) => {
      const tMm = Math.max(startOf(line), startOf(one.line));
      // Where the other begins its own drop does: only the end of it by this box is on the line.
      const ends = [
        [other.startOn(one.number), line.atEnd === undefined ? nothing : measureOf(line.atEnd)],
        [tMm, nothing],
      ] as const;
      return ends.flatMap(([at, measure]): readonly Join[] =>
        at === null || at < startOf(line) || at > endOf(line) || at > endOf(one.line)
          ? []
          : [{ a: { line: number, tMm: at }, b: { line: one.number, tMm: at }, measure }],
      );
    });
  });
}
