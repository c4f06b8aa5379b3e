import type { CircuitShape, UnfusedSpur } from '../../circuit/shape.ts';
import type { WayEnd } from '../../ways/way-cost.ts';
import type { Attachment, SitesBeside } from './attach-columns.ts';
import { attachColumns, BROUGHT_FUSE_A } from './attach-columns.ts';
import { CABLES_AT_POINT, wholeLegs } from './attachments.ts';
import { CABLES_AT_UNIT } from './branch-trees.ts';
import type { Tree } from './cheapest-trees.ts';
import { sizeOf } from './point-prices.ts';
import type { SchemeColumn } from './scheme-column.ts';
import { endOfNode, type Part } from './search-ground.ts';
import type { Layer } from './search-space.ts';
import { mostSharedWeight } from './shared-works.ts';
import { eachInTurn } from './spots-in-turn.ts';
import { noWorks, type Works, worksLess, worksTogether } from './works.ts';
import {
  endsWorks,
  feedsOf,
  joinedAlone,
  neededBeforeFuse,
  pairFeeds,
  treeCables,
  treesOfRoot,
  treeWorks,
  unitSite,
  type Workshop,
} from './workshop.ts';

/** An existing spur with one accessory, and how it hangs on the ring. */
interface OldSpur {
  readonly shape: CircuitShape;
  readonly legId: string;
  readonly rootNode: string;
  readonly endNode: string;
  readonly endPoint: string;
}

/** What can be done with every spur that is there: fused down and carried on, or closed into the ring. One layer a spur. */
export function mendLayers(
  shop: Workshop,
  shape: CircuitShape,
  sites: SitesBeside,
): readonly Layer<SchemeColumn>[] {
  return shape.spurs
    .flatMap((spur) => oldSpur(shop, shape, spur))
    .map((spur) => ({
      id: `spur/${spur.endNode}`,
      columns: [...fusedDown(shop, spur), ...closed(shop, spur, sites)],
    }));
}

function oldSpur({ ground }: Workshop, shape: CircuitShape, spur: UnfusedSpur): readonly OldSpur[] {
  const [endNode, ...more] = spur.accessoryNodes;
  const [edgeId, ...others] = spur.edgeIds;
  const edge = ground.network.edges.find(({ id }) => id === edgeId);
  const endPoint = ground.nodeById.get(endNode ?? '')?.pointId;
  const isPlain = !spur.isNew && more.length === 0 && others.length === 0 && spur.jointNodes.length === 0;
  if (!isPlain || endNode === undefined || !endPoint || edge?.legId !== edge?.id || !edge?.legId) return [];
  if (ground.house.plan.pointById.get(endPoint)?.kind === 'fused-unit') return [];
  return [{ shape, legId: edge.legId, rootNode: spur.rootNode, endNode, endPoint }];
}

/** A fused unit beside the spur's source, and the spur carried on from its end or from the unit. */
function fusedDown(
  shop: Workshop,
  { shape, legId, rootNode, endNode, endPoint }: OldSpur,
): readonly SchemeColumn[] {
  const { ground, link, sample } = shop;
  const [source, end] = [endOfNode(ground, rootNode), endOfNode(ground, endNode)];
  const site = unitSite(shop, source, shape.circuitId);
  if (site === null || source === null || end === null || sample === null || sample.isUnit) return [];
  const part = (feeds: { from: string; to: string }[]): Part => ({
    kind: 'fuse-down',
    leg: legId,
    unit: { fuseA: BROUGHT_FUSE_A, place: site.place },
    feeds,
  });
  const toUnit = link(source, site.end);
  if (!Number.isFinite(toUnit.millipence)) return [];
  const column = (root: string, mask: number, trees: readonly StartedTree[]): SchemeColumn => ({
    mask,
    cost: Math.max(
      0,
      trees.reduce((sum, { cost }) => sum + cost, weight),
    ),
    key: `spur/${endNode}/fused/${root}/${mask}`,
    kind: 'mend',
    circuitIds: [shape.circuitId],
    works: () => worksTogether([none, toUnit, ...trees.map(({ works }) => works())]),
    cables: () => [
      { from: source, to: site.end, mustCarryA: neededBeforeFuse(shop, shape.circuitId) },
      ...trees.flatMap(({ tree, start }) =>
        treeCables(shop, tree, { root: start === 'unit' ? site.end : end, mustCarryA: BROUGHT_FUSE_A }),
      ),
    ],
    mostShared: mostSharedWeight(
      trees.reduce((sum, { tree }) => sum + tree.cost, shop.weigh(toUnit)),
      1 + sizeOf(mask),
    ),
    parts: () => [part(trees.flatMap(({ tree, start }) => feedsOf(shop, tree, start)))],
  });
  const ends = (name: string, feeds: { from: string; to: string }[]): Works =>
    endsWorks(shop, `spur/${endNode}/fused/${name}`, [part(feeds)]);
  const none = ends('none', []);
  const weight = shop.weigh(worksTogether([none, toUnit]));
  const startedAt = (root: 'unit' | 'end', from: WayEnd, most: number): readonly (StartedTree | null)[] => {
    const start = root === 'unit' ? 'unit' : endPoint;
    const one = ends(root, [{ from: start, to: sample.point.id }]);
    const both = pairFeeds(shop, start);
    const further = both === null ? noWorks : worksLess(ends(`${root} 2`, both), one);
    const starting = worksLess(one, none);
    return treesOfRoot(shop, from, { most, further }).map(
      (tree) =>
        tree && {
          ...{ tree, start },
          works: () => worksTogether([starting, treeWorks(shop, tree, { root: from, further })]),
          cost: shop.weigh(starting) + tree.cost,
        },
    );
  };
  // The old cable is in the terminals of both.
  const atUnit = startedAt('unit', site.end, CABLES_AT_UNIT - 1);
  const atEnd = startedAt('end', end, CABLES_AT_POINT - 1);
  const { masks } = shop.sets;
  return Array.from(masks).flatMap((mask, set): readonly SchemeColumn[] => {
    const [unit, own] = [atUnit[set] ?? null, atEnd[set] ?? null];
    const both = cheapestSplit(shop, mask, [atUnit, atEnd]);
    return [
      ...(own === null ? [] : [column('end', mask, [own])]),
      ...(unit === null ? [] : [column('unit', mask, [unit])]),
      ...(both === null ? [] : [column('both', mask, both)]),
    ];
  });
}

