import type { Worked } from '#engine/connections/worked.ts';

/** What is drawn of a circuit: its cables, old and new, and its board. */
function partsOfCircuit(worked: Worked, circuitId: string): readonly string[] {
  const legs = worked.job.legs.filter(({ circuit }) => circuit === circuitId).map(({ id }) => id);
  const runs = worked.runs.filter(({ circuitIds }) => circuitIds.includes(circuitId)).map(({ id }) => id);
  const board = worked.proposed.circuits.find(({ id }) => id === circuitId)?.board;
  return [...(board === null || board === undefined ? [] : [board.id]), ...legs, ...runs];
}

function drawnFor(worked: Worked, id: string): readonly string[] {
  if (worked.proposed.circuits.some((circuit) => circuit.id === id)) return partsOfCircuit(worked, id);
  if (id === 'supply' || id.startsWith('supply/')) return worked.job.boards.map((board) => board.id);
  if (id === worked.scheme?.id) return worked.runs.map((run) => run.id);
  const runs = worked.runs.filter(({ connectionId }) => connectionId === id).map((run) => run.id);
  return [id, ...runs];
}

const remembered = new WeakMap<
  ReadonlySet<string>,
  { readonly worked: Worked; readonly lit: ReadonlySet<string> }
>();

/**
 * What lights up on the plan for things that are told of: a circuit is its cables and its board, the supply is the
 * board, a connection its cables; the others are themselves. The same set for the same question, so that the plan
 * does not take it for new.
 */
export function litPlaces(worked: Worked, ids: ReadonlySet<string>): ReadonlySet<string> {
  const before = remembered.get(ids);
  if (before?.worked === worked) return before.lit;
  const lit = new Set([...ids].flatMap((id) => drawnFor(worked, id)));
  remembered.set(ids, { worked, lit });
  return lit;
}
