import type { Board, Circuit } from '#model/installation.ts';
import type { Certainty } from '#model/primitives.ts';
import type { JobEdit } from '../job-events.ts';
import { type FactOf, type FactValue, putCertainty, putFact } from './facts.ts';

/** The names of a board's facts. */
export type BoardFact = Exclude<FactOf<Board>, 'rcds' | 'photos'>;
type Named = Pick<Board, 'id' | 'label'>;
type Rcd = Board['rcds'][number];

/** Adds a board of which nothing is known but its name. */
export const addBoard = (id: string, label: string): JobEdit => ({
  label: `Add ${label}`,
  change: ({ boards }) => {
    boards.push({ id, label, rcds: [], certainty: { rcds: 'unknown' } });
  },
});

/** Sets a fact of a board; null takes it away where it need not be there. */
export const setBoardFact = <K extends BoardFact>(
  { id, label }: Named,
  fact: K,
  value: FactValue<Board, K>,
): JobEdit => ({
  label: `Change ${label}`,
  change: ({ boards }) => {
    const board = boards.find((each) => each.id === id);
    if (board !== undefined) putFact<Board, K>(board, fact, value);
  },
});

/** Says how sure a fact of a board is. */
export const setBoardCertainty = (
  { id, label }: Named,
  fact: BoardFact | 'rcds',
  certainty: Certainty,
): JobEdit => ({
  label: `Change how sure a fact of ${label} is`,
  change: ({ boards }) => {
    const board = boards.find((each) => each.id === id);
    if (board !== undefined) putCertainty(board, fact, certainty);
  },
});

/** Records that a board has no RCD that protects several circuits, or that nobody looked. */
export const setNoRcds = ({ id, label }: Named, found: 'none' | 'not-looked-at'): JobEdit => ({
  label: `Change the RCDs of ${label}`,
  change: ({ boards }) => {
    const board = boards.find((each) => each.id === id);
    if (board === undefined || board.rcds.length > 0) return;
    putCertainty(board, 'rcds', found === 'none' ? null : 'unknown');
  },
});

/** Records an RCD of a board, or changes the one of the same id. */
export const putRcd = ({ id, label }: Named, rcd: Rcd): JobEdit => ({
  label: `Change the RCDs of ${label}`,
  change: ({ boards }) => {
    const board = boards.find((each) => each.id === id);
    if (board === undefined) return;
    const place = board.rcds.findIndex((known) => known.id === rcd.id);
    if (board.certainty?.rcds === 'unknown') putCertainty(board, 'rcds', null);
    board.rcds.splice(place < 0 ? board.rcds.length : place, place < 0 ? 0 : 1, rcd);
  },
});

/** Removes an RCD; what circuits that were recorded behind it are behind is not known, nor after the last whether there is one. */
export const removeRcd = ({ id, label }: Named, rcdId: string): JobEdit => ({
  label: `Remove an RCD of ${label}`,
  change: ({ boards, circuits }) => {
    const board = boards.find((each) => each.id === id);
    if (board === undefined) return;
    board.rcds = board.rcds.filter((known) => known.id !== rcdId);
    if (board.rcds.length === 0) putCertainty(board, 'rcds', 'unknown');
    for (const circuit of circuits)
      if (circuit.upstreamRcd === rcdId) putFact<Circuit, 'upstreamRcd'>(circuit, 'upstreamRcd', null);
  },
});
