import type { Cable } from '#model/cable.ts';
import type { Board, Device } from '#model/installation.ts';
import type { Tap } from '#model/scheme.ts';
import type { CircuitShape } from '../../circuit/shape.ts';
import { USUAL_CABLE } from '../../circuit/usual-cable.ts';
import { deviceNeedsA } from '../../proof/must-carry.ts';
import type { WayEnd } from '../../ways/way-cost.ts';
import { unitColumns } from './attach-columns.ts';
import { CABLES_AT_POINT, foundPlaces, jointSpots, mayCut } from './attachments.ts';
import { CABLES_AT_ORIGIN } from './branch-trees.ts';
import { cheapestTrees, type Tree, treesAmong } from './cheapest-trees.ts';
import { sizeOf } from './point-prices.ts';
import type { SchemeColumn } from './scheme-column.ts';
import { endOfBoard, endOfNode, type Part, type SearchGround } from './search-ground.ts';
import type { Layer } from './search-space.ts';
import { mostSharedWeight } from './shared-works.ts';
import { spotsInTurn } from './spots-in-turn.ts';
import { noWorks, type Works, worksLess, worksTogether } from './works.ts';
import {
  endsWorks,
  feedsOf,
  joinedAlone,
  pairFeeds,
  treeCables,
  treesOfRoot,
  treeWorks,
  type Workshop,
} from './workshop.ts';

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
  const name = `radial/${board.id}/${key}`;
  const ends = endsWorks(shop, name, [part([{ from: 'origin', to: sample.point.id }])]);
  const both = pairFeeds(shop, 'origin');
  const leaving = both === null ? noWorks : worksLess(endsWorks(shop, `${name} 2`, [part(both)]), ends);
  const weight = weigh(ends) - weigh(leaving);
  const found = cheapestTrees(
    trees,
    wanted.map((_, j) => costTo(end, j) + weigh(leaving)),
    CABLES_AT_ORIGIN,
  );
  return found.flatMap((tree, set): readonly SchemeColumn[] => {
    const mask = sets.masks[set] as number;
    return tree === null
      ? []
      : [
          {
            mask,
            cost: Math.max(0, weight + tree.cost),
            key: `radial/${board.id}/${key}/${mask}`,
            kind: 'new-radial',
            circuitIds: [],
            works: () => worksTogether([ends, treeWorks(shop, tree, { root: end, cable, further: leaving })]),
            cables: () => treeCables(shop, tree, { root: end, cable, mustCarryA: deviceNeedsA(device) }),
            mostShared: mostSharedWeight(tree.cost, sizeOf(mask)),
            parts: () => [part(feedsOf(shop, tree, 'origin'))],
          },
        ];
  });
}

/** A place on a radial that is there, and how many further cables may leave it. */
interface RadialPlace {
  readonly key: string;
  readonly shape: CircuitShape;
  readonly tap: Tap;
  readonly end: WayEnd | null;
  readonly most: number;
}

/** What may branch off every point of a radial that is there, and off its origin: trees of cable, as many at once as the terminals take. */
export function branchLayers(shop: Workshop, shape: CircuitShape): readonly Layer<SchemeColumn>[] {
  const { ground } = shop;
  const { circuitId } = shape;
  const cablesAt = (nodeId: string): number =>
    ground.network.edges.filter(
      ({ kind, from, to }) => kind === 'cable' && (from === nodeId || to === nodeId),
    ).length;
  const points = foundPlaces(ground, shape).filter(({ role }) => role === 'radial');
  const places: readonly RadialPlace[] = [
    ...points.map(({ nodeId }) => {
      const seen = ground.house.plan.pointById.get(nodeId)?.asFound?.cablesSeen ?? 0;
      return {
        key: `branch/${nodeId}`,
        tap: { point: ground.nodeById.get(nodeId)?.pointId ?? nodeId },
        most: CABLES_AT_POINT - Math.max(cablesAt(nodeId), seen),
        ...{ shape, end: endOfNode(ground, nodeId) },
      };
    }),
    {
      key: `branch/origin/${circuitId}`,
      tap: { origin: circuitId },
      // Where no leg is told, one is there all the same.
      most: CABLES_AT_ORIGIN - Math.max(cablesAt(circuitId), 1),
      ...{ shape, end: endOfNode(ground, circuitId) },
    },
  ];
  return places
    .filter(({ most }) => most > 0)
    .map((place) => ({ id: place.key, columns: branchColumns(shop, place) }));
}

