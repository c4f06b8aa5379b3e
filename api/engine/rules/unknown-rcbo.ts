import type { Board } from '#model/installation.ts';
import type { Worked } from '../connections/worked.ts';
import { isGuess } from '../plan/is-guess.ts';

/**
 * The boards on which a scheme counts for an RCBO: those of the circuits that its `rcbo` remedies name (of all it touches, where
 * one names none), and of its new radials with an RCBO. Sorted.
 */
export function boardsCountingRcbos({ job, scheme, circuitIds }: Worked): readonly string[] {
  const fitted = (scheme?.remedies ?? [])
    .filter((remedy) => remedy.kind === 'rcbo')
    .flatMap(({ at }) => (at === undefined ? circuitIds : [at]));
  const circuits = job.circuits.filter(({ id }) => fitted.includes(id));
  const radials = (scheme?.connections ?? []).flatMap((connection) =>
    connection.kind === 'radial' && connection.device.rcd !== undefined ? [connection.board] : [],
  );
  const counted = new Set([...circuits.map(({ board }) => board), ...fitted, ...radials]);
  return job.boards
    .filter(({ id }) => counted.has(id))
    .map(({ id }) => id)
    .sort();
}

const isUnknown = ({ rcboAvailable, certainty }: Board): boolean =>
  rcboAvailable === undefined || isGuess(certainty?.rcboAvailable);

/** Those of them of which nobody has said whether their maker sells one, sorted. */
export const boardsWithUnknownRcbo = (worked: Worked): readonly string[] =>
  boardsCountingRcbos(worked).filter((id) =>
    worked.job.boards.some((board) => board.id === id && isUnknown(board)),
  );
