import type { Opening } from '#model/building.ts';
import type { Plan, PlanWall } from '../../plan/plan.ts';
import type { WallSpot } from '../../plan/plane.ts';
import { remembered } from '../../plan/remembered.ts';
import { wallsOfStorey } from '../../plan/surroundings.ts';
import { wallFace } from '../../plan/wall-face.ts';
import { isOpenAt } from '../surface.ts';

/** One wall's side as a part of a flat face. */
export interface FaceRange {
  readonly wall: PlanWall;
  readonly side: WallSpot['side'];
  readonly fromMm: number;
  readonly toMm: number;
  /** Where the wall's `from` is along the face, and which way the wall points. */
  readonly startMm: number;
  readonly sense: 1 | -1;
}

/** A flat face, over several walls where they stand in one line; measured along it from its first wall's `from`. */
export interface FlatFace {
  readonly key: string;
  readonly storeyId: string;
  readonly ranges: readonly FaceRange[];
  readonly lowMm: number;
  readonly highMm: number;
  /** Whether there is an inside corner at the end. */
  readonly lowCorner: boolean;
  readonly highCorner: boolean;
  readonly heightMm: number;
}

/** A stretch from low to high. */
export type Span = readonly [lowMm: number, highMm: number];

/** The flat face that a wall's side is a part of; null where there is no wall, or nothing of it between its corners. */
export function flatFaceOf(plan: Plan, wallId: string, side: WallSpot['side']): FlatFace | null {
  return facesOfWalls(plan.wallById)(plan.storeyById).get(`${wallId}/${side}`) ?? null;
}

/** Every flat face of a storey, each once. */
export function flatFaces(plan: Plan, storeyId: string): readonly FlatFace[] {
  const all = facesOfWalls(plan.wallById)(plan.storeyById);
  const seen = new Map<string, FlatFace>();
  for (const { wall } of wallsOfStorey(plan, storeyId))
    for (const side of ['left', 'right'] as const) {
      const face = all.get(`${wall.id}/${side}`);
      if (face !== undefined) seen.set(face.key, face);
    }
  return [...seen.values()];
}

const facesOfWalls = remembered((wallById: Plan['wallById']) =>
  remembered((storeyById: Plan['storeyById']) => foundFaces({ wallById, storeyById })),
);

function foundFaces(frame: Pick<Plan, 'wallById' | 'storeyById'>): ReadonlyMap<string, FlatFace> {
  const faces = new Map<string, FlatFace>();
  const walls = [...frame.wallById.values()].toSorted((a, b) => (a.wall.id < b.wall.id ? -1 : 1));
  for (const wall of walls)
    for (const side of ['left', 'right'] as const) {
      if (wall.wall.core === 'open' || faces.has(`${wall.wall.id}/${side}`)) continue;
      const face = foundFace(frame, wall, side);
      if (face === null) continue;
      for (const range of face.ranges) faces.set(`${range.wall.wall.id}/${range.side}`, face);
    }
  return faces;
}

function foundFace(
  frame: Pick<Plan, 'wallById' | 'storeyById'>,
  wall: PlanWall,
  side: WallSpot['side'],
): FlatFace | null {
  const found = wallFace(frame, wall.wall.id, side);
  const storey = frame.storeyById.get(wall.storeyId)?.storey;
  if (found === null || storey === undefined) return null;
  const whole = found.pieces.flatMap(({ wallId, side: own, startMm, sense }): FaceRange[] => {
    const each = frame.wallById.get(wallId);
    if (each === undefined) return [];
    const endMm = startMm + sense * each.lengthMm;
    return [
      {
        wall: each,
        side: own,
        fromMm: Math.min(startMm, endMm),
        toMm: Math.max(startMm, endMm),
        startMm,
        sense,
      },
    ];
  });
  const lowMm = found.lowCornerMm ?? Math.min(...whole.map(({ fromMm }) => fromMm));
  const highMm = found.highCornerMm ?? Math.max(...whole.map(({ toMm }) => toMm));
  const ranges = whole
    .map((range) => ({
      ...range,
      fromMm: Math.max(range.fromMm, lowMm),
      toMm: Math.min(range.toMm, highMm),
    }))
    .filter(({ fromMm, toMm }) => toMm - fromMm > 1)
    .toSorted((a, b) => a.fromMm - b.fromMm);
  if (ranges.length === 0) return null;
  return {
    key: `${wall.wall.id}/${side}`,
    storeyId: wall.storeyId,
    ranges,
    lowMm,
    highMm,
    lowCorner: found.lowCornerMm !== null,
    highCorner: found.highCornerMm !== null,
    heightMm: storey.heightMm,
  };
}