/** A tree with what it starts from, and what starting it there takes. */
interface StartedTree {
  readonly tree: Tree;
  readonly start: string;
  readonly works: () => Works;
  readonly cost: number;
}

/** The cheapest way to hang some of a set on one start and the rest on the other; null where there is none. */
function cheapestSplit(
  { sets }: Workshop,
  mask: number,
  [one, other]: readonly [readonly (StartedTree | null)[], readonly (StartedTree | null)[]],
): readonly [StartedTree, StartedTree] | null {
  let best: readonly [StartedTree, StartedTree] | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (let part = (mask - 1) & mask; part > 0; part = (part - 1) & mask) {
    const [a, b] = [one[sets.at(part)] ?? null, other[sets.at(mask ^ part)] ?? null];
    if (a === null || b === null || a.cost + b.cost >= least) continue;
    [best, least] = [[a, b], a.cost + b.cost];
  }
  return best;
}

/** The spur's end wired into the ring by either neighbour of its source; both its end and its source may then take a spur. */
function closed(shop: Workshop, spur: OldSpur, sites: SitesBeside): readonly SchemeColumn[] {
  const { shape, rootNode } = spur;
  const legs = wholeLegs(shape).filter((legId) => {
    const edge = shape.ringEdges.find(({ id }) => id === legId);
    return edge?.from === rootNode || edge?.to === rootNode;
  });
  return legs.flatMap((legId) => closedBy(shop, { spur, legId, sites }));
}

interface Closing {
  readonly spur: OldSpur;
  readonly legId: string;
  readonly sites: SitesBeside;
}

function closedBy(shop: Workshop, { spur, legId, sites }: Closing): readonly SchemeColumn[] {
  const { ground, link, sample } = shop;
  const { shape, rootNode, endNode, endPoint } = spur;
  const edge = shape.ringEdges.find(({ id }) => id === legId);
  const neighbour = edge?.from === rootNode ? edge.to : (edge?.from ?? '');
  const [end, source] = [endOfNode(ground, endNode), endOfNode(ground, rootNode)];
  const own = link(end, endOfNode(ground, neighbour));
  if (end === null || source === null || sample === null || !Number.isFinite(own.millipence)) return [];
  const close: Part = { kind: 'close-spur', point: endPoint, leg: legId, back: { how: 'terminals' } };
  const at = (pointId: string, key: string, wayEnd: Attachment['end']): readonly SchemeColumn[] => {
    const tap = { point: pointId };
    const ends = worksTogether([endsWorks(shop, key, [close, joinedAlone(tap, sample)]), own]);
    const attached = { key, tap, end: wayEnd, circuitId: shape.circuitId, ends };
    return attachColumns(shop, attached, sites).map((column) =>
      eachInTurn(column, (each) => ({ ...each, kind: 'mend', parts: () => [close, ...each.parts()] })),
    );
  };
  const rootPoint = ground.nodeById.get(rootNode)?.pointId;
  const atEnd = at(endPoint, `spur/${endNode}/closed/${legId}/end`, end);
  return rootPoint ? [...atEnd, ...at(rootPoint, `spur/${endNode}/closed/${legId}/source`, source)] : atEnd;
}
