import type { Plan } from '../../plan/plan.ts';
import type { Position } from '../../plan/plane.ts';
import { roomsOfStorey } from '../../plan/surroundings.ts';
import type { VoidSpace } from '../../plan/voids.ts';
import { THROUGH_WALL_MM, ZONE_MM } from '../concealed-cable.ts';
import { SKIRTING_MM } from '../surface.ts';
import { noWork, type WorkCost } from '../way-tariff.ts';
import type { FaceCorner } from './face-corners.ts';
import { inTheWall, type Laid, levelLines, plumbLines } from './face-lines.ts';
import {
  alongFace,
  type FlatFace,
  flatFaceOf,
  flatFaces,
  isBreastHere,
  openingsOf,
  type Span,
} from './flat-face.ts';
import type { WaysMaterial } from './house-net.ts';
import { clipped, endOf, measureOf, nothing, SAME_MM, startOf, type WayLine } from './line.ts';
import type { Join } from './net-edge.ts';
import { isDrawn } from './void-lines.ts';

/** The middle of the zone of 150 mm along the top of a wall and beside an inside corner (BS 7671 522.6.202). */
const IN_ZONE_MM = ZONE_MM / 2;
/** Channel goes over a door this far above its head, past the architrave. Common practice, no source. */
const OVER_DOOR_MM = 60;

/** A plumb line of a face with the voids that its ends are in, by its number. */
export interface PlumbInto {
  readonly line: number;
  readonly storeyId: string;
  readonly at: Position['at'];
  /** The floor that heights on the line are above. */
  readonly floorMm: number;
  readonly below: VoidSpace | null;
  readonly above: VoidSpace | null;
}

/** Level in the wall, plumb in it, channel above the skirting, channel below the ceiling, channel up to a box, round a door's frame, short into a corner. */
export type FaceLineKind = 'in-wall' | 'plumb' | 'skirting' | 'ceiling' | 'channel' | 'frame' | 'corner';

/** A line of a face with its number. */
export interface FaceLine {
  readonly number: number;
  readonly line: WayLine;
  readonly kind: FaceLineKind;
}

/** Channel along the ceiling line is this far below it, mm. Common practice, no source. */
const BELOW_CEILING_MM = 30;

/** Plumb lines this near one another on plan stand above one another, mm. */
export const CLOSE_MM = 20;

/** Lines and what joins them, numbered from nought, with the plumb lines that lead into voids. */
export interface FaceNet {
  readonly lines: readonly WayLine[];
  readonly joins: readonly Join[];
  readonly plumbs: readonly PlumbInto[];
  /** By the face's key. */
  readonly byFace: ReadonlyMap<string, readonly FaceLine[]>;
}

/** Where zones start on a face: the places of accessories along it, and their heights. */
interface Zones {
  readonly alongMm: readonly number[];
  readonly heightsMm: readonly number[];
}

/** The lines on the walls of a house: in line with what is there, at tops and corners, above the skirtings and below the ceilings. */
export function houseFaceLines(material: WaysMaterial, corners: readonly FaceCorner[]): FaceNet {
  const { plan } = material;
  const zones = zonesByFace(plan);
  const draft = new FaceDraft(material);
  for (const { storey } of plan.storeys)
    for (const face of facesInUse(plan, storey.id, zones)) addFace(draft, face, zones.get(face.key));
  for (const corner of corners) addCorner(draft, corner);
  return draft.net();
}

/** Faces that a room looks at; all where no room is drawn; and those with something on them. */
function facesInUse(plan: Plan, storeyId: string, zones: ReadonlyMap<string, Zones>): readonly FlatFace[] {
  const drawn = isDrawn(plan, storeyId);
  const seen = new Set(
    roomsOfStorey(plan, storeyId).flatMap(({ room }) =>
      room.walls.flatMap(({ wall, side }) => flatFaceOf(plan, wall, side)?.key ?? []),
    ),
  );
  return flatFaces(plan, storeyId).filter(({ key }) => !drawn || seen.has(key) || zones.has(key));
}

/** Where points that stay and boards are. */
export function standingPlaces(plan: Plan): readonly Position[] {
  const kept = [...plan.positionOfPoint].filter(([id]) => plan.pointById.get(id)?.status === 'existing');
  return [...kept, ...plan.positionOfBoard].map(([, position]) => position);
}

