import type { Plan } from '../../plan/plan.ts';
import type { Position } from '../../plan/plane.ts';
import { roomAt } from '../../plan/surroundings.ts';
import { joistsCut } from '../joists.ts';
import type { Segment } from '../run.ts';
import { type Lay, openLay, type SegmentDetails, segmentBetween } from '../segment.ts';
import { studsOnWay } from '../studs.ts';
import { positionOn, SAME_MM, type WayLine } from './line.ts';
import type { Join } from './net-edge.ts';
import type { FoundWay } from './shortest.ts';
import type { TwoEnds } from './two-ends.ts';

/** A straight piece of a way: what it lies in, and from where to where. */
interface Piece {
  readonly from: Position;
  readonly to: Position;
  readonly lay: Lay;
  readonly details: SegmentDetails;
}

/** A found way as stretches of cable, in order from its start; pieces of one kind in one line are one stretch. */
export function waySegments(plan: Plan, net: TwoEnds, way: FoundWay): readonly Segment[] {
  const pieces: Piece[] = [];
  way.steps.forEach(({ from, edge }, index) => {
    const next = way.steps[index + 1]?.from ?? net.target ?? from;
    pieces.push(
      ...(edge.join === null ? alongStops(net, from, next) : overJoin(net, edge.join, [from, next])),
    );
  });
  return merged(joined(pieces)).map((piece) => segmentOf(plan, piece));
}

function alongStops(net: TwoEnds, from: number, to: number): readonly Piece[] {
  const [a, b] = [net.stopOf(from), net.stopOf(to)];
  return alongLine(net.line(a.line), a.tMm, b.tMm);
}

/** A hole through a wall or a floor; no way at all where two places are one. */
function overJoin(net: TwoEnds, { wallId }: Join, [from, to]: readonly [number, number]): readonly Piece[] {
  if (wallId === undefined) return [];
  const [a, b] = [net.stopOf(from), net.stopOf(to)];
  const ends = { from: positionOn(net.line(a.line), a.tMm), to: positionOn(net.line(b.line), b.tMm) };
  if (wallId === null) return [{ ...ends, lay: openLay('riser', 'assumed'), details: {} }];
  return [{ ...ends, lay: openLay('through-wall', 'derived'), details: { wallId } }];
}

function alongLine(line: WayLine, fromMm: number, toMm: number): readonly Piece[] {
  const [lowMm, highMm] = [Math.min(fromMm, toMm), Math.max(fromMm, toMm)];
  const pieces = line.parts.flatMap((part): readonly Piece[] => {
    const [startMm, endMm] = [Math.max(part.fromMm, lowMm), Math.min(part.toMm, highMm)];
    if (endMm - startMm <= SAME_MM) return [];
    return [
      {
        from: positionOn(line, startMm),
        to: positionOn(line, endMm),
        lay: part.lay,
        details: part.details,
      },
    ];
  });
  return fromMm <= toMm
    ? pieces
    : pieces.toReversed().map((piece) => ({ ...piece, from: piece.to, to: piece.from }));
}

/** Slips between pieces are bridged, so that stretches join end to end. */
function joined(pieces: readonly Piece[]): readonly Piece[] {
  return pieces.map((piece, index) => {
    const before = pieces[index - 1];
    return before === undefined ? piece : { ...piece, from: sameSpot(before.to, piece.from) };
  });
}

/** A piece begins where the one before it ended; on its own wall where it has one. */
function sameSpot(before: Position, own: Position): Position {
  const isSame =
    Math.abs(before.at[0] - own.at[0]) < 1 &&
    Math.abs(before.at[1] - own.at[1]) < 1 &&
    Math.abs(before.levelMm - own.levelMm) < 1;
  return isSame && own.onWall !== undefined ? own : isSame && before.onWall === undefined ? before : own;
}

function merged(pieces: readonly Piece[]): readonly Piece[] {
  const result: Piece[] = [];
  for (const piece of pieces) {
    const last = result.at(-1);
    if (last !== undefined && goesOn(last, piece)) result[result.length - 1] = { ...last, to: piece.to };
    else result.push(piece);
  }
  return result;
}

function goesOn(a: Piece, b: Piece): boolean {
  const alike =
    a.lay.medium === b.lay.medium &&
    a.lay.certainty === b.lay.certainty &&
    a.lay.insulation === b.lay.insulation &&
    a.lay.containment === b.lay.containment &&
    a.details.wallId === b.details.wallId &&
    a.details.side === b.details.side &&
    a.details.storeyId === b.details.storeyId;
  return alike && Math.abs(gapMm(a.from, a.to) + gapMm(b.from, b.to) - gapMm(a.from, b.to)) < 0.01;
}

const gapMm = (a: Position, b: Position): number =>
  Math.hypot(b.at[0] - a.at[0], b.at[1] - a.at[1], b.levelMm - a.levelMm);

function segmentOf(plan: Plan, { from, to, lay, details }: Piece): Segment {
  const wall = plan.wallById.get(details.wallId ?? '');
  return segmentBetween(from, to, lay, {
    ...details,
    joistsCrossed: lay.medium === 'void-across' ? crossedOf(plan, details.storeyId ?? '', from, to) : 0,
    studsCrossed: studsOnWay(wall, lay.medium, [from, to]),
  });
}

/** Joists that have to be cut; none where the space under the floor lets cable pass beneath them. */
function crossedOf(plan: Plan, storeyId: string, from: Position, to: Position): number {
  const middle = [(from.at[0] + to.at[0]) / 2, (from.at[1] + to.at[1]) / 2] as unknown as Position['at'];
  const room = roomAt(plan, storeyId, middle);
  const floor = room?.room.floor ?? plan.storeyById.get(storeyId)?.storey.floor;
  return floor === undefined ? 0 : joistsCut(floor, from.at, to.at);
}
