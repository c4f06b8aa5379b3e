import type { Cable } from '#model/cable.ts';
import type { Board, Device } from '#model/installation.ts';
import type { CircuitShape } from '../../circuit/shape.ts';
import { USUAL_CABLE } from '../../circuit/usual-cable.ts';
import type { WayEnd } from '../../ways/way-cost.ts';
import { foundPlaces } from './attachments.ts';
import { cheapestTrees, type Tree, treesAmong } from './cheapest-trees.ts';
import type { SchemeColumn } from './scheme-column.ts';
import { endOfBoard, endOfNode, type Part } from './search-ground.ts';
import type { Layer } from './search-space.ts';
import { worksTogether } from './works.ts';
import { endsWorks, feedsOf, joinedAlone, treesOfRoot, treeWorks, type Workshop } from './workshop.ts';

/** A radial that is offered: its device and the cable that this wants. */
interface Variant {
  readonly key: string;
  readonly device: Device;
  readonly cable: Cable;
}

const rcboOf = (ratingA: number): Device => ({
  standard: 'BS-EN-61009',
  curve: 'B',
  ratingA,
  breakingKA: 6,
  rcd: { type: 'A', mA: 30 },
});

/** The two radials for sockets that guidance knows. Source: IET On-Site Guide, circuits A2 and A3. */
const variants: readonly Variant[] = [
  { key: '20', device: rcboOf(20), cable: USUAL_CABLE },
  { key: '32', device: rcboOf(32), cable: { type: 'flat-twin', lineMm2: 4, cpcMm2: 1.5 } },
];

/** A new radial from a board with a spare way, through every set of points, by both devices. */
export function radialLayer(shop: Workshop, board: Board): Layer<SchemeColumn> {
  return {
    id: `radial/${board.id}`,
    columns: variants.flatMap((variant) => radialColumns(shop, board, variant)),
  };
}

function radialColumns(
  shop: Workshop,
  board: Board,
  { key, device, cable }: Variant,
): readonly SchemeColumn[] {
  const { ground, link, sample, sets, weigh } = shop;
  const further = weigh(shop.further);
  const end = endOfBoard(ground, board.id);
  if (end === null || sample === null || sample.isUnit) return [];
  const costTo = (from: WayEnd, i: number): number => {
    const to = ground.wanted[i];
    return to === undefined || to.isUnit ? Number.POSITIVE_INFINITY : weigh(link(from, to.end, cable));
  };
  const { wanted } = ground;
  const trees = treesAmong(
    wanted.map((from, i) =>
      wanted.map((_, j) =>
        i === j || from.isUnit ? Number.POSITIVE_INFINITY : costTo(from.end, j) + further,
      ),
    ),
    sets,
  );
  const part = (feeds: { from: string; to: string }[]): Part => ({
    kind: 'radial',
    board: board.id,
    device,
    ...(cable === USUAL_CABLE ? {} : { cable }),
    feeds,
  });
  const ends = endsWorks(shop, `radial/${board.id}/${key}`, [
    part([{ from: 'origin', to: sample.point.id }]),
  ]);
  const found = cheapestTrees(
    trees,
    wanted.map((_, j) => costTo(end, j)),
    1,
  );
  return found.flatMap((tree, set): readonly SchemeColumn[] => {
    const mask = sets.masks[set] as number;
    return tree === null
      ? []
      : [
          {
            mask,
            cost: Math.max(0, weigh(ends) + tree.cost),
            key: `radial/${board.id}/${key}/${mask}`,
            kind: 'new-radial',
            circuitIds: [],
            works: () => worksTogether([ends, treeWorks(shop, tree, { root: end, cable })]),
            parts: () => [part(feedsOf(shop, tree, 'origin'))],
          },
        ];
  });
}

/** Terminals of an accessory take this many cables. Source: BS 1363-2. */
const CABLES_AT_POINT = 3;

/** What may branch off every point of a radial that is there: trees of cable, as many at once as its terminals take. */
export function branchLayers(shop: Workshop, shape: CircuitShape): readonly Layer<SchemeColumn>[] {
  const { ground } = shop;
  return foundPlaces(ground, shape)
    .filter(({ role }) => role === 'radial')
    .flatMap(({ nodeId }) => {
      const legs = ground.network.edges.filter(
        ({ kind, from, to }) => kind === 'cable' && (from === nodeId || to === nodeId),
      ).length;
      const seen = ground.house.plan.pointById.get(nodeId)?.asFound?.cablesSeen ?? 0;
      const free = CABLES_AT_POINT - Math.max(legs, seen);
      const end = endOfNode(ground, nodeId);
      if (free < 1 || end === null) return [];
      const columns = radialPointColumns(shop, { shape, nodeId, end, most: free > 1 ? 2 : 1 });
      return [{ id: `branch/${nodeId}`, columns }];
    });
}

interface RadialPoint {
  readonly shape: CircuitShape;
  readonly nodeId: string;
  readonly end: WayEnd;
  readonly most: 1 | 2;
}

function radialPointColumns(shop: Workshop, at: RadialPoint): readonly SchemeColumn[] {
  const { ground, link, sample, weigh } = shop;
  const { nodeId, end, shape, most } = at;
  if (sample === null) return [];
  const point = ground.nodeById.get(nodeId)?.pointId ?? nodeId;
  const ends = endsWorks(shop, `branch/${nodeId}`, [joinedAlone({ point }, sample)]);
  const head = { kind: 'spurs', circuitIds: [shape.circuitId] } as const;
  const units = ground.wanted.flatMap((wanted, i): readonly SchemeColumn[] => {
    const works = worksTogether([ends, link(end, wanted.end)]);
    if (!wanted.isUnit || !Number.isFinite(works.millipence)) return [];
    return [
      {
        ...head,
        mask: 1 << i,
        cost: Math.max(0, weigh(works)),
        key: `branch/${nodeId}/to/${wanted.point.id}`,
        kind: 'unit',
        works: () => works,
        parts: () => [joinedAlone({ point }, wanted)],
      },
    ];
  });
  const trees = treesOfRoot(shop, end, most).flatMap((tree, set): readonly SchemeColumn[] => {
    const mask = shop.sets.masks[set] as number;
    return tree === null
      ? []
      : [
          {
            ...head,
            mask,
            cost: Math.max(0, weigh(ends) + tree.cost),
            key: `branch/${nodeId}/${mask}`,
            works: () => worksTogether([ends, treeWorks(shop, tree, { root: end })]),
            parts: () => spursOf(shop, tree, point),
          },
        ];
  });
  return [...units, ...trees];
}

function spursOf(shop: Workshop, tree: Tree, root: string): readonly Part[] {
  return feedsOf(shop, tree, root).map(({ from, to }) => ({ kind: 'spur', from: { point: from }, to }));
}
