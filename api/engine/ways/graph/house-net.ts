import type { Plan } from '../../plan/plan.ts';
import type { WayTariff } from '../way-tariff.ts';
import { crossings } from './crossings.ts';
import { type FaceCorner, faceCorners } from './face-corners.ts';
import type { FlatFace } from './flat-face.ts';
import { floorHoles } from './floor-holes.ts';
import { type FaceLine, houseFaceLines } from './house-face-lines.ts';
import { houseVoidLines } from './house-void-lines.ts';
import { LineIndex } from './line-index.ts';
import type { Join } from './net-edge.ts';
import { wallHoles } from './wall-holes.ts';
import { WayNet } from './way-net.ts';

/** All that ways are made from. */
export interface WaysMaterial {
  readonly plan: Plan;
  readonly tariff: WayTariff;
}

/** The lines that a house has of itself: along its walls, from what is there, under its floors and over its ceilings. */
export interface HouseNet {
  readonly material: WaysMaterial;
  readonly net: WayNet;
  readonly index: LineIndex;
  readonly corners: readonly FaceCorner[];
  /** The lines on a face. */
  readonly linesOf: (face: FlatFace) => readonly FaceLine[];
}

/** The net of ways of a house, before any cable's own ends. */
export function houseNet(material: WaysMaterial): HouseNet {
  const net = new WayNet(null, material.tariff.cableMillipencePerM);
  const corners = faceCorners(material.plan);
  const faces = houseFaceLines(material, corners);
  const voids = houseVoidLines(material, faces.plumbs, faces.lines.length);
  const lines = [...faces.lines, ...voids.lines];
  for (const line of lines) net.addLine(line);
  const index = new LineIndex(lines, 0);
  const linesOf = (face: FlatFace) => faces.byFace.get(face.key) ?? [];
  const levels = lines.flatMap((line, number) => (line.axis === 0 ? [{ number, line }] : []));
  const joins: readonly Join[] = [
    ...faces.joins,
    ...voids.joins,
    ...floorHoles(material, faces.plumbs, faces.lines),
  ];
  for (const join of joins) net.join(join);
  for (const turn of crossings(levels, index)) net.turn(turn);
  for (const hole of wallHoles(material, material.plan.wallById.values(), linesOf)) net.join(hole);
  return { material, net: net.finish(), index, corners, linesOf };
}
