import type { Connection, Scheme } from '#model/scheme.ts';
import type { JobEdit } from '../job-events.ts';
import { newId } from '../new-id.ts';

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

/**
 * Puts a fused unit before a spur, and before all spurs that hang on it: they become one branch behind one fuse, in
 * the same order, joined on where the first spur was.
 */
export function fuseBefore(scheme: Scheme, connectionId: string, name: string): JobEdit {
  const unitId = newId();
  return {
    label: `Put a fused unit before ${name}`,
    change: (job) => {
      const changed = job.schemes.find(({ id }) => id === scheme.id);
      const first = changed?.connections.find(({ id }) => id === connectionId);
      if (changed === undefined || first?.kind !== 'spur') return;
      const behind = spursBehind(changed, first.to);
      const gone = new Set([connectionId, ...behind.map((feed) => feed.connectionId)]);
      const at = changed.connections.indexOf(first);
      const branch: Connection = {
        id: unitId,
        kind: 'fused-spur',
        from: { ...first.from },
        unit: { fuseA: 13 },
        feeds: [{ from: 'unit', to: first.to }, ...behind.map(({ from, to }) => ({ from, to }))],
      };
      const others = changed.connections.filter(({ id }) => !gone.has(id));
      others.splice(Math.min(at, others.length), 0, branch);
      changed.connections = others;
      changed.locks = changed.locks.filter((id) => !gone.has(id));
    },
  };
}
