import type { Connection, Scheme } from '#model/scheme.ts';
import type { JobEdit } from '../job-events.ts';
import { newId } from '../new-id.ts';
import { handedOn } from './one-branch.ts';

/** A point's next in a chain of spurs, with the connection that leads there. */
interface ChainFeed {
  readonly connectionId: string;
  readonly from: string;
  readonly to: string;
}

/** The spurs of a scheme that hang, one after another, on a spur's point; in the order of the walk. */
export function spursBehind(scheme: Scheme, pointId: string): readonly ChainFeed[] {
  const found: ChainFeed[] = [];
  const waiting = [pointId];
  const seen = new Set(waiting);
  for (let from = waiting.shift(); from !== undefined; from = waiting.shift()) {
    for (const connection of scheme.connections) {
      if (connection.kind !== 'spur' || !('point' in connection.from) || connection.from.point !== from)
        continue;
      if (seen.has(connection.to)) continue;
      seen.add(connection.to);
      found.push({ connectionId: connection.id, from, to: connection.to });
      waiting.push(connection.to);
    }
  }
  return found;
}

/** True where a spur of the scheme hangs on another spur's point: the whole of it can be put behind a fuse. */
export const isFirstOfChain = (scheme: Scheme, connection: Connection): boolean =>
  connection.kind === 'spur' && spursBehind(scheme, connection.to).length > 0;

type Spur = Extract<Connection, { kind: 'spur' }>;

const isSpur = (connection: Connection): connection is Spur => connection.kind === 'spur';

/** The branch behind one fuse that a spur becomes, with all spurs that hang on it; null for what is no spur. */
function branchOf(scheme: Scheme, connectionId: string) {
  const first = scheme.connections.filter(isSpur).find(({ id }) => id === connectionId);
  if (first === undefined) return null;
  const behind = spursBehind(scheme, first.to);
  const goneIds = [connectionId, ...behind.map((feed) => feed.connectionId)];
  const spurs = goneIds.flatMap((goneId) =>
    scheme.connections.filter(isSpur).filter(({ id }) => id === goneId),
  );
  return {
    from: first.from,
    gone: new Set(goneIds),
    feeds: [{ from: 'unit', to: first.to }, ...behind.map(({ from, to }) => ({ from, to }))],
    handed: handedOn(spurs, new Set(spurs.map(({ to }) => to))),
  };
}

/**
 * Puts a fused unit before a spur, and before all spurs that hang on it: they become one branch behind one fuse, in
 * the same order and the first one's cable, joined on where the first spur was. The label says what of the cables and
 * ways chosen by hand cannot stay.
 */
export function fuseBefore(scheme: Scheme, connectionId: string, name: string): JobEdit {
  const unitId = newId();
  const made = branchOf(scheme, connectionId);
  return {
    label: `Put a fused unit before ${name}${made?.handed.lostWords ?? ''}`,
    change: (job) => {
      const changed = job.schemes.find(({ id }) => id === scheme.id);
      if (changed === undefined || made === null) return;
      const { from, gone, feeds, handed } = made;
      const at = changed.connections.findIndex(({ id }) => id === connectionId);
      const unit = { fuseA: 13 };
      const branch: Connection = { id: unitId, kind: 'fused-spur', from, unit, feeds, ...handed.kept };
      const others = changed.connections.filter(({ id }) => !gone.has(id));
      others.splice(Math.min(at, others.length), 0, structuredClone(branch));
      changed.connections = others;
      changed.locks = changed.locks.filter((id) => !gone.has(id));
    },
  };
}