/** Where zones start on faces: at what stands on them, and on a thin wall on its other face too. */
function zonesByFace(plan: Plan): ReadonlyMap<string, Zones> {
  const zones = new Map<string, { alongMm: number[]; heightsMm: number[] }>();
  for (const { onWall, heightMm } of standingPlaces(plan)) {
    if (onWall === undefined) continue;
    const thin = (plan.wallById.get(onWall.wallId)?.wall.thicknessMm ?? 0) <= THROUGH_WALL_MM;
    const other = { ...onWall, side: onWall.side === 'left' ? 'right' : 'left' } as const;
    for (const spot of thin ? [onWall, other] : [onWall]) {
      const face = flatFaceOf(plan, spot.wallId, spot.side);
      const alongMm = face === null ? null : alongFace(face, spot);
      if (face === null || alongMm === null) continue;
      const own = zones.get(face.key) ?? { alongMm: [], heightsMm: [] };
      own.alongMm.push(alongMm);
      own.heightsMm.push(heightMm);
      zones.set(face.key, own);
    }
  }
  return zones;
}

/** Whether a face is one that nobody chases or goes behind: cable is on its surface in any case. */
export const isSurfaceOnly = (face: FlatFace): boolean =>
  face.ranges.every(({ wall }) => wall.wall.core === 'concrete');

/** How channel on a face is laid and weighed. */
export const inChannel = (face: FlatFace): Laid => ({
  mount: 'surface',
  ...(isSurfaceOnly(face) ? {} : { onSurface: true }),
});

/** Numbers apart by more than a slip. */
function distinct(values: readonly number[]): readonly number[] {
  return values
    .toSorted((a, b) => a - b)
    .filter((value, index, all) => index === 0 || value - (all[index - 1] ?? 0) > SAME_MM);
}

function addFace(draft: FaceDraft, face: FlatFace, zones: Zones | undefined): void {
  addSkirting(draft, face);
  for (const line of levelLines(draft.material, face, face.heightMm - BELOW_CEILING_MM, inChannel(face)))
    draft.add(face, line, 'ceiling');
  if (isSurfaceOnly(face)) addCornerChannels(draft, face);
  else addZones(draft, face, zones);
}

/** In line with what is there, along the top, and beside inside corners and breasts. */
function addZones(draft: FaceDraft, face: FlatFace, zones: Zones | undefined): void {
  const breasts = openingsOf(face).filter(isBreastHere);
  const inside = (mm: number) => mm > face.lowMm && mm < face.highMm;
  const corners = [
    ...(face.lowCorner ? [face.lowMm + IN_ZONE_MM] : []),
    ...(face.highCorner ? [face.highMm - IN_ZONE_MM] : []),
    ...breasts.flatMap(({ span }) => [span[0] - IN_ZONE_MM, span[1] + IN_ZONE_MM]),
  ].filter(inside);
  for (const alongMm of distinct([...corners, ...(zones?.alongMm ?? [])])) draft.plumb(face, alongMm);
  const heights = distinct([...(zones?.heightsMm ?? []), face.heightMm - IN_ZONE_MM]);
  for (const heightMm of heights)
    for (const line of levelLines(draft.material, face, heightMm)) draft.add(face, line, 'in-wall');
}

/** Channel up the corners of a face that nobody chases, from floor to ceiling. */
function addCornerChannels(draft: FaceDraft, face: FlatFace): void {
  const laid = inChannel(face);
  if (face.lowCorner) draft.plumb(face, face.lowMm + IN_ZONE_MM, laid);
  if (face.highCorner) draft.plumb(face, face.highMm - IN_ZONE_MM, laid);
}

/** Channel above the skirting, and round the frames of the doors. */
function addSkirting(draft: FaceDraft, face: FlatFace): void {
  const laid = inChannel(face);
  for (const line of levelLines(draft.material, face, SKIRTING_MM, laid)) draft.add(face, line, 'skirting');
  for (const { opening, span } of openingsOf(face)) {
    const overMm = opening.headMm + OVER_DOOR_MM;
    if (opening.kind === 'breast' || opening.sillMm >= SKIRTING_MM || overMm >= face.heightMm) continue;
    const over = levelLines(draft.material, face, overMm, laid);
    const ups = span.flatMap((mm) => plumbLines(draft.material, face, mm, laid).map(({ line }) => line));
    for (const [lines, part] of [
      [over, span],
      [ups, [SKIRTING_MM, overMm]],
    ] as const satisfies readonly (readonly [readonly WayLine[], Span])[])
      for (const line of lines) {
        const round = clipped(line, part);
        if (round !== null) draft.add(face, round, 'frame');
      }
  }
}

