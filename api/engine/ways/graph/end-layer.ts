import type { PlanWall } from '../../plan/plan.ts';
import { crossings } from './crossings.ts';
import type { EndLines } from './end-lines.ts';
import type { FlatFace } from './flat-face.ts';
import type { FaceLine } from './house-face-lines.ts';
import type { HouseNet } from './house-net.ts';
import { endOf, SAME_MM, startOf } from './line.ts';
import { type LineIndex, lineIndex, linesBetween, type NumberedLine } from './line-index.ts';
import { wallHoles } from './wall-holes.ts';
import { type Join, nothing, type Stop, WayNet } from './way-net.ts';

/** A net with one more end on it. */
export interface EndLayer {
  readonly net: WayNet;
  /** The node at which the end's cable begins; null where nothing leads there. */
  readonly node: number | null;
  readonly index: LineIndex;
  readonly linesOf: (face: FlatFace) => readonly FaceLine[];
  readonly walls: ReadonlySet<PlanWall>;
  /** Where the end begins on a line; null on others. */
  readonly startOn: (line: number) => number | null;
}

/** What of an end's lines meets the house: the same whichever other end there is. Line numbers from the house's last on. */
export interface EndInHouse {
  readonly end: EndLines;
  readonly joins: readonly Join[];
}

/** How an end's lines meet those of the house and one another. */
export function inHouse(house: HouseNet, end: EndLines): EndInHouse {
  const first = house.net.lineCount;
  const numbered = end.lines.map((line, at) => ({ number: first + at, line }));
  const levels = numbered.filter(({ line }) => line.axis === 0);
  const own = ownLines(end, first);
  const walls = wallsOf(house, end);
  return {
    end,
    joins: [
      ...end.joins.map((join) => moved(join, first)),
      ...crossings(levels, lineIndex(end.lines, first)),
      ...crossings(numbered, house.index),
      ...wallHoles(house.material, walls, own, house.linesOf),
      ...wallHoles(house.material, walls, own),
    ],
  };
}

/** Puts an end on a net, and joins it with the end that is on it already. */
export function withEnd(house: HouseNet, { end, joins }: EndInHouse, other: EndLayer | null): EndLayer {
  const net = new WayNet(other?.net ?? house.net, house.material.tariff.cableMillipencePerM);
  const first = net.lineCount;
  const by = first - house.net.lineCount;
  for (const line of end.lines) net.addLine(line);
  // Lines of the house keep their numbers; the end's own come after those of the other end.
  const shift = ({ line, tMm }: Stop): Stop => ({ line: line < house.net.lineCount ? line : line + by, tMm });
  for (const join of joins) net.join({ ...join, a: shift(join.a), b: shift(join.b) });
  const own = ownLines(end, first);
  const walls = wallsOf(house, end);
  if (other !== null) {
    const numbered = end.lines.map((line, at) => ({ number: first + at, line }));
    for (const join of crossings(numbered, other.index)) net.join(join);
    for (const join of sameLines(numbered, other)) net.join(join);
    const both = new Set([...walls].filter((wall) => other.walls.has(wall)));
    for (const join of wallHoles(house.material, both, own, other.linesOf)) net.join(join);
  }
  const node = end.start === null ? null : net.node({ line: first + end.start.line, tMm: end.start.tMm });
  const startOn = (line: number) =>
    end.start !== null && line === first + end.start.line ? end.start.tMm : null;
  return { net: net.finish(), node, index: lineIndex(end.lines, first), linesOf: own, walls, startOn };
}

/** Where an end lies on a line of the other that is in line with its own: boxes above one another, with nothing level between. */
function sameLines(own: readonly NumberedLine[], other: EndLayer): readonly Join[] {
  return own.flatMap(({ number, line }) => {
    const sheet = other.index.get(line.sheet.key);
    if (sheet === undefined) return [];
    const near = linesBetween(sheet[line.axis], line.fixedMm - SAME_MM, line.fixedMm + SAME_MM);
    return near.flatMap((one) => {
      const tMm = Math.max(startOf(line), startOf(one.line));
      return [other.startOn(one.number), ...[tMm]].flatMap((at): readonly Join[] =>
        at === null || at < startOf(line) || at > endOf(line) || at > endOf(one.line)
          ? []
          : [{ a: { line: number, tMm: at }, b: { line: one.number, tMm: at }, measure: nothing }],
      );
    });
  });
}

function moved(join: Join, by: number): Join {
  const shift = ({ line, tMm }: Stop): Stop => ({ line: line + by, tMm });
  return { ...join, a: shift(join.a), b: shift(join.b) };
}

/** The end's lines on a face, by their numbers in a net. */
function ownLines(end: EndLines, first: number): (face: FlatFace) => readonly FaceLine[] {
  const byFace = new Map(
    [...end.byFace].map(([key, lines]) => [
      key,
      lines.map((line) => ({ ...line, number: line.number + first })),
    ]),
  );
  return ({ key }) => byFace.get(key) ?? [];
}

/** The walls that an end has lines on. */
function wallsOf({ material: { plan } }: HouseNet, end: EndLines): ReadonlySet<PlanWall> {
  const faces = [...end.byFace.values()].flat();
  const ids = faces.flatMap(({ line }) => line.parts.flatMap(({ details }) => details.wallId ?? []));
  return new Set([...new Set(ids)].flatMap((id) => plan.wallById.get(id) ?? []));
}
