import type { Position } from '../../plan/plane.ts';
import { surroundingsAt } from '../../plan/surroundings.ts';
import { floorVoid, loftOver, type VoidSpace, voidAbove, voidBelow } from '../../plan/voids.ts';
import { THROUGH_WALL_MM } from '../concealed-cable.ts';
import { openLay } from '../segment.ts';
import { SKIRTING_MM } from '../surface.ts';
import type { WayPlace } from '../way-cost.ts';
import { noWork, type WorkCost } from '../way-tariff.ts';
import type { FaceCorner } from './face-corners.ts';
import { fromBox, inTheWall, type Laid, levelLines, type PlumbLine, plumbLines } from './face-lines.ts';
import { alongFace, type FlatFace, flatFaceOf, openingsOf } from './flat-face.ts';
import {
  cornerLine,
  type FaceLine,
  type FaceLineKind,
  inChannel,
  isSurfaceOnly,
} from './house-face-lines.ts';
import type { HouseNet, WaysMaterial } from './house-net.ts';
import { entry, stubsAt } from './house-void-lines.ts';
import { endOf, nothing, openingAt, SAME_MM, startOf, type WayLine } from './line.ts';
import type { Join, Stop } from './net-edge.ts';

/** Lines of a cable's end in a void go so far to both sides: on from there lead the lines of the house, mm. */
const END_REACH_MM = 8_000;
/** Channel goes level at the height of points from here up; lower ones go down to the skirting, mm. */
const LOW_POINT_MM = 700;
/** How far cable that has to get past a door or a window keeps from its edge, mm. */
const PAST_OPENING_MM = 100;

/** What one end of a cable brings to the net of its house: lines in line with it. Numbered from nought. */
export interface EndLines {
  readonly lines: readonly WayLine[];
  readonly joins: readonly Join[];
  /** The lines on faces, for the holes through walls. */
  readonly byFace: ReadonlyMap<string, readonly FaceLine[]>;
  /** Where the cable begins; null where nothing leads there. */
  readonly start: Stop | null;
  /** What getting at the end takes in any case: the board over a joint under a floor. */
  readonly atStart: WorkCost;
}

/** The lines of a cable's end in a house. */
export function endLines(house: HouseNet, end: WayPlace): EndLines {
  const draft = new EndDraft(house);
  const { onWall } = end.position;
  const face = onWall && flatFaceOf(house.material.plan, onWall.wallId, onWall.side);
  const alongMm = face && onWall && alongFace(face, onWall);
  if (face && alongMm !== null && alongMm !== undefined) addOnFace(draft, end, face, alongMm);
  else addFree(draft, end.position);
  return draft.done();
}

function addOnFace(draft: EndDraft, end: WayPlace, face: FlatFace, alongMm: number): void {
  const { heightMm } = end.position;
  if (heightMm < 0 || heightMm > face.heightMm) {
    addFree(draft, end.position);
    return;
  }
  const isSurface = end.mount === 'surface' || isSurfaceOnly(face);
  if (!isSurface) addInWall(draft, face, alongMm, heightMm);
  addChannel(draft, face, alongMm, heightMm, isSurface);
}

function addInWall(draft: EndDraft, face: FlatFace, alongMm: number, heightMm: number): void {
  const box = { alongMm, heightMm };
  const plumb = draft.plumbAt(face, box, inTheWall, 'plumb');
  const level = draft.levelAt(face, box, inTheWall);
  draft.startAt(plumb === null ? null : { line: plumb, tMm: heightMm });
  draft.startAt(level === null ? null : { line: level, tMm: alongMm });
  addCorners(draft, face, level, heightMm);
  if (level !== null) addPastOpenings(draft, face, box, { mount: null, poor: true });
  addBehind(draft, face, box);
}

/** From a level line round an inside corner into the zone beside it. */
function addCorners(draft: EndDraft, face: FlatFace, level: number | null, heightMm: number): void {
  if (level === null) return;
  const line = draft.line(level);
  for (const { inside, faces } of draft.house.corners) {
    if (!inside) continue;
    for (const [from, to] of [faces, [faces[1], faces[0]] as FaceCorner['faces']]) {
      if (from.face.key !== face.key || isSurfaceOnly(to.face)) continue;
      if (from.alongMm < startOf(line) - SAME_MM || from.alongMm > endOf(line) + SAME_MM) continue;
      const short = cornerLine(draft.house.material, to, heightMm);
      if (short === null) continue;
      const number = draft.add(to.face, short, 'corner');
      draft.join({ line: level, tMm: from.alongMm }, { line: number, tMm: to.alongMm });
    }
  }
}

