import type { Floor } from '#model/building.ts';
import type { Worked } from '../../connections/worked.ts';
import type { Position } from '../../plan/plane.ts';
import { planPoint } from '../../plan/plane.ts';
import { remembered } from '../../plan/remembered.ts';
import { ownHoles } from '../../takeoff/own-holes.ts';
import { type FloorOpening, floorOpening } from '../../ways/floor-opening.ts';
import type { PlacedHole } from '../../ways/holes-placed.ts';
import { deepestNotchMm, joistHoleMm, largestJoistHoleMm } from '../../ways/joist-window.ts';
import { openedFloors } from '../../ways/opened-floors.ts';
import { freeMarks, referencesOf } from '../references.ts';
import { type Tape, tapeAt } from './tape.ts';

/** A joist that is cut for new cable, at one place. */
export interface JoistWork {
  /** `H1`, `H2` … in the order of the work: cable by cable, along it. */
  readonly mark: string;
  readonly storeyId: string;
  /** Marks of the cables that go through it. */
  readonly cables: readonly string[];
  readonly hole: PlacedHole;
  /** Null where it lies in no room that closes. */
  readonly tape: Tape | null;
  /** What is drilled, mm across; the size is common practice, no source. */
  readonly bitMm: number;
  /** The largest hole that the joist bears on its centre line, whole mm, rounded down; null where its depth is not known. */
  readonly largestHoleMm: number | null;
  /** The deepest notch, as above. */
  readonly deepestNotchMm: number | null;
}

/** A place where a floor is opened. */
export interface BoardWork {
  /** `B1`, `B2` … */
  readonly mark: string;
  readonly storeyId: string;
  readonly at: Position;
  readonly cables: readonly string[];
  readonly tape: Tape | null;
  /** Null where nobody can say what floor it is. */
  readonly floor: Floor | null;
  /** As labour counts it. */
  readonly opening: FloorOpening;
}

/** What is cut and opened under floors. */
export interface FloorPlaces {
  readonly joists: readonly JoistWork[];
  readonly boards: readonly BoardWork[];
}

/**
 * Every joist that a scheme cuts and every place where it opens a floor, each once, as take-off and labour count them, with where a
 * tape finds them. Holes that cables share are one.
 */
export const floorPlaces = remembered((worked: Worked): FloorPlaces => {
  const references = referencesOf(worked);
  const { job, plan, runs } = worked;
  const holes = ownHoles(runs).flatMap(({ runId, sharedBy, holes: placed }) => {
    const lineMm2 = runs.find(({ id }) => id === runId)?.cable.lineMm2 ?? 0;
    return placed.map((hole) => ({ hole, lineMm2, cables: sharedBy.map(references.cable) }));
  });
  const opened = openedFloors(runs, plan);
  const joistMarks = freeMarks('H', holes.length, job);
  const boardMarks = freeMarks('B', opened.length, job);
  return {
    joists: holes.map(({ hole, lineMm2, cables }, i) => ({
      mark: joistMarks[i] ?? '',
      storeyId: hole.storeyId,
      cables,
      hole,
      tape: tapeAt(plan, hole.storeyId, planPoint(hole.at[0], hole.at[1])),
      bitMm: joistHoleMm(lineMm2),
      largestHoleMm: downOrNull(hole.joistDepthMm, largestJoistHoleMm),
      deepestNotchMm: downOrNull(hole.joistDepthMm, deepestNotchMm),
    })),
    boards: opened.map(({ board, floor }, i) => ({
      mark: boardMarks[i] ?? '',
      storeyId: board.storeyId,
      at: board.at,
      cables: board.runIds.map(references.cable),
      tape: tapeAt(plan, board.storeyId, board.at.at),
      floor,
      opening: floor === null ? 'lift-board' : floorOpening(floor),
    })),
  };
});

const downOrNull = (depthMm: number | null, of: (depthMm: number) => number): number | null =>
  depthMm === null ? null : Math.floor(of(depthMm));
