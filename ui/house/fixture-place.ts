import type { Plan } from '#engine/plan/plan.ts';
import { planPointOf } from '#engine/plan/plane.ts';
import { isInside } from '#engine/plan/polygon.ts';
import type { Fixture, Storey } from '#model/building.ts';
import { type AlongSide, alongSide, boxAlong, roomHolding, sideBehind } from './along-side.ts';
import { GRID_MM } from './grid.ts';
import { overlapMm2 } from './overlap.ts';
import { type RoomSide, roomSides } from './room-sides.ts';
import { dot, leftOf, lengthOf, minus, plus, tidy, times, unit, type Vector } from './vector.ts';

type Outline = readonly Vector[];
type Drawn = Pick<Storey, 'walls' | 'rooms' | 'fixtures'>;

/** Where a fixture stands: along which side of its room, and how. */
export interface FixtureStand {
  readonly room: string;
  /** Of its room, anticlockwise. */
  readonly sides: readonly RoomSide[];
  readonly at: number;
  readonly side: RoomSide;
  readonly box: AlongSide;
}

/** How a fixture stands in the room that holds its middle; null where none does, or its walls do not close. */
export function fixtureStand(storey: Drawn, outline: Outline, map: Plan['wallById']): FixtureStand | null {
  const room = roomHolding(storey, outline, map);
  const sides = room === null ? [] : roomSides(storey, room, map);
  const at = sideBehind(sides, outline);
  const side = at === null ? undefined : sides[at];
  if (room === null || at === null || side === undefined) return null;
  return { room: room.name, sides, at, side, box: alongSide(side, outline) };
}

/** An outline as it was along one side, along another: turned with it, no side of it longer or shorter. */
export function broughtAlong(
  outline: Outline,
  { side, box }: Pick<FixtureStand, 'side' | 'box'>,
  to: Pick<AlongSide, 'leftMm' | 'offMm'> & { readonly side: Pick<RoomSide, 'from' | 'to'> },
): Vector[] {
  const [was, now] = [side, to.side].map((one) => unit(minus(one.to, one.from))) as [Vector, Vector];
  return outline.map((at) => {
    const leftMm = dot(minus(side.to, at), was) - box.leftMm + to.leftMm;
    const offMm = dot(minus(at, side.to), leftOf(was)) - box.offMm + to.offMm;
    return tidy(plus(to.side.to, plus(times(now, -leftMm), times(leftOf(now), offMm))));
  });
}

/** Held between the corners of a side; at its left corner where it is wider than the side. */
const between = (leftMm: number, { widthMm }: Pick<AlongSide, 'widthMm'>, side: RoomSide): number =>
  Math.max(0, Math.min(leftMm, side.lengthMm - widthMm));

const middleOf = (outline: Outline): Vector =>
  times(
    outline.reduce<Vector>((sum, at) => plus(sum, at), [0, 0]),
    1 / Math.max(1, outline.length),
  );

/** How far a place is from a side, mm. */
function farFrom(at: Vector, { from, to, lengthMm }: RoomSide): number {
  const along = unit(minus(to, from));
  const onMm = Math.max(0, Math.min(lengthMm, dot(minus(at, from), along)));
  return lengthOf(minus(at, plus(from, times(along, onMm))));
}

/** The side that a place is nearest to: of the room it is in, else of all rooms; undefined where no room closes. */
function nearestSide(storey: Drawn, at: Vector, map: Plan['wallById']): RoomSide | undefined {
  const within = roomHolding(storey, [at], map);
  const rooms = within === null ? storey.rooms : [within];
  const sides = rooms.flatMap((room) => roomSides(storey, room, map));
  return sides.toSorted((a, b) => farFrom(at, a) - farFrom(at, b))[0];
}

/** A hand that pulls a fixture, and what may hold it. */
export interface FixturePull {
  readonly by: Vector;
  /** How far off a wall, a corner or another fixture still holds it, mm. */
  readonly reachMm: number;
}

/** In the room it goes by steps of a centimetre along its wall, as points do. */
const STEP_MM = 10;
const inSteps = (mm: number, step: number): number => Math.round(mm / step) * step;

/**
 * Where a fixture that is dragged comes to rest: its back against the nearest wall of the room it is brought to, turned with it, where
 * that is within reach, beside a corner or another fixture where one is, else by centimetres; out in the room by steps of 50 mm, as it was
 * turned. What stands in no room and stays so goes freely.
 */
export function draggedFixture(
  storey: Drawn,
  fixture: Pick<Fixture, 'id' | 'outline'>,
  { by, reachMm }: FixturePull,
  map: Plan['wallById'],
): Vector[] {
  const moved = fixture.outline.map((at) => plus([at[0], at[1]], by));
  const before = fixtureStand(storey, fixture.outline, map);
  // Of the box round it: what is no rectangle has its corners to one side.
  const middle = before === null ? middleOf(moved) : plus(middleOf(boxAlong(before.side, before.box)), by);
  const isOutside = before === null && roomHolding(storey, moved, map) === null;
  const side = isOutside ? undefined : nearestSide(storey, middle, map);
  if (side === undefined) return moved.map((at) => tidy(at));
  const stand = before ?? { side, box: alongSide(side, moved) };
  const along = unit(minus(side.to, side.from));
  const offMm = dot(minus(middle, side.to), leftOf(along)) - stand.box.depthMm / 2;
  if (offMm > reachMm) return inTheRoom(moved, side);
  const leftMm = dot(minus(side.to, middle), along) - stand.box.widthMm / 2;
  const others = storey.fixtures.filter(({ id }) => id !== fixture.id).map(({ outline }) => outline);
  const held = besideOthers(leftMm, { side, box: stand.box, reachMm }, others);
  const base = before === null ? moved : fixture.outline.map(([x, y]): Vector => [x, y]);
  return broughtAlong(base, stand, { side, leftMm: held, offMm: 0 });
}