/** Where a door or a window is above or below, plumb just past its edge; in a wall that is in no zone, but better than no way. */
function addPastOpenings(draft: EndDraft, face: FlatFace, { alongMm, heightMm }: Box, laid: Laid): void {
  const kind = laid.mount === 'surface' ? 'channel' : 'plumb';
  for (const { opening, span } of openingsOf(face)) {
    if (opening.kind === 'breast' || alongMm <= span[0] || alongMm >= span[1]) continue;
    for (const mm of [span[0] - PAST_OPENING_MM, span[1] + PAST_OPENING_MM])
      draft.plumbAt(face, { alongMm: mm, heightMm }, laid, kind, false);
  }
}

/** In a thin wall the box's zones reach through to the other face. */
function addBehind(draft: EndDraft, face: FlatFace, { alongMm, heightMm }: Box): void {
  const { plan } = draft.house.material;
  const range = face.ranges.find(({ fromMm, toMm }) => alongMm >= fromMm && alongMm <= toMm);
  if (range === undefined || range.wall.wall.thicknessMm > THROUGH_WALL_MM) return;
  const side = range.side === 'left' ? 'right' : 'left';
  const other = flatFaceOf(plan, range.wall.wall.id, side);
  const spot = {
    wallId: range.wall.wall.id,
    side,
    alongMm: (alongMm - range.startMm) * range.sense,
  } as const;
  const otherMm = other && alongFace(other, spot);
  if (!other || otherMm === null || otherMm === undefined || isSurfaceOnly(other)) return;
  draft.plumbAt(other, { alongMm: otherMm, heightMm }, inTheWall, 'plumb', false);
  draft.levelAt(other, { alongMm: otherMm, heightMm }, inTheWall);
}

function addChannel(
  draft: EndDraft,
  face: FlatFace,
  alongMm: number,
  heightMm: number,
  isSurface: boolean,
): void {
  const laid: Laid = isSurface ? { mount: 'surface' } : inChannel(face);
  const box = { alongMm, heightMm };
  const plumb = draft.plumbAt(face, box, laid, 'channel', true, isSurface);
  if (plumb !== null) draft.startAt({ line: plumb, tMm: heightMm });
  if (isSurface) addPastOpenings(draft, face, box, laid);
  if (heightMm < LOW_POINT_MM && Math.abs(heightMm - SKIRTING_MM) > SAME_MM) return;
  const level = draft.levelAt(face, box, laid, 'channel');
  if (level !== null) draft.startAt({ line: level, tMm: alongMm });
}

/** An end on no wall: in a void from there, in a room by a post down and up. */
function addFree(draft: EndDraft, position: Position): void {
  const { plan } = draft.house.material;
  const { storeyId, heightMm } = position;
  const surroundings = surroundingsAt(plan, position);
  if (surroundings === null) return;
  const { onWall: _, ...free } = position;
  const below = heightMm < 0 ? floorVoid(plan, storeyId, surroundings.floor) : voidBelow(plan, free);
  const above =
    heightMm < 0
      ? null
      : heightMm > surroundings.storey.heightMm
        ? loftOver(plan, storeyId)
        : voidAbove(plan, free);
  draft.post(
    free,
    [below, above].filter((space) => space !== null),
    surroundings.storey.heightMm,
  );
}

interface Box {
  readonly alongMm: number;
  readonly heightMm: number;
}

class EndDraft {
  readonly house: HouseNet;
  readonly #lines: WayLine[] = [];
  readonly #joins: Join[] = [];
  readonly #byFace = new Map<string, FaceLine[]>();
  #start: Stop | null = null;
  #atStart: WorkCost = noWork;

  constructor(house: HouseNet) {
    this.house = house;
  }

  line(number: number): WayLine {
    const line = this.#lines[number];
    if (line === undefined) throw new Error(`No line ${number}.`);
    return line;
  }

  add(face: FlatFace, line: WayLine, kind: FaceLineKind): number {
    const number = this.#lines.push(line) - 1;
    const own = this.#byFace.get(face.key) ?? [];
    own.push({ number, line, kind });
    this.#byFace.set(face.key, own);
    return number;
  }

  join(a: Stop, b: Stop): void {
    this.#joins.push({ a, b, measure: nothing });
  }

