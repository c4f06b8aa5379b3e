import type { SkirtingLink } from './skirting-graph.ts';

/** A link as it is passed: `reversed` when from its `to` to its `from`. */
export interface PassedLink {
  readonly link: SkirtingLink;
  readonly reversed: boolean;
}

interface Reached {
  readonly distanceMm: number;
  readonly by: PassedLink | null;
  readonly before: string | null;
}

/**
 * The shortest way through a graph of links (Dijkstra); of ways equally long, the one found first with nodes
 * taken in the order of their ids.
 *
 * @returns the links in order; null when there is no way.
 */
export function shortestLinks(
  links: readonly SkirtingLink[],
  fromId: string,
  toId: string,
): readonly PassedLink[] | null {
  const leaving = linksByNode(links);
  const reached = new Map<string, Reached>([[fromId, { distanceMm: 0, by: null, before: null }]]);
  const open = new Set([fromId]);
  const done = new Set<string>();
  while (open.size > 0) {
    const id = nearestOf(open, reached);
    open.delete(id);
    done.add(id);
    if (id === toId) return wayTo(id, reached);
    const soFarMm = reached.get(id)?.distanceMm ?? 0;
    for (const by of leaving.get(id) ?? []) {
      const next = by.reversed ? by.link.from.id : by.link.to.id;
      const distanceMm = soFarMm + by.link.lengthMm;
      const known = reached.get(next)?.distanceMm ?? Number.POSITIVE_INFINITY;
      if (done.has(next) || distanceMm >= known) continue;
      reached.set(next, { distanceMm, by, before: id });
      open.add(next);
    }
  }
  return null;
}

function linksByNode(links: readonly SkirtingLink[]): ReadonlyMap<string, readonly PassedLink[]> {
  const byNode = new Map<string, PassedLink[]>();
  const add = (id: string, passed: PassedLink) => {
    const list = byNode.get(id);
    if (list === undefined) byNode.set(id, [passed]);
    else list.push(passed);
  };
  for (const link of links) {
    add(link.from.id, { link, reversed: false });
    add(link.to.id, { link, reversed: true });
  }
  return byNode;
}

function nearestOf(open: ReadonlySet<string>, reached: ReadonlyMap<string, Reached>): string {
  const far = Number.POSITIVE_INFINITY;
  const distance = (id: string) => reached.get(id)?.distanceMm ?? far;
  const [nearest] = [...open].toSorted((a, b) => distance(a) - distance(b) || (a < b ? -1 : 1));
  return nearest ?? '';
}

function wayTo(toId: string, reached: ReadonlyMap<string, Reached>): readonly PassedLink[] {
  const way: PassedLink[] = [];
  let step = reached.get(toId);
  while (step?.by) {
    way.unshift(step.by);
    step = step.before === null ? undefined : reached.get(step.before);
  }
  return way;
}
