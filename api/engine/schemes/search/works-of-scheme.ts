import type { Scheme } from '#model/scheme.ts';
import type { Worked } from '../../connections/worked.ts';
import type { Run } from '../../ways/run.ts';
import type { WayEnd } from '../../ways/way-cost.ts';
import { runsAlone, wiringOf, workScheme } from '../work-scheme.ts';
import { type Aim, byPence } from './aim.ts';
import { linkAim, linkBy, linkCosts, linksBy } from './link-costs.ts';
import { isSameWay, pinOf } from './pins.ts';
import { worksOfRun } from './plain-ways.ts';
import { endOfNode, type SearchGround } from './search-ground.ts';
import { type LaidCable, sharedWorks } from './shared-works.ts';
import { type Works, worksLess, worksTogether } from './works.ts';
import { thingsByCause } from './works-cost.ts';

/**
 * The works of any scheme by the measure that columns add up to, by walking its wiring: every new cable by itself, pinned
 * ones by their own way, and every thing that it causes, less what the cables of each connection share.
 * What its wanted points take anyway is among it, so two schemes compare by their difference.
 *
 * @param aim by which cables that are not pinned are laid; absent: the cheapest way, as they are in every estimate.
 */
export function worksOfScheme(ground: SearchGround, scheme: Scheme, aim: Aim = byPence): Works {
  const { cables, things } = walked(ground, scheme, aim);
  const byConnection = new Map<string, LaidCable[]>();
  for (const cable of cables)
    byConnection.set(cable.connectionId, [...(byConnection.get(cable.connectionId) ?? []), cable]);
  return [...byConnection.values()].reduce(
    (whole, laid) => worksLess(whole, sharedWorks(ground.house, laid)),
    worksTogether([...cables.map(({ works }) => works), ...things]),
  );
}

/** The same with every cable by itself, whatever it shares. */
export function worksApart(ground: SearchGround, scheme: Scheme, aim: Aim = byPence): Works {
  const { cables, things } = walked(ground, scheme, aim);
  return worksTogether([...cables.map(({ works }) => works), ...things]);
}

/** A cable that was met, and the connection that it is of. */
interface WalkedCable extends LaidCable {
  readonly connectionId: string;
}

interface Walked {
  readonly cables: readonly WalkedCable[];
  readonly things: readonly Works[];
}

function walked(ground: SearchGround, scheme: Scheme, aim: Aim): Walked {
  const { house, library } = ground;
  const isPinned = scheme.connections.some(({ runs }) => runs !== undefined);
  const worked = workScheme(house, scheme, isPinned ? runsAlone(house, scheme.connections) : []);
  const { mustCarryA } = wiringOf(house, scheme.connections);
  const endOf = endsIn(ground, worked);
  const [link, by] = [linkCosts(ground, aim), linkAim(ground, aim)];
  const pinned = new Map(worked.runs.flatMap((run) => (run.pinned ? [[run.id, run] as const] : [])));
  const cables = worked.proposed.edges
    .filter(({ kind, state, legId }) => kind === 'cable' && state === 'new' && legId === null)
    .map((edge): WalkedCable => {
      const run = pinned.get(edge.id);
      const [from, to] = [endOf(edge.from), endOf(edge.to)];
      const cable = edge.cable ?? undefined;
      const carried = {
        connectionId: edge.connectionId ?? edge.id,
        mustCarryA: mustCarryA.get(edge.id) ?? null,
        ...(cable === undefined ? {} : { cable }),
      };
      if (run !== undefined)
        return { ...carried, works: pinnedLink(ground, run, [from, to]), segments: run.segments };
      return {
        ...carried,
        works: link(from, to, cable),
        // Asked for only where it is needed: a way takes longer than its price.
        get segments() {
          return from === null || to === null
            ? []
            : ground.ways.route(from, to, by(from, to, cable)).segments;
        },
      };
    });
  return { cables, things: [...thingsByCause(worked, library).values()] };
}

/** Where the cables of a worked scheme end, by node; null where nobody has told its place. */
function endsIn(ground: SearchGround, { proposed, things }: Worked): (nodeId: string) => WayEnd | null {
  const nodeById = new Map(proposed.nodes.map((node) => [node.id, node]));
  const at = { ...ground, network: proposed, nodeById };
  const positions = new Map(
    [...things.joints, ...things.fusedUnits].flatMap((thing) =>
      thing.position === null ? [] : [[thing.id, thing.position] as const],
    ),
  );
  const ends = new Map<string, WayEnd | null>();
  return (nodeId) => {
    const id = nodeId.replace(/\/unit\/load$/, '/unit');
    const position = positions.get(id);
    const isJoint = nodeById.get(nodeId)?.kind === 'joint';
    const own = position && ({ position, mount: null, kind: isJoint ? 'joint' : 'accessory' } as const);
    if (!ends.has(id)) ends.set(id, endOfNode(at, nodeId) ?? own ?? null);
    return ends.get(id) ?? null;
  };
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
