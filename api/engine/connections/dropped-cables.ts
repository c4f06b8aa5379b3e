import type { NetworkNode } from '../circuit/network.ts';
import type { Worked } from './worked.ts';

/** An old cable that goes out of use with the point at its end. Both its ends are closed off and stay where they are. */
export interface DroppedCable {
  /** The leg's id; null where no leg is known and only the survey says that a spur ends there. */
  readonly legId: string | null;
  /** The points taken out at its ends, one or two, sorted. */
  readonly goneIds: readonly string[];
  /** What it is disconnected from; null where both ends went, or where nobody knows. */
  readonly at: NetworkNode | null;
}

/** The cables that go with removed points, by leg; then those of points no leg of which is known, by point. */
export function droppedCables({ job, found, proposed }: Worked): readonly DroppedCable[] {
  const kept = new Set(proposed.nodes.map(({ pointId }) => pointId));
  const gone = new Set(
    job.points.filter(({ id, status }) => status === 'removed' && !kept.has(id)).map(({ id }) => id),
  );
  const nodeById = new Map(found.nodes.map((node) => [node.id, node]));
  const legIds = new Set(
    proposed.removed.filter(({ connectionId }) => connectionId === null).map(({ legId }) => legId),
  );
  const wired = found.edges.flatMap(({ kind, legId, from, to }): DroppedCable[] => {
    if (kind !== 'cable' || legId === null || !legIds.has(legId)) return [];
    const ends = [from, to].flatMap((id) => nodeById.get(id) ?? []);
    const goneIds = ends.flatMap(({ pointId }) => (pointId !== null && gone.has(pointId) ? [pointId] : []));
    if (goneIds.length === 0) return [];
    const at = ends.find(({ pointId }) => pointId === null || !gone.has(pointId)) ?? null;
    return [{ legId, goneIds: goneIds.toSorted(), at }];
  });
  const known = new Set(wired.flatMap(({ goneIds }) => goneIds));
  const untold = [...gone].filter((id) => !known.has(id) && isSpurEnd(job.points, id)).toSorted();
  return [
    ...wired.toSorted((a, b) => ((a.legId ?? '') < (b.legId ?? '') ? -1 : 1)),
    ...untold.map((id) => ({ legId: null, goneIds: [id], at: null })),
  ];
}

const isSpurEnd = (points: Worked['job']['points'], id: string): boolean =>
  points.some((point) => point.id === id && point.asFound?.role === 'spur');
