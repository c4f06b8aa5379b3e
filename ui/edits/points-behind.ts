import type { Scheme } from '#model/scheme.ts';
import { joinedBy } from './joined-by.ts';

/** Points of a scheme that take their supply from one of these, at any remove; these not among them. */
export function pointsBehind(scheme: Scheme, pointIds: readonly string[]): ReadonlySet<string> {
  const reached = new Set(pointIds);
  for (let size = 0; size !== reached.size; ) {
    size = reached.size;
    for (const connection of scheme.connections) {
      const hangs =
        (connection.kind === 'spur' || connection.kind === 'fused-spur') &&
        'point' in connection.from &&
        reached.has(connection.from.point);
      if (hangs) for (const id of joinedBy(connection)) reached.add(id);
    }
  }
  for (const id of pointIds) reached.delete(id);
  return reached;
}
