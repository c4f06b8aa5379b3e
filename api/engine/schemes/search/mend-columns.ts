import type { CircuitShape, UnfusedSpur } from '../../circuit/shape.ts';
import type { Attachment, SitesBeside } from './attach-columns.ts';
import { attachColumns } from './attach-columns.ts';
import { wholeLegs } from './attachments.ts';
import type { Tree } from './cheapest-trees.ts';
import type { SchemeColumn } from './scheme-column.ts';
import { endOfNode, type Part } from './search-ground.ts';
import type { Layer } from './search-space.ts';
import { worksTogether } from './works.ts';
import {
  endsWorks,
  feedsOf,
  joinedAlone,
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
    unit: { fuseA: 13, place: site.place },
    feeds,
  });
  const toUnit = link(source, site.end);
  const from = (root: 'unit' | 'end', trees: readonly (Tree | null)[]): readonly SchemeColumn[] => {
    const start = root === 'unit' ? 'unit' : endPoint;
    const ends = endsWorks(shop, `spur/${endNode}/fused/${root}`, [
      part([{ from: start, to: sample.point.id }]),
    ]);
    const upTo = worksTogether([ends, toUnit]);
    return trees.flatMap((tree, set): readonly SchemeColumn[] => {
      const mask = shop.sets.masks[set] as number;
      if (tree === null || !Number.isFinite(toUnit.millipence)) return [];
      return [
        {
          mask,
          cost: Math.max(0, shop.weigh(upTo) + tree.cost),
          key: `spur/${endNode}/fused/${root}/${mask}`,
          kind: 'mend',
          circuitIds: [shape.circuitId],
          works: () =>
            worksTogether([upTo, treeWorks(shop, tree, { root: root === 'unit' ? site.end : end })]),
          parts: () => [part(feedsOf(shop, tree, start))],
        },
      ];
    });
  };
  return [...from('end', treesOfRoot(shop, end, 2)), ...from('unit', treesOfRoot(shop, site.end, 1))];
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
    return attachColumns(shop, attached, sites).map((column) => ({
      ...column,
      kind: 'mend',
      parts: () => [close, ...column.parts()],
    }));
  };
  const rootPoint = ground.nodeById.get(rootNode)?.pointId;
  const atEnd = at(endPoint, `spur/${endNode}/closed/${legId}/end`, end);
  return rootPoint ? [...atEnd, ...at(rootPoint, `spur/${endNode}/closed/${legId}/source`, source)] : atEnd;
}
