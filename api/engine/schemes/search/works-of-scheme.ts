import type { Scheme } from '#model/scheme.ts';
import type { WayEnd } from '../../ways/way-cost.ts';
import { workScheme } from '../work-scheme.ts';
import { linkCosts } from './link-costs.ts';
import { endOfNode, type SearchGround } from './search-ground.ts';
import { thingsByCause } from './works-cost.ts';

/** What a whole scheme costs by the measure that columns add up to: money in thousandths of a penny, and disturbance. */
export interface Works {
  readonly millipence: number;
  readonly mess: number;
}

/**
 * The works cost of any scheme, by walking its wiring: every new cable by itself, and every thing that it causes.
 * What its wanted points take anyway is among it, so two schemes compare by their difference.
 */
export function worksOfScheme(ground: SearchGround, scheme: Scheme): Works {
  const { house, library } = ground;
  const worked = workScheme(house, scheme, []);
  const link = linkCosts(ground);
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
    .map(({ from, to, cable }) => link(endOf(from), endOf(to), cable ?? undefined));
  const things = [...thingsByCause(worked, library).values()];
  return {
    millipence: [...cables.map((cable) => cable.millipence), ...things].reduce((sum, each) => sum + each, 0),
    mess: cables.reduce((sum, { mess }) => sum + mess, 0),
  };
}