/** The range that holds a place along a face; at a joint the one before it; beyond the ends the nearest. */
export function rangeAt({ ranges }: FlatFace, alongMm: number): FaceRange {
  const found = ranges.find(({ toMm }) => alongMm <= toMm) ?? ranges.at(-1);
  if (found === undefined) throw new Error('A flat face without a wall.');
  return found;
}

/** A place along a face as a spot on its wall. */
export function spotOn(face: FlatFace, alongMm: number): WallSpot {
  const { wall, side, startMm, sense } = rangeAt(face, alongMm);
  return { wallId: wall.wall.id, side, alongMm: (alongMm - startMm) * sense };
}

/** Where a spot on one of a face's walls is along it; null for another wall. */
export function alongFace(face: FlatFace, spot: WallSpot): number | null {
  const range = face.ranges.find(({ wall, side }) => wall.wall.id === spot.wallId && side === spot.side);
  return range === undefined ? null : range.startMm + range.sense * spot.alongMm;
}

interface FaceOpening {
  readonly opening: Opening;
  readonly side: WallSpot['side'];
  readonly span: Span;
}

/** The doors, windows and breasts of a face, where they are along it. */
export function openingsOf({ ranges }: FlatFace): readonly FaceOpening[] {
  return ranges.flatMap(({ wall, side, startMm, sense }) =>
    wall.wall.openings.map((opening): FaceOpening => {
      const a = startMm + sense * opening.alongMm;
      const b = startMm + sense * (opening.alongMm + opening.widthMm);
      return { opening, side, span: [Math.min(a, b), Math.max(a, b)] };
    }),
  );
}

/** Whether a breast stands on a face; one whose side nobody recorded is taken to be in the way on both. */
export function isBreastHere({ opening, side }: FaceOpening): boolean {
  return opening.kind === 'breast' && (opening.side === undefined || opening.side === side);
}

/** What is in the way of level cable at a height, along the face. */
export function blocksLevel(face: FlatFace, heightMm: number): readonly Span[] {
  return openingsOf(face)
    .filter(({ opening, side }) => isOpenAt(opening, side, heightMm))
    .map(({ span }) => span);
}

/** What is in the way of plumb cable at a place, by height. Plumb cable on a breast's own face crosses nothing. */
export function blocksPlumb(face: FlatFace, alongMm: number): readonly Span[] {
  return openingsOf(face)
    .filter(({ opening, span }) => opening.kind !== 'breast' && alongMm > span[0] && alongMm < span[1])
    .map(({ opening }) => [opening.sillMm, opening.headMm]);
}

/** What is left of a stretch when others are taken out, in order; slips are dropped. */
export function without(whole: Span, blocks: readonly Span[]): readonly Span[] {
  const left: Span[] = [];
  let fromMm = whole[0];
  for (const [lowMm, highMm] of blocks.toSorted((a, b) => a[0] - b[0])) {
    if (lowMm > fromMm) left.push([fromMm, Math.min(lowMm, whole[1])]);
    fromMm = Math.max(fromMm, highMm);
    if (fromMm >= whole[1]) break;
  }
  if (fromMm < whole[1]) left.push([fromMm, whole[1]]);
  return left.filter(([lowMm, highMm]) => highMm - lowMm > 1);
}
