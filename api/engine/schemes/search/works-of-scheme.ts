import type { Scheme } from '#model/scheme.ts';
import type { Run } from '../../ways/run.ts';
import type { WayEnd } from '../../ways/way-cost.ts';
import { workScheme } from '../work-scheme.ts';
import { type Aim, byPence } from './aim.ts';
import { linkBy, linkCosts, linksBy } from './link-costs.ts';
import { isSameWay, pinOf } from './pins.ts';
import { worksOfRun } from './plain-ways.ts';
import { endOfNode, type SearchGround } from './search-ground.ts';
import { type Works, worksTogether } from './works.ts';
import { thingsByCause } from './works-cost.ts';

/**
 * The works of any scheme by the measure that columns add up to, by walking its wiring: every new cable by itself, pinned
 * ones by their own way, and every thing that it causes.
 * What its wanted points take anyway is among it, so two schemes compare by their difference.
 *
 * @param aim by which cables that are not pinned are laid; absent: the cheapest way, as they are in every estimate.
 */
export function worksOfScheme(ground: SearchGround, scheme: Scheme, aim: Aim = byPence): Works {
  const { house, library } = ground;
  const isPinned = scheme.connections.some(({ runs }) => runs !== undefined);
  const worked = workScheme(house, scheme, isPinned ? undefined : []);
  const link = linkCosts(ground, aim);
  const pinned = new Map(worked.runs.flatMap((run) => (run.pinned ? [[run.id, run] as const] : [])));
  const at = {
    ...ground,
    network: worked.proposed,
    nodeById: new Map(worked.proposed.nodes.map((node) => [node.id, node])),
  };
  const positions = new Map(
    [...worked.things.joints, ...worked.things.fusedUnits].flatMap((thing) =>
      thing.position === null ? [] : [[thing.id, thing.position] as const],
    ),
  );
  const ends = new Map<string, WayEnd | null>();
  const endOf = (nodeId: string): WayEnd | null => {
    const id = nodeId.replace(/\/unit\/load$/, '/unit');
    const position = positions.get(id);
    const isJoint = at.nodeById.get(nodeId)?.kind === 'joint';
    const own = position && ({ position, mount: null, kind: isJoint ? 'joint' : 'accessory' } as const);
    if (!ends.has(id)) ends.set(id, endOfNode(at, nodeId) ?? own ?? null);
    return ends.get(id) ?? null;
  };
  const cables = worked.proposed.edges
    .filter(({ kind, state, legId }) => kind === 'cable' && state === 'new' && legId === null)
    .map(({ id, from, to, cable }) => {
      const run = pinned.get(id);
      return run === undefined
        ? link(endOf(from), endOf(to), cable ?? undefined)
        : pinnedLink(ground, run, [endOf(from), endOf(to)]);
    });
  return worksTogether([...cables, ...thingsByCause(worked, library).values()]);
}

/** A cable by the way that it is pinned to: that of the least disturbance as the search has it, any other as it is worked. */
function pinnedLink(
  ground: SearchGround,
  run: Run,
  [from, to]: readonly [WayEnd | null, WayEnd | null],
): Works {
  const { house, library } = ground;
  if (from !== null && to !== null && isSameWay(run, pinOf(ground, from, to)))
    return linksBy(ground, 'mess')(from, to, run.cable);
  return linkBy(ground, { ...worksOfRun(house, library, run), routeMm: run.routeMm }, run);
}