  /** One more line through the place where the cable begins. */
  startAt(stop: Stop | null): void {
    if (stop === null) return;
    if (this.#start === null) this.#start = stop;
    else this.join(this.#start, stop);
  }

  /** The plumb line through a box, with what leads on from it in the voids; null where it lies in an opening. */
  plumbAt(
    face: FlatFace,
    { alongMm, heightMm }: Box,
    laid: Laid,
    kind: FaceLineKind,
    isBox = true,
    intoVoids = true,
  ): number | null {
    const lines = plumbLines(this.house.material, face, alongMm, laid);
    const own = lines.find(
      ({ line }) => startOf(line) - SAME_MM <= heightMm && heightMm <= endOf(line) + SAME_MM,
    );
    if (own === undefined) return null;
    const line = isBox ? fromBox(own.line, heightMm) : own.line;
    const number = this.add(face, line, kind);
    if (intoVoids) this.#intoVoids(number, own);
    return number;
  }

  #intoVoids(number: number, { line, below, above }: PlumbLine): void {
    const foot = line.sheet.positionAt(line.fixedMm, 0);
    for (const space of [below, above])
      if (space !== null) this.#stubs({ line: number, tMm: space.levelMm - foot.levelMm }, space, foot.at);
  }

  #stubs(from: Stop, space: VoidSpace, at: Position['at']): void {
    for (const stub of stubsAt(this.house.material, space, at, END_REACH_MM)) {
      const number = this.#lines.push(stub.line) - 1;
      this.#joins.push(entry(from, { line: number, stub }));
    }
  }

  levelAt(
    face: FlatFace,
    { alongMm, heightMm }: Box,
    laid: Laid,
    kind: FaceLineKind = 'in-wall',
  ): number | null {
    const lines = levelLines(this.house.material, face, heightMm, laid);
    const own = lines.find((line) => startOf(line) - SAME_MM <= alongMm && alongMm <= endOf(line) + SAME_MM);
    return own === undefined ? null : this.add(face, own, kind);
  }

  /** A post through an end that is on no wall, from void to void. */
  post(position: Position, spaces: readonly VoidSpace[], ceilingMm: number): void {
    const { material } = this.house;
    const inVoid = spaces.find(({ levelMm }) => Math.abs(levelMm - position.levelMm) < 0.5);
    if (inVoid !== undefined) this.#startInVoid(inVoid, position.at);
    if (inVoid !== undefined || spaces.length === 0) return;
    const line = postLine(material, position, spaces, ceilingMm);
    const number = this.#lines.push(line) - 1;
    this.startAt({ line: number, tMm: position.levelMm });
    for (const space of spaces) this.#stubs({ line: number, tMm: space.levelMm }, space, position.at);
  }

  #startInVoid(space: VoidSpace, at: Position['at']): void {
    for (const stub of stubsAt(this.house.material, space, at, END_REACH_MM)) {
      const number = this.#lines.push(stub.line) - 1;
      this.startAt({ line: number, tMm: stub.tMm });
      this.#atStart = openingAt(stub.line, stub.tMm);
    }
  }

  done(): EndLines {
    return {
      lines: this.#lines,
      joins: this.#joins,
      byFace: this.#byFace,
      start: this.#start,
      atStart: this.#atStart,
    };
  }
}

/** Plumb through the open room, or within a void to the level at which its cables lie; measured above the job's zero level. */
function postLine(
  { plan, tariff }: WaysMaterial,
  position: Position,
  spaces: readonly VoidSpace[],
  ceilingMm: number,
): WayLine {
  const { storeyId, at, levelMm, heightMm } = position;
  const floorMm = levelMm - heightMm;
  const levels = [levelMm, floorMm, floorMm + ceilingMm, ...spaces.map((space) => space.levelMm)];
  const ends = [levelMm, ...spaces.map((space) => space.levelMm)];
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  const stops = [...new Set(levels.filter((mm) => mm >= low && mm <= high))].toSorted((a, b) => a - b);
  const storeyOf = (mm: number) =>
    mm > floorMm + ceilingMm
      ? (spaces.find((space) => Math.abs(space.levelMm - high) < 0.5)?.storeyId ?? storeyId)
      : storeyId;
  const floorOf = (id: string) => plan.storeyById.get(id)?.storey.floorLevelMm ?? 0;
  return {
    sheet: {
      key: `post ${storeyId} ${at.join(' ')} ${levelMm}`,
      positionAt: (_, mm) => ({
        storeyId: storeyOf(mm),
        at,
        heightMm: mm - floorOf(storeyOf(mm)),
        levelMm: mm,
      }),
    },
    axis: 1,
    fixedMm: 0,
    parts: stops.slice(1).map((toMm, index) => {
      const fromMm = stops[index] ?? toMm;
      const middle = (fromMm + toMm) / 2;
      const inRoom = middle > floorMm && middle < floorMm + ceilingMm;
      const lay = inRoom ? openLay('surface-clipped', 'assumed') : openLay('void-open', 'derived');
      return {
        fromMm,
        toMm,
        lay,
        details: { storeyId: storeyOf(middle) },
        perM: inRoom ? tariff.clip : tariff.thread,
        ...(inRoom ? { poor: true } : {}),
      };
    }),
  };
}
