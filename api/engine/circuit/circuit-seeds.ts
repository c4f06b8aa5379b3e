import type { Point } from '#model/installation.ts';
import type { Territory } from './circuit-territory.ts';
import { inIdOrder } from './id-order.ts';
import type { NetworkNode, NodeId } from './network.ts';
import { type Links, reachedFrom, withoutHangingTrees } from './network-graph.ts';
import { brokenRingTrunk } from './ring-trunk.ts';
import type { NodeRole } from './shape.ts';
import { hasSpurs, type ShapedWiring } from './wiring-shape.ts';

/** What the roles of nodes are read from. */
interface Surveyed {
  readonly territory: Territory;
  readonly wiring: ShapedWiring;
  readonly pointById: ReadonlyMap<string, Point>;
}

/**
 * The nodes whose role does not come from what they hang from: the origin, the ring (or what is wired or
 * claimed as one), and the points that no cable joins to the origin, by the survey's word.
 */
export function seedRoles(surveyed: Surveyed): ReadonlyMap<NodeId, NodeRole> {
  const { territory, wiring } = surveyed;
  const origin = territory.circuitId;
  const seeds = new Map<NodeId, NodeRole>([[origin, 'origin']]);
  const add = (nodes: Iterable<NodeId>, role: NodeRole): void => {
    for (const node of nodes) if (!seeds.has(node)) seeds.set(node, role);
  };
  if (wiring.shape === 'unknown' && wiring.claimed === 'ring')
    for (const [node, role] of claimedRoles(surveyed, wiring.unfused)) add([node], role);
  else if (hasSpurs(wiring)) add(mainWay(surveyed), wiring.shape === 'lollipop' ? 'radial' : 'ring');
  for (const fragment of fragments(surveyed))
    for (const [node, role] of claimedRoles(surveyed, fragment)) add([node], role);
  return seeds;
}

/** The role of what hangs from a node of this role, up to the first fuse. */
export function hungRoleOn(wiring: ShapedWiring): (seed: NodeRole) => NodeRole {
  return (seed) => {
    if (seed === 'claimed-ring' || seed === 'claimed-spur') return 'unfused-spur';
    if (seed === 'unreached') return 'unreached';
    return hasSpurs(wiring) ? 'unfused-spur' : 'radial';
  };
}

/** The ring; else what is wired as one; of a lollipop the loop and the way to it. */
function mainWay({ territory, wiring, pointById }: Surveyed): Iterable<NodeId> {
  const { core, cables, unfused, shape } = wiring;
  if (core.size > 1) return core;
  const links = linksWithin(cables, unfused);
  const left = withoutHangingTrees(links, new Set([territory.circuitId]));
  if (shape === 'lollipop' || left.size > 1) return left;
  const byId = new Map(territory.nodes.map((node) => [node.id, node]));
  return brokenRingTrunk(territory.circuitId, links, (id) => {
    const node = byId.get(id);
    return node !== undefined && isOld(node, pointById) && claimOf(node, pointById) !== 'spur';
  });
}

function linksWithin(links: Links, nodes: ReadonlySet<NodeId>): Links {
  return new Map([...links].filter(([node]) => nodes.has(node)));
}

/** Pieces of cable that no cable or fuse joins to the origin; those that a fuse feeds come after it, not by themselves. */
function fragments({ territory, wiring }: Surveyed): readonly ReadonlySet<NodeId>[] {
  const isLoad = new Set(territory.nodes.filter(({ kind }) => kind === 'load-terminals').map(({ id }) => id));
  const seen = new Set(wiring.unfused);
  const pieces: ReadonlySet<NodeId>[] = [];
  for (const { id } of territory.nodes) {
    if (seen.has(id)) continue;
    const piece = reachedFrom([id], wiring.cables);
    for (const node of piece) seen.add(node);
    if (![...piece].some((node) => isLoad.has(node))) pieces.push(piece);
  }
  return pieces;
}

/** Whether a node was there before the work, or stands in the place of one that was. */
function isOld(node: NetworkNode, pointById: ReadonlyMap<string, Point>): boolean {
  if (node.kind === 'load-terminals') return false;
  const point = pointById.get(node.pointId ?? '');
  return (
    node.state === 'found' ||
    point?.status === 'removed' ||
    pointById.get(point?.replaces ?? '')?.status === 'replaced'
  );
}

/** What the survey says of a point, or of the one that it replaces. */
function claimOf(node: NetworkNode, pointById: ReadonlyMap<string, Point>): 'ring' | 'spur' | null {
  const point = pointById.get(node.pointId ?? '');
  return point?.asFound?.role ?? pointById.get(point?.replaces ?? '')?.asFound?.role ?? null;
}

/**
 * Roles by the survey's word within one piece of cable: the points that it does not call spurs, and what
 * lies between them; where it calls all of them spurs, those.
 */
function claimedRoles(surveyed: Surveyed, piece: ReadonlySet<NodeId>): ReadonlyMap<NodeId, NodeRole> {
  const { territory, wiring, pointById } = surveyed;
  const old = territory.nodes.filter((node) => piece.has(node.id) && isOld(node, pointById));
  const roles = new Map(old.map((node) => [node.id, claimedRole(node, surveyed)]));
  const onRing = new Set([...roles.keys()].filter((id) => roles.get(id) !== 'claimed-spur'));
  if (onRing.size === 0) return roles;
  const between = withoutHangingTrees(linksWithin(wiring.cables, piece), onRing);
  const usual = roles.get([...onRing].toSorted(inIdOrder)[0] ?? '') ?? 'unreached';
  const roleOf = (id: NodeId): NodeRole => (onRing.has(id) ? (roles.get(id) ?? usual) : usual);
  return new Map([...between].filter((id) => id !== territory.circuitId).map((id) => [id, roleOf(id)]));
}

function claimedRole(node: NetworkNode, { wiring, pointById }: Surveyed): NodeRole {
  if (wiring.claimed === 'radial') return 'radial';
  const claim = claimOf(node, pointById);
  if (claim) return claim === 'ring' ? 'claimed-ring' : 'claimed-spur';
  return wiring.shape === 'unknown' && wiring.claimed === 'ring' ? 'claimed-ring' : 'unreached';
}
