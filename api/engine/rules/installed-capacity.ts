import type { NetworkEdge } from '../circuit/network.ts';
import type { Facts } from './facts.ts';
import { metres } from './wiring.ts';

/** A cable's capacity as installed against what it has to carry. */
export interface InstalledCapacity {
  /** `unknown`: some stretch cannot be judged, and none of the others is short. */
  readonly verdict: 'within' | 'short' | 'unknown';
  /** Least capacity of the stretches that can be judged, A; null when none can. */
  readonly izA: number | null;
  /** Reference method of the worst stretch; empty when none can be judged. */
  readonly method: string;
  /** Where the worst stretch starts along the cable, m. */
  readonly metre: number;
  readonly groupFactor: number;
}

/**
 * Judges an edge's cable against a current. A found cable whose path is only the likeliest one is neither
 * proved nor called short by it: it stays unknown.
 *
 * @param neededA the current that the cable must carry at least; exactly as much is enough.
 */
export function installedCapacity(facts: Facts, edge: NetworkEdge, neededA: number): InstalledCapacity {
  const capacity =
    facts.capacities.get(edge.id) ?? (edge.legId === null ? undefined : facts.capacities.get(edge.legId));
  const izA = capacity?.izA ?? capacity?.knownIzA ?? null;
  const told = {
    izA,
    method: capacity?.method ?? '',
    metre: metres(capacity?.worstFromMm),
    groupFactor: capacity?.groupFactor ?? 1,
  };
  const isSeen = edge.state === 'new' || isPathSeen(facts, edge.legId ?? '');
  if (capacity === undefined || izA === null || !isSeen) return { ...told, verdict: 'unknown' };
  if (izA < neededA) return { ...told, verdict: 'short' };
  return { ...told, verdict: capacity.izA === null ? 'unknown' : 'within' };
}

/** Whether the survey followed the whole path of a leg. */
function isPathSeen(facts: Facts, legId: string): boolean {
  const run = facts.foundRuns.get(legId);
  return run?.pinned === true && run.segments.every(({ certainty }) => certainty !== 'assumed');
}

/** The subject and origin of what is said of a cable: the run that the scheme lays, or the leg that was found. */
export function subjectOfEdge(edge: NetworkEdge): { subjectId: string; origin: 'scheme' | 'found' } {
  return edge.state === 'new'
    ? { subjectId: edge.id, origin: 'scheme' }
    : { subjectId: edge.legId ?? edge.id, origin: 'found' };
}
