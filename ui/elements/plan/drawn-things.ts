import type { Worked } from '#engine/connections/worked.ts';

/** Where a remedy is set: of `remedy/rcbo/ring-house` the circuit, and with it the board that the device goes into. */
function placeOfRemedy(worked: Worked, id: string): readonly string[] {
  const at = id.split('/').slice(2).join('/');
  const board = worked.proposed.circuits.find((circuit) => circuit.id === at)?.board;
  return board === null || board === undefined ? [at] : [at, board.id];
}

/**
 * What is lit on a plan for the ids of things: the things themselves; where a remedy is set; the joints and units that a
 * connection brings along (`c3/joint-out` for `c3`); and the points at both ends of a new cable, whose own way may be
 * no more than a dot on plan.
 */
export function drawnThings(worked: Worked, ids: Iterable<string>): ReadonlySet<string> {
  const asked = new Set(
    [...ids].flatMap((id) => (id.startsWith('remedy/') ? placeOfRemedy(worked, id) : [id])),
  );
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
