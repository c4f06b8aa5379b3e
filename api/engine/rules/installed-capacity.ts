import type { NetworkEdge } from '../circuit/network.ts';
import type { CableCapacity } from '../proof/cable-capacity.ts';
import type { Facts } from './facts.ts';
import { metres } from './wiring.ts';

/** A cable's capacity as installed against what it has to carry. */
export interface InstalledCapacity {
  /** `unknown`: what the survey leaves open decides whether it carries enough. */
  readonly verdict: 'within' | 'short' | 'unknown';
  /** What it carries for sure when within, at the best when short, A; null when nothing can be said. */
  readonly izA: number | null;
  /** How it lies where it can carry least: "method C × 0.5 for insulation all round it"; empty when unknown. */
  readonly how: string;
  /** ", from 1.4 m along" for the start of that stretch; empty when it is the start of the cable. */
  readonly along: string;
  /** ", or another way clear of insulation", or what else would let the same cable carry more; else empty. */
  readonly otherWay: string;
  readonly groupFactor: number;
  /**
   * True of cable found that was better off before the scheme laid others into its tube or channel: what is
   * said of it then comes from the scheme.
   */
  readonly isCrowded: boolean;
}

type Verdict = InstalledCapacity['verdict'];

/** From good to bad. */
const verdicts: readonly Verdict[] = ['within', 'unknown', 'short'];

/** Methods that stand for thermal insulation against the cable. */
const byInsulation: ReadonlySet<string> = new Set(['100', '101', '102', '103', 'A']);

/**
 * Judges an edge's cable against a current. A found cable whose path is only the likeliest one is neither
 * proved nor called short by it: it stays unknown. So does a cable that carries enough at the best and too
 * little at the worst by what the survey leaves open.
 *
 * @param neededA the current that the cable must carry at least; exactly as much is enough.
 */
export function installedCapacity(facts: Facts, edge: NetworkEdge, neededA: number): InstalledCapacity {
  const capacity = facts.capacities.get(edge.id);
  const isSeen = edge.state === 'new' || isPathSeen(facts, edge.legId ?? '');
  const verdict = isSeen ? verdictOf(capacity, neededA) : 'unknown';
  const before = isSeen && capacity?.asFound ? verdictOf(capacity.asFound, neededA) : verdict;
  const isCrowded = verdicts.indexOf(before) < verdicts.indexOf(verdict);
  const stretch = verdict === 'short' ? (capacity?.atBest ?? capacity) : capacity;
  if (verdict === 'unknown' || stretch === undefined)
    return { verdict: 'unknown', izA: null, how: '', along: '', otherWay: '', groupFactor: 1, isCrowded };
  return { verdict, ...told(stretch, isCrowded), isCrowded };
}

function verdictOf(capacity: CableCapacity | undefined, neededA: number): Verdict {
  const bestA = (capacity?.atBest ?? capacity)?.izA ?? neededA;
  if (bestA < neededA) return 'short';
  return (capacity?.izA ?? 0) >= neededA ? 'within' : 'unknown';
}

type Deciding = Pick<
  CableCapacity,
  'izA' | 'method' | 'worstFromMm' | 'groupFactor' | 'insulationFactor' | 'ambientFactor'
>;

function told(stretch: Deciding, isCrowded: boolean): Omit<InstalledCapacity, 'verdict' | 'isCrowded'> {
  const { izA, method, worstFromMm, groupFactor, insulationFactor, ambientFactor = 1 } = stretch;
  const warm = ambientFactor === 1 ? '' : ` × ${ambientFactor} for the air’s temperature`;
  const grouped = groupFactor < 1 ? ` × ${groupFactor} for cables together` : '';
  const surrounded = insulationFactor < 1 ? ` × ${insulationFactor} for insulation all round it` : '';
  return {
    izA,
    how: `method ${method ?? ''}${grouped}${surrounded}${warm}`,
    along: (worstFromMm ?? 0) > 0 ? `, from ${metres(worstFromMm)} m along` : '',
    otherWay: isCrowded
      ? ', or a tube or channel of its own for the new cable'
      : otherWay(method ?? '', insulationFactor),
    groupFactor,
  };
}

function otherWay(method: string, insulationFactor: number): string {
  if (insulationFactor < 1 || byInsulation.has(method)) return ', or another way clear of insulation';
  return method === 'B' ? ', or capping or clips where it is in a tube or channel' : '';
}

/** Whether the survey followed the whole path of a leg. */
function isPathSeen(facts: Facts, legId: string): boolean {
  const run = facts.foundRuns.get(legId);
  return run?.pinned === true && run.segments.every(({ certainty }) => certainty !== 'assumed');
}

/**
 * The subject and origin of what is said of a cable: the run that the scheme lays, or the leg that was found,
 * with the scheme for its origin where that crowds it.
 */
export function subjectOfEdge(
  edge: NetworkEdge,
  { isCrowded }: Pick<InstalledCapacity, 'isCrowded'> = { isCrowded: false },
): { subjectId: string; origin: 'scheme' | 'found' } {
  return edge.state === 'new'
    ? { subjectId: edge.id, origin: 'scheme' }
    : { subjectId: edge.legId ?? edge.id, origin: isCrowded ? 'scheme' : 'found' };
}
