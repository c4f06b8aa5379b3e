import type { End } from '#model/cable.ts';
import type { Circuit } from '#model/installation.ts';
import type { Job } from '#model/job.ts';

const nodeOf = (end: End): string | null => ('point' in end ? end.point : null);

/** The longest row of points from here by legs not yet walked, that ends at the board if it can. */
interface Row {
  readonly points: readonly string[];
  readonly isHome: boolean;
}

const better = (one: Row, other: Row): Row => {
  if (one.isHome !== other.isHome) return one.isHome ? one : other;
  return other.points.length > one.points.length ? other : one;
};

interface Walk {
  readonly at: string;
  readonly passed: ReadonlySet<string>;
  /** The leg that was come by: a ring of one point has two to the board. */
  readonly by: string;
}

type Step = { readonly legId: string; readonly to: string | null };

/** Walks that are begun at most: a house's legs want some dozens, legs that cross everywhere would never end. */
const MOST_WALKS = 5000;

interface Ways {
  readonly from: ReadonlyMap<string | null, readonly Step[]>;
  walks: number;
}

/** Spurs are dead ends, so all ways from a point are tried; a point is passed once. */
function rowFrom(ways: Ways, walk: Walk): Row {
  ways.walks += 1;
  let best: Row = { points: [walk.at], isHome: false };
  for (const { legId, to } of ways.from.get(walk.at) ?? []) {
    if (legId === walk.by || ways.walks > MOST_WALKS) continue;
    if (to === null) best = better({ points: [walk.at], isHome: true }, best);
    else if (!walk.passed.has(to)) {
      const rest = rowFrom(ways, { at: to, passed: new Set([...walk.passed, to]), by: legId });
      best = better(best, { points: [walk.at, ...rest.points], isHome: rest.isHome });
    }
  }
  return best;
}

/**
 * The points of a circuit in the order in which its legs pass them from the board: round and back to it where they
 * close, else the longest row from the board. Points off that row are spurs and are left out.
 *
 * @returns empty where no leg leaves the board.
 */
export function orderOfLegs({ legs }: Pick<Job, 'legs'>, { id }: Pick<Circuit, 'id'>): readonly string[] {
  const own = legs.filter(({ circuit }) => circuit === id);
  const ways = new Map<string | null, Step[]>();
  const put = (from: string | null, step: Step): void => {
    ways.set(from, [...(ways.get(from) ?? []), step]);
  };
  for (const leg of own) {
    put(nodeOf(leg.from), { legId: leg.id, to: nodeOf(leg.to) });
    put(nodeOf(leg.to), { legId: leg.id, to: nodeOf(leg.from) });
  }
  const isEndB = (legId: string): boolean => {
    const leg = own.find((each) => each.id === legId);
    return [leg?.from, leg?.to].some((end) => end !== undefined && 'origin' in end && end.end === 'B');
  };
  // From end A first, so that of the two ways round the one that people number by is taken.
  const starts = (ways.get(null) ?? []).toSorted((a, b) => Number(isEndB(a.legId)) - Number(isEndB(b.legId)));
  let best: Row = { points: [], isHome: false };
  const all: Ways = { from: ways, walks: 0 };
  for (const { legId, to } of starts)
    if (to !== null) best = better(best, rowFrom(all, { at: to, passed: new Set([to]), by: legId }));
  return best.points;
}
