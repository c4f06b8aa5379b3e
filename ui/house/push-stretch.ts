import { outlineEdges } from '#engine/plan/room-outline.ts';
import type { Room, Side, Storey, Wall } from '#model/building.ts';
import { type Drawing, type Outcome, plainCopy, refused } from './drawing.ts';
import { cornerAfter, endsAt } from './move-walls.ts';
import { partAtCorners } from './part-walls.ts';
import { soundly } from './soundly.ts';
import { openingAcross, splitWall } from './split-wall.ts';
import { faceOfWall, type WallFaceSide } from './stretch-marks.ts';
import { dot, leftOf, plus, tidy, times, type Vector } from './vector.ts';
import { directionOf, isParallel, isSamePlace, wallLengthMm } from './wall-line.ts';
import { wallMap } from './wall-map.ts';
import { withPlacesKept } from './wall-places.ts';

/** A stretch of a wall between two marks on one of its faces, and how far it is pushed. */
export interface PushedStretch extends WallFaceSide {
  /** Along the wall from its `from`, mm, in any order. */
  readonly marks: readonly [number, number];
  /** To the wall's left more than nought, mm. */
  readonly byMm: number;
}

/** What is left of a wall beside a stretch, and the stretch itself, are at least so long, mm. */
const LEAST_MM = 50;

/** Where a stretch ends along the centre line of its wall, and whether a wall has to lead back from there. */
interface StretchEnd {
  readonly atMm: number;
  readonly end: 'from' | 'to' | null;
  readonly leadsBack: boolean;
}

/**
 * Pushes a stretch of a wall out of its line: a bay, a recess, an L. Walls of the same kind lead back to what stays, so that what is
 * between the marks is as wide inside as the marks are apart; where a mark is in a corner, the wall that stands there gets longer or
 * shorter in place of that. What is on the stretch goes with it, what is beside it stays where it is.
 */
export function pushStretch(drawing: Drawing, asked: PushedStretch): Outcome {
  const { storey } = drawing;
  const wall = storey.walls.find(({ id }) => id === asked.wallId);
  if (wall === undefined) return refused('That wall is not there any more.');
  const ends = endsOf(storey, wall, asked);
  if (typeof ends === 'string') return refused(ends);
  return soundly(storey, () => {
    const stretch = partedOff(drawing, wall, ends);
    if (typeof stretch === 'string') return refused(stretch);
    withPlacesKept(drawing.job, storey, () => pushOut(drawing, stretch, ends, asked.byMm));
    return partAtCorners(drawing);
  });
}

/** Where the stretch ends on the centre line; words where it cannot. */
function endsOf(
  storey: Storey,
  wall: Wall,
  asked: PushedStretch,
): readonly [StretchEnd, StretchEnd] | string {
  const [low, high] = asked.marks.toSorted((a, b) => a - b) as [number, number];
  const face = faceOfWall(storey, asked);
  const isOut = asked.byMm > 0 === (asked.side === 'right');
  // Pushed out of the room, the walls that lead back stand beside the stretch; pushed into it, within.
  const halfMm = (wall.thicknessMm / 2) * (isOut ? 1 : -1);
  const ends = [
    low <= face.lowMm + 1 ? cornerEnd(storey, wall, 'from', asked.byMm) : within(low - halfMm),
    high >= face.highMm - 1 ? cornerEnd(storey, wall, 'to', asked.byMm) : within(high + halfMm),
  ] as const;
  const [first, second] = ends;
  if (typeof first === 'string' || typeof second === 'string')
    return typeof first === 'string' ? first : (second as string);
  if (second.atMm - first.atMm < LEAST_MM) return 'The two marks are too near each other for that.';
  if (isTooNear(first, 0) || isTooNear(second, wallLengthMm(wall)))
    return 'A mark is too near the end of the wall: put it into the corner, or further from it.';
  return [first, second];
}

const within = (atMm: number): StretchEnd => ({ atMm, end: null, leadsBack: true });

const isTooNear = ({ atMm, end }: StretchEnd, cornerMm: number): boolean =>
  end === null && (cornerMm === 0 ? atMm < LEAST_MM : atMm > cornerMm - LEAST_MM);

