import type { PlanWall } from '../../plan/plan.ts';
import type { WorkCost } from '../way-tariff.ts';
import { crossings } from './crossings.ts';
import type { EndLines } from './end-lines.ts';
import type { FlatFace } from './flat-face.ts';
import type { FaceLine } from './house-face-lines.ts';
import type { HouseNet } from './house-net.ts';
import { LineIndex } from './line-index.ts';
import type { Join, Stop } from './net-edge.ts';
import { wallHoles } from './wall-holes.ts';
import { WayNet } from './way-net.ts';

/** A house's net with one end of a cable on it: the same whichever other end there is. */
export interface EndLayer {
  readonly net: WayNet;
  /** The node at which the end's cable begins; null where nothing leads there. */
  readonly node: number | null;
  /** The end's own lines, with their numbers in the net. */
  readonly index: LineIndex;
  readonly linesOf: (face: FlatFace) => readonly FaceLine[];
  readonly walls: ReadonlySet<PlanWall>;
  /** Where the end begins on a line; null on others. */
  readonly startOn: (line: number) => number | null;
  /** What getting at the end takes in any case. */
  readonly atStart: WorkCost;
}

/** Puts an end on the net of its house. */
export function endLayer(house: HouseNet, end: EndLines): EndLayer {
  const net = new WayNet(house.net, house.material.tariff.cableMillipencePerM);
  const first = net.lineCount;
  for (const line of end.lines) net.addLine(line);
  const numbered = end.lines.map((line, at) => ({ number: first + at, line }));
  const levels = numbered.filter(({ line }) => line.axis === 0);
  const linesOf = ownLines(end, first);
  const walls = wallsOf(house, end);
  const index = new LineIndex(end.lines, first);
  for (const join of end.joins) net.join(moved(join, first));
  for (const turn of crossings(levels, index)) net.turn(turn);
  for (const turn of crossings(numbered, house.index)) net.turn(turn);
  const holes = [
    ...wallHoles(house.material, walls, linesOf, house.linesOf),
    ...wallHoles(house.material, walls, linesOf),
  ];
  for (const hole of holes) net.join(hole);
  const node = end.start === null ? null : net.node({ line: first + end.start.line, tMm: end.start.tMm });
  const startOn = (line: number) =>
    end.start !== null && line === first + end.start.line ? end.start.tMm : null;
  net.finish();
  return { net, node, index, linesOf, walls, startOn, atStart: end.atStart };
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
