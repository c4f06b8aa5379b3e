import type { Worked } from '#engine/connections/worked.ts';

const boardsOf = ({ job }: Worked): readonly string[] => job.boards.map(({ id }) => id);

/**
 * Where a remedy is set: of `remedy/rcbo/ring-house` the circuit, and with it the board that the device goes into. A bond ends
 * at the earth beside the boards, and the service's own end is no point of the plan; so does one of which no place is known.
 */
function placeOfRemedy(worked: Worked, id: string): readonly string[] {
  const [, kind, ...rest] = id.split('/');
  const at = rest.join('/');
  if (kind === 'bond-upgrade' || at === '') return boardsOf(worked);
  const board = worked.proposed.circuits.find((circuit) => circuit.id === at)?.board;
  return board === null || board === undefined ? [at] : [at, board.id];
}

/** What is drawn of a circuit: its board and its cables, old and new. */
function partsOfCircuit(worked: Worked, circuitId: string): readonly string[] {
  const legs = worked.job.legs.filter(({ circuit }) => circuit === circuitId).map(({ id }) => id);
  const runs = worked.runs.filter(({ circuitIds }) => circuitIds.includes(circuitId)).map(({ id }) => id);
  const board = worked.proposed.circuits.find(({ id }) => id === circuitId)?.board;
  return [...(board === null || board === undefined ? [] : [board.id]), ...legs, ...runs];
}

/** The things that an id stands for which is none itself: a remedy, a circuit, the supply, the scheme as a whole. */
function thingsFor(worked: Worked, id: string): readonly string[] {
  if (id.startsWith('remedy/'))
    return placeOfRemedy(worked, id).flatMap((at) => [at, ...thingsFor(worked, at)]);
  if (worked.proposed.circuits.some((circuit) => circuit.id === id)) return partsOfCircuit(worked, id);
  if (id === 'supply' || id.startsWith('supply/')) return boardsOf(worked);
  return id === worked.scheme?.id ? worked.runs.map((run) => run.id) : [id];
}

/**
 * What is lit on a plan for the ids of things: the things themselves; where a remedy is set; a
 * circuit's cables and board; the board for the supply; the joints and units that a
 * connection brings along (`c3/joint-out` for `c3`); and the points at both ends of a new cable, whose own way may be
 * no more than a dot on plan.
 */
export function drawnThings(worked: Worked, ids: Iterable<string>): ReadonlySet<string> {
  const asked = new Set([...ids].flatMap((id) => thingsFor(worked, id)));
  const drawn = new Set(asked);
  for (const { id, connectionId, from, to } of worked.runs) {
    if (!asked.has(id) && (connectionId === null || !asked.has(connectionId))) continue;
    drawn.add(id);
    for (const { pointId } of [from, to]) if (pointId !== null) drawn.add(pointId);
  }
  for (const { id, connectionId } of worked.things.joints)
    if (connectionId !== null && asked.has(connectionId)) drawn.add(id);
  for (const { id } of worked.things.fusedUnits) if (asked.has(id.split('/')[0] ?? id)) drawn.add(id);
  return drawn;
}
