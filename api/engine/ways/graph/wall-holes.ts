import type { PlanWall } from '../../plan/plan.ts';
import { together } from '../way-tariff.ts';
import { isAtBox } from './crossings.ts';
import { alongFace, type FlatFace, flatFaceOf } from './flat-face.ts';
import type { FaceLine } from './house-face-lines.ts';
import type { WaysMaterial } from './house-net.ts';
import { endOf, isStop, nothing, startOf } from './line.ts';
import type { Join } from './net-edge.ts';

/** Boxes this near one another, back to back, are joined straight through the wall, mm. */
const BACK_TO_BACK_MM = 100;
/** Holes for channel keep this far from the corners, mm. */
const FROM_CORNER_MM = 100;

/** The lines on a face. */
export type LinesOf = (face: FlatFace) => readonly FaceLine[];

/** A wall's two faces, where somebody may drill from the one to the other. */
interface BothFaces {
  readonly wall: PlanWall;
  readonly left: FlatFace;
  readonly right: FlatFace;
}

/** The faces of a wall that may be drilled through: never a party wall's. */
export function bothFaces({ plan }: WaysMaterial, wall: PlanWall): BothFaces | null {
  if (wall.wall.party === true || wall.wall.core === 'open') return null;
  const [left, right] = [flatFaceOf(plan, wall.wall.id, 'left'), flatFaceOf(plan, wall.wall.id, 'right')];
  return left === null || right === null ? null : { wall, left, right };
}

/** A place in a wall by its own measure, and where that is along one of its faces. */
const onFace = (face: FlatFace, wall: PlanWall, side: 'left' | 'right', alongMm: number): number =>
  alongFace(face, { wallId: wall.wall.id, side, alongMm }) ?? Number.NaN;

/** A place along a face by the wall's own measure. */
function inWall(face: FlatFace, wall: PlanWall, side: 'left' | 'right', mm: number): number {
  const range = face.ranges.find((each) => each.wall.wall.id === wall.wall.id && each.side === side);
  return range === undefined ? Number.NaN : (mm - range.startMm) * range.sense;
}

/**
 * Holes straight through a wall: where a line on its one face crosses one on its other, so that both sides are in
 * a zone; and for two lines above the skirtings, or below the ceilings, near both ends of the wall.
 */
export function wallHoles(
  material: WaysMaterial,
  walls: Iterable<PlanWall>,
  linesOf: LinesOf,
  othersOf: LinesOf = linesOf,
): readonly Join[] {
  return [...walls].flatMap((wall) => {
    const faces = bothFaces(material, wall);
    if (faces === null) return [];
    const { left, right } = faces;
    const pairs = [
      ...pairsOf(linesOf(left), othersOf(right)),
      ...(linesOf === othersOf ? [] : pairsOf(othersOf(left), linesOf(right))),
    ];
    return pairs.flatMap(([a, b]) => holesBetween(material, faces, a, b));
  });
}

function pairsOf(
  lefts: readonly FaceLine[],
  rights: readonly FaceLine[],
): readonly (readonly [FaceLine, FaceLine])[] {
  return lefts.flatMap((a) => rights.map((b) => [a, b] as const));
}

function holesBetween(material: WaysMaterial, faces: BothFaces, a: FaceLine, b: FaceLine): readonly Join[] {
  if (isChannel(a) !== isChannel(b) || [a, b].some(({ kind }) => kind === 'frame' || kind === 'corner'))
    return [];
  if (a.line.axis !== b.line.axis) {
    const [level, plumb] = a.line.axis === 0 ? [a, b] : [b, a];
    return holeAt(material, faces, [a, b], {
      alongMm: wallMm(faces, plumb.line.fixedMm, plumb === a),
      heightMm: level.line.fixedMm,
    });
  }
  if (a.kind === b.kind && isAlongRoom(a)) return holesByCorners(material, faces, a, b);
  return a.line.axis === 1 ? backToBack(material, faces, a, b) : [];
}

const isAlongRoom = ({ kind }: FaceLine): boolean => kind === 'skirting' || kind === 'ceiling';
const isChannel = (line: FaceLine): boolean => isAlongRoom(line) || line.kind === 'channel';

function wallMm({ wall, left, right }: BothFaces, mm: number, isLeft: boolean): number {
  return isLeft ? inWall(left, wall, 'left', mm) : inWall(right, wall, 'right', mm);
}

interface HoleAt {
  readonly alongMm: number;
  readonly heightMm: number;
}

function holeAt(
  { tariff }: WaysMaterial,
  { wall, left, right }: BothFaces,
  [a, b]: readonly [FaceLine, FaceLine],
  { alongMm, heightMm }: HoleAt,
): readonly Join[] {
  if (!(alongMm > 0 && alongMm < wall.lengthMm)) return [];
  if (heightMm < 0 || heightMm > left.heightMm) return [];
  const tOf = (one: FaceLine, face: FlatFace, side: 'left' | 'right') =>
    one.line.axis === 1 ? heightMm : onFace(face, wall, side, alongMm);
  const stops = [
    { line: a.number, tMm: tOf(a, left, 'left') },
    { line: b.number, tMm: tOf(b, right, 'right') },
  ] as const;
  if (!isStop(a.line, stops[0].tMm) || !isStop(b.line, stops[1].tMm)) return [];
  const lengthMm = wall.wall.thicknessMm;
  const ends = [a, b].flatMap(({ line }) =>
    line.atEnd === undefined || isAtBox(line, heightMm) ? [] : [line.atEnd],
  );
  const measure = { ...nothing, ...ends.reduce(together, tariff.wallHole), lengthMm };
  return [{ a: stops[0], b: stops[1], measure, wallId: wall.wall.id }];
}

/** Two plumb lines nearly behind one another that both have a box: from box to box. */
function backToBack(material: WaysMaterial, faces: BothFaces, a: FaceLine, b: FaceLine): readonly Join[] {
  const [aMm, bMm] = [wallMm(faces, a.line.fixedMm, true), wallMm(faces, b.line.fixedMm, false)];
  const [aBoxMm, bBoxMm] = [a.line.boxMm, b.line.boxMm];
  if (aBoxMm === undefined || bBoxMm === undefined) return [];
  if (Math.abs(aMm - bMm) > BACK_TO_BACK_MM || Math.abs(aBoxMm - bBoxMm) > BACK_TO_BACK_MM) return [];
  const lengthMm = Math.hypot(faces.wall.wall.thicknessMm, aMm - bMm, aBoxMm - bBoxMm);
  return [
    {
      a: { line: a.number, tMm: aBoxMm },
      b: { line: b.number, tMm: bBoxMm },
      measure: { ...nothing, ...material.tariff.wallHole, lengthMm },
      wallId: faces.wall.wall.id,
    },
  ];
}

function holesByCorners(material: WaysMaterial, faces: BothFaces, a: FaceLine, b: FaceLine): readonly Join[] {
  const spanOf = (one: FaceLine, isLeft: boolean) =>
    [startOf(one.line), endOf(one.line)].map((mm) => wallMm(faces, mm, isLeft)).toSorted((x, y) => x - y);
  const [aLow = 0, aHigh = 0] = spanOf(a, true);
  const [bLow = 0, bHigh = 0] = spanOf(b, false);
  const low = Math.max(aLow, bLow, 0) + FROM_CORNER_MM;
  const high = Math.min(aHigh, bHigh, faces.wall.lengthMm) - FROM_CORNER_MM;
  if (low > high) return [];
  return [...new Set([low, high])].flatMap((alongMm) =>
    holeAt(material, faces, [a, b], { alongMm, heightMm: a.line.fixedMm }),
  );
}
