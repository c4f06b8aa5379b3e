import type { Position } from '../plan/plane.ts';
import { distanceMm, planPoint } from '../plan/plane.ts';
import { remembered } from '../plan/remembered.ts';
import { BOARD_ACROSS_MM, BOARD_ALONG_MM, BOARD_REACH_MM } from '../ways/floor-opening.ts';
import type { Run, Segment } from '../ways/run.ts';
import { liesInVoid } from './wall-stretches.ts';

/** A floorboard that has to come up, at a spot, for these runs. */
export interface LiftedBoard {
  readonly storeyId: string;
  readonly at: Position;
  /** Sorted. */
  readonly runIds: readonly string[];
}

/**
 * Boards that come up: one where a run's way under a floor begins and one where it ends, one at each turn out
 * of reach of another, and between them as often as joists and rods ask. Runs that pass within reach share a
 * board, but never through a wall: both ends of one way are opened. In the order of the runs.
 */
export const liftedBoards = remembered(boardsAlong);

function boardsAlong(runs: readonly Run[]): readonly LiftedBoard[] {
  const boards: LiftedBoard[] = [];
  for (const run of runs) {
    for (const way of waysUnderFloor(run)) addBoards(boards, run.id, way);
  }
  return boards;
}

/** Level stretches under one floor that follow one another, in order. */
function waysUnderFloor(run: Run): Segment[][] {
  const ways: Segment[][] = [];
  let last: Segment | undefined;
  for (const segment of run.segments) {
    const isUnderFloor = segment.medium.startsWith('void-') && segment.direction !== 'vertical';
    if (isUnderFloor && last !== undefined && follows(last, segment)) ways.at(-1)?.push(segment);
    else if (isUnderFloor) ways.push([segment]);
    // A way goes on through a drilled wall and over a step down; up into a wall it ends.
    if (isUnderFloor || !(liesInVoid(segment) || segment.medium === 'through-wall')) {
      last = isUnderFloor ? segment : undefined;
    }
  }
  return ways;
}

function follows(last: Segment, segment: Segment): boolean {
  return last.storeyId === segment.storeyId;
}

function addBoards(boards: LiftedBoard[], runId: string, way: readonly Segment[]): void {
  const start = way[0];
  const end = way.at(-1);
  if (start === undefined || end === undefined) return;
  const opened: Position[] = [];
  const open = (at: Position, besides: readonly Position[]) => {
    if (besides.some((other) => isInReach(other, at))) return;
    opened.push(at);
    share(boards, { storeyId: start.storeyId, at, runIds: [runId] }, opened);
  };
  open(start.from, []);
  open(end.to, []);
  for (const segment of way) {
    open(segment.to, opened);
    for (const at of between(segment)) open(at, opened);
  }
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