/** The end of a stretch in a corner: what stands there goes along, unless the wall goes on beyond it. */
function cornerEnd(storey: Storey, wall: Wall, end: 'from' | 'to', byMm: number): StretchEnd | string {
  const way = directionOf(wall);
  const others = endsAt(storey, wall[end]).filter((one) => one.wall !== wall);
  const leadsBack = others.some((one) => isParallel(way, directionOf(one.wall)));
  const by = times(leftOf(way), Math.sign(byMm));
  const isInTheWay = others.some(
    (one) => dot(directionOf(one.wall), by) * (one.end === 'from' ? 1 : -1) > 0.3,
  );
  if (leadsBack && isInTheWay)
    return 'Another wall meets it in that corner: mark it a little further from there, or move the whole wall.';
  return { atMm: end === 'from' ? 0 : wallLengthMm(wall), end, leadsBack };
}

/** The stretch as a wall of its own; words where an opening is across a mark. */
function partedOff(
  { job, storey, newId }: Drawing,
  wall: Wall,
  ends: readonly [StretchEnd, StretchEnd],
): Wall | string {
  const across = ends
    .map(({ atMm, end }) => (end === null ? openingAcross(wall, atMm) : null))
    .find((one) => one !== null);
  if (across != null) return `Where a wall would lead back ${across}: put the mark further from it.`;
  const [low, high] = ends;
  if (high.end === null) splitWall(job, storey, wall, { atMm: high.atMm, id: newId() });
  if (low.end !== null) return wall;
  const { id } = splitWall(job, storey, wall, { atMm: low.atMm, id: newId() });
  // Of a draft what was put in is another object than what is read.
  return storey.walls.find((one) => one.id === id) ?? wall;
}

function pushOut(
  { storey, newId }: Drawing,
  stretch: Wall,
  ends: readonly [StretchEnd, StretchEnd],
  byMm: number,
): void {
  const direction = directionOf(stretch);
  const by = times(leftOf(direction), byMm);
  // Where all goes is asked of the house as it was.
  const moves = (['from', 'to'] as const).map((end, at) => {
    const corner: Vector = [stretch[end][0], stretch[end][1]];
    const leadsBack = ends[at]?.leadsBack ?? false;
    const to = leadsBack ? tidy(plus(corner, by)) : cornerAfter(storey, { corner, by, direction });
    return { end, corner, to, leadsBack, others: leadsBack ? [] : endsAt(storey, corner) };
  });
  const back: Wall[] = [];
  for (const { end, corner, to, leadsBack, others } of moves) {
    stretch[end] = [...to];
    for (const one of others) one.wall[one.end] = [...to];
    if (leadsBack) back.push(leadingBack(stretch, newId(), end === 'from' ? [corner, to] : [to, corner]));
  }
  storey.walls.splice(storey.walls.indexOf(stretch) + 1, 0, ...back);
  for (const room of storey.rooms) goRound(storey, room, stretch, back);
}

/** A wall as the stretch is, from one place to another, with nothing in it: left and right of it is what is so of the stretch. */
const leadingBack = (like: Wall, id: string, [from, to]: readonly [Vector, Vector]): Wall => ({
  ...plainCopy(like),
  id,
  from: tidy(from),
  to: tidy(to),
  openings: [],
});

/** A room that has the stretch has the walls that lead back as well, in the order in which it closes. */
function goRound(storey: Storey, room: Room, stretch: Wall, back: readonly Wall[]): void {
  const side: Side | undefined = room.walls.find(({ wall }) => wall === stretch.id)?.side;
  if (side === undefined || back.length === 0) return;
  const [low, high] = [
    back.filter(({ to }) => isSamePlace(to, stretch.from)),
    back.filter(({ from }) => isSamePlace(from, stretch.to)),
  ];
  const along = [...low, stretch, ...high].map(({ id }) => id);
  const listed = (ids: readonly string[]): Room['walls'] =>
    room.walls.flatMap((one) => (one.wall === stretch.id ? ids.map((wall) => ({ wall, side })) : [one]));
  const orders = [listed(along), listed(along.toReversed())];
  const map = wallMap(storey);
  room.walls = orders.find((walls) => outlineEdges({ ...room, walls }, map).length > 0) ?? orders[0] ?? [];
}
