import { readingsBefore } from '../circuit/readings-before.ts';
import type { Worked } from '../connections/worked.ts';
import { isGuess } from '../plan/is-guess.ts';

/** The loop impedance before a circuit's origin. */
export interface SourceLoop {
  /** Ω; null where nobody measured or named it. */
  readonly ohm: number | null;
  /** `board` and `intake`: measured there. `assumed`: somebody's guess. */
  readonly from: 'board' | 'intake' | 'assumed' | null;
}

/**
 * The fault loop before a circuit: as measured at its board, else at the intake (of several readings before the work the highest), else
 * as assumed. Distributors' declared maxima are no measurement, and are not put in its place.
 */
export function sourceLoop({ job, proposed }: Worked, circuitId: string): SourceLoop {
  const board = proposed.circuits.find(({ id }) => id === circuitId)?.board;
  if (board?.zdbOhm !== undefined && !isGuess(board.certainty?.zdbOhm))
    return { ohm: board.zdbOhm, from: 'board' };
  const { supply } = job;
  if (supply.zeOhm !== undefined && !isGuess(supply.certainty?.zeOhm))
    return { ohm: supply.zeOhm, from: 'intake' };
  const read = readingsBefore(job, 'ze').map(({ ohm }) => ohm);
  if (read.length > 0) return { ohm: Math.max(...read), from: 'intake' };
  const guess = board?.zdbOhm ?? (supply.certainty?.zeOhm === 'assumed' ? supply.zeOhm : undefined);
  return guess === undefined ? { ohm: null, from: null } : { ohm: guess, from: 'assumed' };
}
