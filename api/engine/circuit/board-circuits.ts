import type { Job } from '#model/job.ts';
import { isGuess } from '../plan/is-guess.ts';
import type { Network, NetworkCircuit } from './network.ts';

/** What is on a board once a scheme is carried out, so far as it is told. */
export interface BoardCircuits {
  readonly boardId: string;
  /** Circuits found that are recorded, in the network's order. */
  readonly recorded: readonly NetworkCircuit[];
  /** How many the scheme makes. */
  readonly added: number;
  /** Circuits that nobody recorded: as the ways in use say, and the ends of what they may be. */
  readonly unrecorded: { readonly likely: number; readonly low: number; readonly high: number };
}

/** Ways of a house's board that nobody counted. Common practice, no source. */
const USUAL_WAYS_IN_USE = 8;

/**
 * The circuits of a board. A way in use that no recorded circuit takes is a circuit that nobody recorded: sure where ways and
 * spare ways were counted; at the low end none where one of them is a guess; where one is not told, none as likely and at the
 * high end as many as the ways, or a usual house, would hold.
 */
export function circuitsOfBoard(job: Job, { circuits }: Network, boardId: string): BoardCircuits {
  const own = circuits.filter(({ board }) => board?.id === boardId);
  const recorded = own.filter(({ isNew }) => !isNew);
  const beyond = (inUse: number): number => Math.max(0, inUse - recorded.length);
  return {
    boardId,
    recorded,
    added: own.length - recorded.length,
    unrecorded: unrecordedOf(job, boardId, beyond),
  };
}

function unrecordedOf(
  { boards }: Job,
  boardId: string,
  beyond: (inUse: number) => number,
): BoardCircuits['unrecorded'] {
  const board = boards.find(({ id }) => id === boardId);
  if (board?.ways === undefined || board.spareWays === undefined)
    return { likely: 0, low: 0, high: beyond(board?.ways ?? USUAL_WAYS_IN_USE) };
  const likely = beyond(board.ways - board.spareWays);
  const guessed = isGuess(board.certainty?.ways) || isGuess(board.certainty?.spareWays);
  return guessed ? { likely, low: 0, high: beyond(board.ways) } : { likely, low: likely, high: likely };
}
