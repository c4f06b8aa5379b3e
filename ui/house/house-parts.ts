import { planPointOf } from '#engine/plan/plane.ts';
import { isInside, signedAreaMm2 } from '#engine/plan/polygon.ts';
import type { Fixture, Room, Side, Storey, Wall } from '#model/building.ts';
import { roomHolding } from './along-side.ts';
import { fixtureWords } from './fixture-kinds.ts';
import type { RoomSide } from './room-sides.ts';
import { minus, type Vector } from './vector.ts';
import { alongMm, isSamePlace, offMm, placeBy, wallLengthMm } from './wall-line.ts';

/** A stretch of a wall as it is marked on one of its faces: none, one or both of its ends, along the wall from its `from`, mm. */
export interface StretchPart {
  readonly part: 'stretch';
  readonly wallId: string;
  readonly side: Side;
  readonly marks: readonly number[];
}

/** A part of the house that can be taken hold of: a wall, a stretch of one, a corner with all the walls that meet there, or what is fixed. */
export type HousePart =
  | { readonly part: 'wall'; readonly wallId: string }
  | StretchPart
  | { readonly part: 'corner'; readonly at: Vector }
  | { readonly part: 'fixture'; readonly fixtureId: string };

/** A part by one word, for what knows things by their names alone. */
export function keyOfPart(part: HousePart): string {
  switch (part.part) {
    case 'wall':
      return `wall/${part.wallId}`;
    case 'stretch':
      return `stretch/${part.side}/${part.marks.join(',')}/${part.wallId}`;
    case 'corner':
      return `corner/${part.at.join(',')}`;
    case 'fixture':
      return `fixture/${part.fixtureId}`;
  }
}

/** The part that a word stands for; null for no word of a part. */
export function partOfKey(key: string): HousePart | null {
  const [kind, rest = ''] = [key.slice(0, key.indexOf('/')), key.slice(key.indexOf('/') + 1)];
  if (kind === 'wall') return { part: 'wall', wallId: rest };
  if (kind === 'fixture') return { part: 'fixture', fixtureId: rest };
  if (kind === 'stretch') {
    const [side, marks = '', ...wallId] = rest.split('/');
    if (side !== 'left' && side !== 'right') return null;
    const along = marks === '' ? [] : marks.split(',').map(Number);
    return { part: 'stretch', side, marks: along, wallId: wallId.join('/') };
  }
  const [x, y] = rest.split(',').map(Number);
  return kind === 'corner' && x !== undefined && y !== undefined ? { part: 'corner', at: [x, y] } : null;
}

/** The corners of a storey, each once, in the order of its walls. */
export function cornersOf({ walls }: Pick<Storey, 'walls'>): readonly Vector[] {
  const corners: Vector[] = [];
  for (const { from, to } of walls)
    for (const at of [from, to]) if (!corners.some((one) => isSamePlace(one, at))) corners.push(at);
  return corners;
}

/** The parts of a storey, walls first, then corners and fixtures, as keys go from one to the next. */
export const partsOf = (storey: Pick<Storey, 'walls' | 'fixtures'>): readonly HousePart[] => [
  ...storey.walls.map(({ id }): HousePart => ({ part: 'wall', wallId: id })),
  ...cornersOf(storey).map((at): HousePart => ({ part: 'corner', at })),
  ...storey.fixtures.map(({ id }): HousePart => ({ part: 'fixture', fixtureId: id })),
];

/** Of a short wall this much is left to the wall itself: the rest of it is its corners'. */
const CORNER_SHARE = 0.3;

/** The least fixture that a place is in; undefined where it is in none. */
function fixtureUnder({ fixtures }: Pick<Storey, 'fixtures'>, [x, y]: Vector): Fixture | undefined {
  const outlineOf = ({ outline }: Fixture) => outline.map(planPointOf);
  return fixtures
    .filter((one) => isInside(outlineOf(one), planPointOf([x, y])))
    .toSorted((a, b) => Math.abs(signedAreaMm2(outlineOf(a))) - Math.abs(signedAreaMm2(outlineOf(b))))[0];
}

/** How far a place is from the nearest edge of an outline, mm. */
function offOutlineMm(outline: readonly Vector[], at: Vector): number {
  const offs = outline.map((from, i) => {
    const to = outline[(i + 1) % outline.length] ?? from;
    const edge = { from, to };
    const onMm = Math.max(0, Math.min(wallLengthMm(edge), alongMm(edge, at)));
    return Math.hypot(...minus(at, placeBy(edge, onMm)));
  });
  return Math.min(...offs);
}

/**
 * The part that a place means: the fixture that it is in, else a corner within reach, else the nearest wall or fixture within reach of its
 * faces; null for none.
 *
 * @param reachMm how far off something is still meant.
 */
export function meantPart(
  storey: Pick<Storey, 'walls' | 'fixtures'>,
  at: Vector,
  reachMm: number,
): HousePart | null {
  const within = fixtureUnder(storey, at);
  if (within !== undefined) return { part: 'fixture', fixtureId: within.id };
  return meantCorner(storey, at, reachMm) ?? nearestPart(storey, at, reachMm);
}

