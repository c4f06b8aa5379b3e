import type { Job } from '#model/job.ts';
import type { Connection } from '#model/scheme.ts';
import { isFollowed } from '../../plan/is-followed.ts';

/** The legs that a connection is jointed into elsewhere than at their ends. */
export function cutLegs(connection: Connection): readonly string[] {
  switch (connection.kind) {
    case 'spur':
    case 'fused-spur':
      return 'leg' in connection.from ? [connection.from.leg] : [];
    case 'ring-extension':
      return connection.leg !== undefined &&
        [connection.out, connection.back].some(({ how }) => how !== 'terminals')
        ? [connection.leg]
        : [];
    case 'fuse-down':
      return connection.alongMm === undefined ? [] : [connection.leg];
    case 'close-spur':
      return connection.back.how === 'terminals' ? [] : [connection.leg];
    case 'radial':
      return [];
  }
}

/**
 * What connections rest on: legs that they are jointed into though nobody has followed their way, each once, in the order
 * of their ids. Until such a leg is located the joint may not be possible where it is drawn.
 */
export function restsOn({ legs }: Job, connections: readonly Connection[]): readonly string[] {
  const cut = new Set(connections.flatMap(cutLegs));
  return legs.flatMap((leg) => (cut.has(leg.id) && !isFollowed(leg) ? [leg.id] : [])).toSorted();
}
