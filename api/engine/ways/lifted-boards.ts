import type { Position } from '../plan/plane.ts';
import { distanceMm, planPoint } from '../plan/plane.ts';
import { remembered } from '../plan/remembered.ts';
import { BOARD_ACROSS_MM, BOARD_ALONG_MM, BOARD_REACH_MM } from './floor-opening.ts';
import type { Run, Segment } from './run.ts';
import { liesInVoid } from './segment.ts';

/** A floorboard that has to come up, at a spot, for these runs. */
export interface LiftedBoard {
  readonly storeyId: string;
  readonly at: Position;
  /** Sorted. */
  readonly runIds: readonly string[];
}

/** The way of a run, by its id. */
export type PathOfRun = Pick<Run, 'id' | 'segments'>;

/** A place at which one run's way under a floor asks for a board to come up. */
export interface BoardPlace {
  readonly storeyId: string;
  readonly at: Position;
  /** Which of the run's stretches it is for. */
  readonly stretch: number;
}

/**
 * Boards that come up, runs that pass within reach of one another sharing them, but never through a wall: both ends of
 * one way are opened. In the order of the runs.
 */
export const liftedBoards = remembered(boardsAlong);

function boardsAlong(runs: readonly PathOfRun[]): readonly LiftedBoard[] {
  const boards: LiftedBoard[] = [];
  for (const run of runs)
    for (const way of boardPlaces(run.segments))
      way.forEach(({ storeyId, at }, index) => {
        const own = way.slice(0, index + 1).map((place) => place.at);
        share(boards, { storeyId, at, runIds: [run.id] }, own);
      });
  return boards;
}

/** Another run's board within reach serves this run too. */
function share(boards: LiftedBoard[], board: LiftedBoard, own: readonly Position[]): void {
  const index = boards.findIndex(
    (other) => other.storeyId === board.storeyId && !own.includes(other.at) && isInReach(other.at, board.at),
  );
  const other = boards[index];
  if (other === undefined) boards.push(board);
  else boards[index] = { ...other, runIds: [...new Set([...other.runIds, ...board.runIds])].toSorted() };
}

/**
 * Where boards come up for one run by itself, way by way under its floors: one where a way begins and one where it ends, one at
 * each turn out of reach of another, and between them as often as joists and rods ask.
 */
export const boardPlaces = remembered((segments: readonly Segment[]): readonly (readonly BoardPlace[])[] =>
  waysUnderFloor(segments).map(placesOn),
);

interface NumberedSegment {
  readonly segment: Segment;
  readonly stretch: number;
}

/** Level stretches under one floor that follow one another, in order. */
function waysUnderFloor(segments: readonly Segment[]): NumberedSegment[][] {
  const ways: NumberedSegment[][] = [];
  let last: Segment | undefined;
  segments.forEach((segment, stretch) => {
    const isUnderFloor = segment.medium.startsWith('void-') && segment.direction !== 'vertical';
    if (isUnderFloor && last?.storeyId === segment.storeyId) ways.at(-1)?.push({ segment, stretch });
    else if (isUnderFloor) ways.push([{ segment, stretch }]);
    // A way goes on through a drilled wall and over a step down; up into a wall it ends.
    if (isUnderFloor || !(liesInVoid(segment) || segment.medium === 'through-wall'))
      last = isUnderFloor ? segment : undefined;
  });
  return ways;
}

function placesOn(way: readonly NumberedSegment[]): readonly BoardPlace[] {
  const [start, end] = [way[0], way.at(-1)];
  if (start === undefined || end === undefined) return [];
  const { storeyId } = start.segment;
  const places: BoardPlace[] = [
    { storeyId, at: start.segment.from, stretch: start.stretch },
    { storeyId, at: end.segment.to, stretch: end.stretch },
  ];
  for (const { segment, stretch } of way)
    for (const at of [segment.to, ...between(segment)])
      if (!places.some((place) => isInReach(place.at, at))) places.push({ storeyId, at, stretch });
  return places;
}

function isInReach(a: Position, b: Position): boolean {
  return distanceMm(a.at, b.at) <= BOARD_REACH_MM;
}

/** Spots between the ends of a long stretch, evenly spread. */
function between(segment: Segment): Position[] {
  const everyMm = segment.medium === 'void-across' ? BOARD_ACROSS_MM : BOARD_ALONG_MM;
  const parts = Math.ceil(segment.lengthMm / everyMm);
  return Array.from({ length: Math.max(0, parts - 1) }, (_, index) => partWay(segment, (index + 1) / parts));
}

function partWay({ from, to }: Segment, ratio: number): Position {
  const mixed = (a: number, b: number) => a + (b - a) * ratio;
  return {
    storeyId: from.storeyId,
    at: planPoint(mixed(from.at[0], to.at[0]), mixed(from.at[1], to.at[1])),
    heightMm: mixed(from.heightMm, to.heightMm),
    levelMm: mixed(from.levelMm, to.levelMm),
  };
}
