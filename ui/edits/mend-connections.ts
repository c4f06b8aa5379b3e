import type { Draft } from 'immer';
import type { End } from '#model/cable.ts';
import type { Connection, Scheme, Tap } from '#model/scheme.ts';
import { detachPoint } from './detach-point.ts';

/** What is leaving a job, by id. */
export interface Leaving {
  readonly points: ReadonlySet<string>;
  readonly legs: ReadonlySet<string>;
  readonly circuits: ReadonlySet<string>;
  readonly boards: ReadonlySet<string>;
}

/** True where a cable's end is at something that leaves. */
export const endLeaves = (end: End, { points, circuits }: Leaving): boolean =>
  'point' in end ? points.has(end.point) : circuits.has(end.origin);

/**
 * A scheme without what leaves: each point that leaves is taken out of it as by hand, connections that hang on a leg, a
 * circuit or a board that leaves go, and locks and remedies on what went go with it.
 */
export function schemeWithout(scheme: Draft<Scheme>, leaving: Leaving): void {
  for (const pointId of leaving.points) detachPoint(scheme, pointId);
  scheme.connections = scheme.connections.flatMap((connection) => {
    if (!isKept(connection, leaving)) return [];
    dropLegOf(connection, leaving);
    dropRunsOf(connection, leaving);
    return [connection];
  });
  scheme.remedies = scheme.remedies.filter(
    ({ at }) =>
      at === undefined || !(leaving.points.has(at) || leaving.circuits.has(at) || leaving.boards.has(at)),
  );
  scheme.locks = scheme.locks.filter((id) => scheme.connections.some((connection) => connection.id === id));
}

function isKept(connection: Connection, leaving: Leaving): boolean {
  switch (connection.kind) {
    case 'spur':
    case 'fused-spur':
      return !tapLeaves(connection.from, leaving);
    case 'fuse-down':
    case 'close-spur':
      return !leaving.legs.has(connection.leg);
    case 'ring-extension':
      return (
        !leaving.circuits.has(connection.circuit) &&
        !connection.between.some((end) => endLeaves(end, leaving))
      );
    case 'radial':
      return !leaving.boards.has(connection.board);
  }
}

function tapLeaves(tap: Tap, { legs, circuits }: Leaving): boolean {
  if ('point' in tap) return false;
  return 'leg' in tap ? legs.has(tap.leg) : circuits.has(tap.origin);
}

/** Without its leg an extension still says where it is; its cuts in that leg become the neighbours' terminals. */
function dropLegOf(connection: Draft<Connection>, { legs }: Leaving): void {
  if (connection.kind !== 'ring-extension' || connection.leg === undefined) return;
  if (!legs.has(connection.leg)) return;
  delete connection.leg;
  connection.out = { how: 'terminals' };
  connection.back = { how: 'terminals' };
}

/** Runs pinned by hand go with the ends that they were pinned between. */
function dropRunsOf(connection: Draft<Connection>, leaving: Leaving): void {
  const kept = connection.runs?.filter(
    ({ from, to }) => !endLeaves(from, leaving) && !endLeaves(to, leaving),
  );
  if (kept === undefined || kept.length === connection.runs?.length) return;
  if (kept.length > 0) connection.runs = kept;
  else delete connection.runs;
}