/** Faces that meet go on into one another: at their tops, ceilings and skirtings, and within the zones of an inside corner. */
function addCorner(draft: FaceDraft, { faces: [a, b], inside }: FaceCorner): void {
  const linesAt = (one: typeof a) =>
    draft
      .linesOf(one.face)
      .filter(
        ({ line, kind }) =>
          line.axis === 0 &&
          kind !== 'frame' &&
          kind !== 'corner' &&
          startOf(line) <= one.alongMm + SAME_MM &&
          endOf(line) >= one.alongMm - SAME_MM,
      );
  const [ofA, ofB] = [linesAt(a), linesAt(b)];
  const { channelTurn } = draft.material.tariff;
  for (const one of ofA)
    for (const other of ofB)
      if (Math.abs(one.line.fixedMm - other.line.fixedMm) <= SAME_MM && isChannel(one) === isChannel(other))
        draft.joinLevels(
          [one.number, a.alongMm],
          [other.number, b.alongMm],
          isChannel(one) ? channelTurn[inside ? 'internal' : 'external'] : noWork,
        );
  if (!inside) return;
  for (const [own, from, to] of [
    [ofA, a, b],
    [ofB, b, a],
  ] as const)
    for (const { number, line, kind } of own) {
      if (kind !== 'in-wall' || isSurfaceOnly(to.face)) continue;
      const short = cornerLine(draft.material, to, line.fixedMm);
      if (short === null) continue;
      draft.joinLevels([number, from.alongMm], [draft.add(to.face, short, 'corner'), to.alongMm]);
    }
}

const isChannel = ({ kind }: { readonly kind: FaceLineKind }): boolean =>
  kind === 'skirting' || kind === 'ceiling';

/** The short way from a corner into the middle of its zone, at a height; null where something is in the way. */
export function cornerLine(
  material: WaysMaterial,
  { face, alongMm, away }: FaceCorner['faces'][number],
  heightMm: number,
): WayLine | null {
  const endMm = alongMm + away * IN_ZONE_MM;
  const span: Span = [Math.min(alongMm, endMm), Math.max(alongMm, endMm)];
  for (const line of levelLines(material, face, heightMm, inTheWall)) {
    const short = clipped(line, span);
    if (short !== null && endOf(short) - startOf(short) > IN_ZONE_MM - 1) return short;
  }
  return null;
}

/** Lines of faces as they are gathered. */
class FaceDraft {
  readonly material: WaysMaterial;
  readonly #lines: WayLine[] = [];
  readonly #joins: Join[] = [];
  readonly #plumbs: PlumbInto[] = [];
  readonly #byFace = new Map<string, FaceLine[]>();

  constructor(material: WaysMaterial) {
    this.material = material;
  }

  add(face: FlatFace, line: WayLine, kind: FaceLineKind): number {
    const number = this.#lines.push(line) - 1;
    const kept = { number, line, kind };
    const own = this.#byFace.get(face.key);
    if (own === undefined) this.#byFace.set(face.key, [kept]);
    else own.push(kept);
    return number;
  }

  plumb(face: FlatFace, alongMm: number, laid: Laid = inTheWall): void {
    const kind = laid.mount === 'surface' ? 'channel' : 'plumb';
    for (const { line, below, above } of plumbLines(this.material, face, alongMm, laid)) {
      const number = this.add(face, line, kind);
      const foot = line.sheet.positionAt(alongMm, 0);
      this.#plumbs.push({
        line: number,
        storeyId: face.storeyId,
        at: foot.at,
        floorMm: foot.levelMm,
        below,
        above,
      });
    }
  }

  joinLevels(
    [a, aMm]: readonly [number, number],
    [b, bMm]: readonly [number, number],
    turn: WorkCost = noWork,
  ): void {
    const measure = turn === noWork ? nothing : measureOf(turn);
    this.#joins.push({ a: { line: a, tMm: aMm }, b: { line: b, tMm: bMm }, measure });
  }

  linesOf(face: FlatFace): readonly FaceLine[] {
    return this.#byFace.get(face.key) ?? [];
  }

  net(): FaceNet {
    return { lines: this.#lines, joins: this.#joins, plumbs: this.#plumbs, byFace: this.#byFace };
  }
}