function meantCorner(storey: Pick<Storey, 'walls'>, at: Vector, reachMm: number): HousePart | null {
  let corner: { readonly at: Vector; readonly offMm: number } | null = null;
  for (const one of cornersOf(storey)) {
    const shortest = Math.min(...wallsAt(storey, one).map(wallLengthMm));
    const off = Math.hypot(...minus(at, one));
    if (off <= Math.min(reachMm, shortest * CORNER_SHARE) && (corner === null || off < corner.offMm))
      corner = { at: one, offMm: off };
  }
  return corner === null ? null : { part: 'corner', at: corner.at };
}

function nearestPart(
  { walls, fixtures }: Pick<Storey, 'walls' | 'fixtures'>,
  at: Vector,
  reachMm: number,
): HousePart | null {
  const all: readonly { readonly part: HousePart; readonly offMm: number }[] = [
    ...walls.map((wall) => ({
      part: { part: 'wall', wallId: wall.id } as const,
      offMm: offWallMm(wall, at),
    })),
    ...fixtures.map(({ id, outline }) => ({
      part: { part: 'fixture', fixtureId: id } as const,
      offMm: offOutlineMm(outline, at),
    })),
  ];
  const near = all.filter(({ offMm }) => offMm <= reachMm).toSorted((a, b) => a.offMm - b.offMm);
  return near[0]?.part ?? null;
}

/** How far a place is from a wall's nearer face or its ends, mm; nought on it. */
function offWallMm(wall: Wall, at: Vector): number {
  const beyondMm = Math.max(0, -alongMm(wall, at), alongMm(wall, at) - wallLengthMm(wall));
  return Math.hypot(beyondMm, Math.max(0, Math.abs(offMm(wall, at)) - wall.thicknessMm / 2));
}

/** Whether a place means a wall: within reach of its faces. */
export function isNearWall(
  { walls }: Pick<Storey, 'walls'>,
  wallId: string,
  at: Vector,
  reachMm: number,
): boolean {
  const wall = walls.find(({ id }) => id === wallId);
  return wall !== undefined && offWallMm(wall, at) <= reachMm;
}

/** The walls that end at a corner. */
export const wallsAt = ({ walls }: Pick<Storey, 'walls'>, corner: Vector): readonly Wall[] =>
  walls.filter(({ from, to }) => [from, to].some((end) => isSamePlace(end, corner)));

type Named = Pick<Storey, 'walls' | 'rooms' | 'fixtures'>;

/** The rooms that change where a part is moved, in the order of the file: those that have it among their walls, or that it stands in. */
export function roomsAt(storey: Named, part: HousePart): readonly Room[] {
  if (part.part === 'fixture') {
    const fixture = storey.fixtures.find(({ id }) => id === part.fixtureId);
    const room = fixture === undefined ? null : roomHolding(storey, fixture.outline);
    return room === null ? [] : [room];
  }
  const ids = new Set(part.part === 'corner' ? wallsAt(storey, part.at).map(({ id }) => id) : [part.wallId]);
  return storey.rooms.filter(({ walls }) => walls.some(({ wall }) => ids.has(wall)));
}

/** Whether a part is still there. */
export function isPartThere(
  { walls, fixtures }: Pick<Storey, 'walls' | 'fixtures'>,
  part: HousePart,
): boolean {
  if (part.part === 'fixture') return fixtures.some(({ id }) => id === part.fixtureId);
  if (part.part === 'corner') return wallsAt({ walls }, part.at).length > 0;
  return walls.some(({ id }) => id === part.wallId);
}

/** "the wall between Hall and Kitchen", "the corner of Hall and Kitchen", "the sink, Kitchen"; by no room where none has it. */
export function partWords(storey: Named, part: HousePart): string {
  const names = roomsAt(storey, part).map(({ name }) => name);
  const [last = '', ...before] = names.toReversed();
  const all = before.length === 0 ? last : `${before.toReversed().join(', ')} and ${last}`;
  if (part.part === 'fixture') {
    const kind = storey.fixtures.find(({ id }) => id === part.fixtureId)?.kind;
    const name = kind === undefined ? 'a fixture' : `the ${fixtureWords[kind].toLowerCase()}`;
    return all === '' ? `${name}, in no room` : `${name}, ${all}`;
  }
  if (all === '') return part.part === 'corner' ? 'a corner of no room' : 'a wall of no room';
  if (part.part === 'corner') return `the corner of ${all}`;
  return before.length === 0 ? `the wall of ${all}` : `the wall between ${all}`;
}

/** The corner of the walls at the end of a side of a room; null where its walls and those of the next side do not meet. */
export function cornerAfterSide(
  { walls }: Pick<Storey, 'walls'>,
  sides: readonly RoomSide[],
  at: number,
): Vector | null {
  const next = sides[(at + 1) % sides.length];
  const wallOf = (id: string | undefined): Wall | undefined => walls.find((wall) => wall.id === id);
  const [before, after] = [wallOf(sides[at]?.walls.at(-1)?.wallId), wallOf(next?.walls[0]?.wallId)];
  if (before === undefined || after === undefined) return null;
  const ends = [after.from, after.to];
  return [before.from, before.to].find((end) => ends.some((other) => isSamePlace(end, other))) ?? null;
}