/** Out in a room: so many whole steps from the corner and the wall that are nearest. */
function inTheRoom(moved: Outline, side: RoomSide): Vector[] {
  const box = alongSide(side, moved);
  const to = {
    leftMm: between(inSteps(box.leftMm, GRID_MM), box, side),
    offMm: Math.max(0, inSteps(box.offMm, GRID_MM)),
  };
  return broughtAlong(moved, { side, box }, { side, ...to });
}

/** How far from the left corner it rests: in a corner, beside another fixture at the wall, else by centimetres. */
function besideOthers(
  leftMm: number,
  { side, box, reachMm }: { readonly side: RoomSide; readonly box: AlongSide; readonly reachMm: number },
  others: readonly (readonly Vector[])[],
): number {
  const beside = others
    .map((outline) => alongSide(side, outline))
    .filter(
      (one) => Math.abs(one.offMm) < reachMm && one.leftMm < side.lengthMm && one.leftMm + one.widthMm > 0,
    )
    .flatMap((one) => [one.leftMm - box.widthMm, one.leftMm + one.widthMm]);
  const [nearest] = [0, side.lengthMm - box.widthMm, ...beside]
    .filter((mm) => Math.abs(mm - leftMm) <= reachMm)
    .toSorted((a, b) => Math.abs(a - leftMm) - Math.abs(b - leftMm));
  return between(nearest ?? inSteps(leftMm, STEP_MM), box, side);
}

/**
 * A fixture a step further the way that an arrow points: along its wall between the corners, or off its wall and back to it. What is in no
 * room goes straight.
 */
export function steppedFixture(
  storey: Drawn,
  outline: Outline,
  [way, mm]: readonly [way: Vector, mm: number],
  map: Plan['wallById'],
): Vector[] {
  const stand = fixtureStand(storey, outline, map);
  if (stand === null) return outline.map((at) => tidy(plus(at, times(way, mm))));
  const { side, box } = stand;
  const along = unit(minus(side.to, side.from));
  const onWall = dot(way, along);
  if (Math.abs(onWall) > 0.3) {
    // Going round anticlockwise the end of a side is on the left hand of who looks at it.
    const leftMm = between(box.leftMm - Math.sign(onWall) * mm, box, side);
    return broughtAlong(outline, stand, { side, leftMm, offMm: box.offMm });
  }
  const offMm = Math.max(0, box.offMm + Math.sign(dot(way, leftOf(along))) * mm);
  return broughtAlong(outline, stand, { side, leftMm: box.leftMm, offMm });
}

/** A fixture in the corner of its wall on one hand; where it is there already, against the next wall, in the same corner. */
export function corneredFixture(
  storey: Drawn,
  outline: Outline,
  hand: 'left' | 'right',
  map: Plan['wallById'],
): Vector[] {
  const stand = fixtureStand(storey, outline, map);
  if (stand === null) return outline.map((at) => tidy(at));
  const { sides, at, side, box } = stand;
  const lastMm = (one: RoomSide): number => between(one.lengthMm, box, one);
  const leftMm = hand === 'left' ? 0 : lastMm(side);
  if (Math.abs(box.leftMm - leftMm) > 1)
    return broughtAlong(outline, stand, { side, leftMm, offMm: box.offMm });
  const next = sides.at((at + (hand === 'left' ? 1 : -1)) % sides.length) ?? side;
  return broughtAlong(outline, stand, {
    side: next,
    leftMm: hand === 'left' ? lastMm(next) : 0,
    offMm: box.offMm,
  });
}

/** A fixture may reach into a wall by as much as measuring errs, mm; and have so much in common with the middle of one, mm². */
const INTO_MM = 30;
const COMMON_MM2 = 5000;

/** The middle of a wall, between its ends: what nothing that is fixed can stand in. */
function middleOfWall(wall: Storey['walls'][number]): readonly Vector[] {
  const along = unit(minus(wall.to, wall.from));
  const halfMm = Math.max(wall.thicknessMm / 4, wall.thicknessMm / 2 - INTO_MM);
  const across = times(leftOf(along), halfMm);
  return [minus(wall.from, across), minus(wall.to, across), plus(wall.to, across), plus(wall.from, across)];
}

/** Why a fixture cannot stand there, in words; null where it can. */
export function whyNotThere({ walls }: Pick<Storey, 'walls'>, outline: Outline): string | null {
  const [x, y] = middleOf(outline);
  const isIn = walls
    .filter(({ core, thicknessMm }) => core !== 'open' && thicknessMm > 0)
    .map(middleOfWall)
    .some(
      (body) =>
        overlapMm2(body, outline) > COMMON_MM2 || isInside(body.map(planPointOf), planPointOf([x, y])),
    );
  return isIn ? 'It would stand in a wall.' : null;
}