/** The legs of a radial that are whole, but for those behind a fused unit. */
export function radialLegs(
  { house, network }: SearchGround,
  { circuitId, places }: CircuitShape,
): readonly string[] {
  const own = new Set(house.job.legs.flatMap(({ id, circuit }) => (circuit === circuitId ? [id] : [])));
  const behind = new Set(places.flatMap(({ nodeId, role }) => (role === 'behind-fuse' ? [nodeId] : [])));
  return network.edges.flatMap(({ id, legId, state, from, to }) =>
    legId === id && state === 'found' && own.has(id) && !behind.has(from) && !behind.has(to) ? [id] : [],
  );
}

/** What may branch off joints in the legs of a radial: of those in one leg, for each set of points the cheapest, and the others in turn where a rule bars that. */
export function branchJoints(shop: Workshop, shape: CircuitShape): readonly SchemeColumn[] {
  const { ground } = shop;
  const legs = radialLegs(ground, shape).filter((legId) => mayCut(ground, legId));
  return legs.flatMap((legId) => {
    const atSpots = function* (): Generator<SchemeColumn> {
      for (const { alongMm, end } of jointSpots(ground, legId)) {
        const key = `branch/joint/${legId}/${alongMm}`;
        yield* branchColumns(shop, { key, tap: { leg: legId, alongMm }, most: 1, shape, end });
      }
    };
    return spotsInTurn(atSpots(), atSpots);
  });
}

/** What joining one cable on takes, and each further one: alike for all joints of one leg. */
function endsAt(
  shop: Workshop,
  { key, tap, most }: RadialPlace,
): { readonly one: Works; readonly further: Works } {
  const { sample } = shop;
  const [a, b] = shop.ground.wanted;
  const name = 'leg' in tap ? `branch/joint/${tap.leg}` : key;
  if (sample === null) return { one: noWorks, further: noWorks };
  const one = endsWorks(shop, name, [joinedAlone(tap, sample)]);
  if (a === undefined || b === undefined || most < 2) return { one, further: noWorks };
  const both = [joinedAlone(tap, a), joinedAlone(tap, b)];
  return { one, further: worksLess(endsWorks(shop, `${name} 2`, both), one) };
}

function branchColumns(shop: Workshop, place: RadialPlace): readonly SchemeColumn[] {
  const { ground, weigh } = shop;
  const { key, end, shape, most, tap } = place;
  if (shop.sample === null || end === null) return [];
  const { one, further } = endsAt(shop, place);
  const at = { key, tap, end, circuitId: shape.circuitId, ends: one };
  const feeding = ground.wanted.flatMap((wanted, i) =>
    wanted.isUnit && wanted.mayFeed ? unitColumns(shop, at, { wanted, i }) : [],
  );
  const isUnit = (mask: number): boolean => ground.wanted.some((each, i) => each.isUnit && mask === 1 << i);
  const trees = treesOfRoot(shop, end, { most, further, units: true });
  const branching = trees.flatMap((tree, set): readonly SchemeColumn[] => {
    const mask = shop.sets.masks[set] as number;
    return tree === null
      ? []
      : [
          {
            mask,
            cost: Math.max(0, weigh(one) + tree.cost),
            key: `${key}/${mask}`,
            kind: isUnit(mask) ? 'unit' : 'spurs',
            circuitIds: [shape.circuitId],
            works: () => worksTogether([one, treeWorks(shop, tree, { root: end, further })]),
            parts: () => joinedBy(shop, tree, tap),
          },
        ];
  });
  return [...branching, ...feeding];
}

const ROOT = '';

/** The cables of a tree as spurs, and as fused spurs those that lead to a unit. */
function joinedBy(shop: Workshop, tree: Tree, tap: Tap): readonly Part[] {
  const wantedById = new Map(shop.ground.wanted.map((each) => [each.point.id, each]));
  return feedsOf(shop, tree, ROOT).flatMap(({ from, to }) => {
    const wanted = wantedById.get(to);
    return wanted === undefined ? [] : [joinedAlone(from === ROOT ? tap : { point: from }, wanted)];
  });
}
