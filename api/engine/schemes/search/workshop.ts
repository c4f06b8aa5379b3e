import type { Cable } from '#model/cable.ts';
import type { Place } from '#model/installation.ts';
import type { Feed, Tap } from '#model/scheme.ts';
import { loadNodeOf } from '../../circuit/load-side.ts';
import type { Plan } from '../../plan/plan.ts';
import type { Position } from '../../plan/plane.ts';
import { positionOfPlace } from '../../plan/position-of-place.ts';
import { remembered } from '../../plan/remembered.ts';
import { circuitNeedsA } from '../../proof/must-carry.ts';
import type { WayEnd } from '../../ways/way-cost.ts';
import { type Aim, weightOf } from './aim.ts';
import { CABLES_AT_UNIT, type TreeTable } from './branch-trees.ts';
import { pathsAmong } from './cheapest-orders.ts';
import { cheapestTrees, type Tree, treesAmong } from './cheapest-trees.ts';
import { keptCost, keptEnd, kindOfPoint, kindOfSpot } from './kept-costs.ts';
import { furtherCable, type LinkCosts, linkCosts } from './link-costs.ts';
import type { PathTable } from './open-paths.ts';
import { allSets, type PointSets, setsUpTo } from './point-sets.ts';
import type { SchemeColumn } from './scheme-column.ts';
import { endsByCause, type Part, type SearchGround, type WantedPoint } from './search-ground.ts';
import type { CableBetween } from './shared-works.ts';
import { noWorks, type Works, worksLess, worksTimes, worksTogether } from './works.ts';

/** What columns are made with: links, trees and the cost of ends, each worked out once. */
export interface Workshop {
  readonly ground: SearchGround;
  readonly aim: Aim;
  /** What works weigh by the aim. */
  readonly weigh: (works: Works) => number;
  readonly link: LinkCosts;
  /** The sets of wanted points that one place to join may connect. */
  readonly sets: PointSets;
  /** A further cable at a new accessory. */
  readonly further: Works;
  /** Cables between wanted points that are no fused units, each with the work at the one that feeds the other. */
  readonly trees: TreeTable;
  /** Trees from a root, by what may leave it. */
  readonly rooted: Map<WayEnd | null, Map<string, readonly (Tree | null)[]>>;
  readonly paths: PathTable;
  /** What a wanted point takes with one cable, whatever feeds it: every scheme pays it alike. */
  readonly baseOf: ReadonlyMap<string, Works>;
  /** A wanted point to try ends with: one that is no fused unit, where there is one. */
  readonly sample: WantedPoint | null;
  /** What kind of point that is: ends are kept for it alone. */
  readonly sampleKind: string;
  /** Parts of columns with their cables pinned, as far as they were asked for. */
  readonly pinned: Map<SchemeColumn, readonly Part[]>;
  /** Columns that are settled: what their cables share is known. */
  readonly settled: Map<SchemeColumn, SchemeColumn>;
  /** Two such points, to try a second cable at one place with; null where only one is wanted. */
  readonly pair: readonly [WantedPoint, WantedPoint] | null;
}

const bareDevice = { standard: 'BS-EN-60898', curve: 'B', ratingA: 20 } as const;

/** Up to so many wanted points every set of them has its columns. */
const ALL_SETS_POINTS = 12;
/** Beyond, up to four points are joined at one place, or fewer where that were more sets than this: as many as of twelve points. */
const MOST_SETS = 2 ** ALL_SETS_POINTS;
const LARGEST_OF_MANY = 4;

/** The sets that columns are made for. */
export function setsFor(points: number): PointSets {
  if (points <= ALL_SETS_POINTS) return allSets(points);
  for (let largest = LARGEST_OF_MANY; ; largest -= 1) {
    const sets = setsUpTo(points, largest);
    if (sets.masks.length <= MOST_SETS || largest === 1) return sets;
  }
}

/** Gets everything ready to make columns with. */
export function workshop(ground: SearchGround, aim: Aim): Workshop {
  const link = linkCosts(ground, aim);
  const further = furtherCable(ground);
  const weigh = (works: Works): number => weightOf(aim, works);
  const between = (a: WantedPoint, b: WantedPoint): number =>
    a === b || a.isUnit || b.isUnit ? Number.POSITIVE_INFINITY : weigh(link(a.end, b.end)) + weigh(further);
  const { wanted } = ground;
  const costs = wanted.map((a) => wanted.map((b) => between(a, b)));
  const sets = setsFor(wanted.length);
  const [first, second] = wanted.filter(({ isUnit }) => !isUnit);
  const sample = first ?? wanted[0] ?? null;
  return {
    ground,
    aim,
    weigh,
    link,
    sets,
    further,
    trees: treesAmong(costs, sets),
    rooted: new Map(),
    paths: pathsAmong(costs, sets),
    baseOf: new Map(wanted.map((each) => [each.point.id, baseWorks(ground, each)])),
    sample,
    sampleKind: sample === null ? '' : kindOfPoint(ground, sample),
    pinned: new Map(),
    settled: new Map(),
    pair: first === undefined || second === undefined ? null : [first, second],
  };
}

function baseWorks(ground: SearchGround, wanted: WantedPoint): Works {
  const { id } = wanted.point;
  const board = ground.house.job.boards[0]?.id ?? '';
  const feeds = [{ from: 'origin', to: id }];
  const work = () =>
    endsByCause(ground, [{ kind: 'radial', board, device: bareDevice, feeds }]).get(id) ?? noWorks;
  return keptCost(ground.kept, `base ${kindOfPoint(ground, wanted)}`, work);
}

/**
 * What parts of a scheme take at their ends: all that they cause, but for what their wanted
 * points take anyway and what circuits that were there take for being touched. Worked out once for all joinings of one
 * name: what they are, and to what.
 */
export function endsWorks(shop: Workshop, name: string, parts: readonly Part[]): Works {
  const work = () => endsOfParts(shop, parts);
  return keptCost(shop.ground.kept, `ends ${name} ${shop.sampleKind}`, work);
}

/** The same, worked out anew. */
function endsOfParts({ ground, baseOf }: Workshop, parts: readonly Part[]): Works {
  const touched = new Set(ground.house.job.circuits.map(({ id }) => id));
  return worksTogether(
    [...endsByCause(ground, parts)].flatMap(([cause, works]) =>
      touched.has(cause) ? [] : [worksLess(works, baseOf.get(cause) ?? noWorks)],
    ),
  );
}

/** The connection that joins a wanted point on by itself: a spur, or of a fused unit a fused spur. */
export function joinedAlone(tap: Tap, { point, isUnit }: WantedPoint): Part {
  return isUnit
    ? { kind: 'fused-spur', from: tap, unit: point.id, feeds: [] }
    : { kind: 'spur', from: tap, to: point.id };
}

/** What leaves the root of a tree. */
export interface Leaving {
  /** How many cables at the most. */
  readonly most: number;
  /** What each after the first takes there. */
  readonly further: Works;
  /** Whether wanted fused units may be at the end of one; absent: no. */
  readonly units?: boolean;
}

/** The trees from a root over every set of wanted points, each cable after the root's first with its own work there. */
export function treesOfRoot(shop: Workshop, root: WayEnd | null, leaving: Leaving): readonly (Tree | null)[] {
  const { most, further, units } = leaving;
  const name = `${most} ${shop.weigh(further)} ${units ?? false}`;
  const rooted = shop.rooted.get(root) ?? new Map<string, readonly (Tree | null)[]>();
  shop.rooted.set(root, rooted);
  const known = rooted.get(name);
  if (known !== undefined) return known;
  const trees = treesFromRoot(shop, root, leaving);
  rooted.set(name, trees);
  return trees;
}

function treesFromRoot(
  { ground, link, trees, weigh }: Workshop,
  root: WayEnd | null,
  { most, further: each, units = false }: Leaving,
): readonly (Tree | null)[] {
  const further = weigh(each);
  const row = ground.wanted.map(({ end, isUnit }) =>
    isUnit && !units ? Number.POSITIVE_INFINITY : weigh(link(root, end)) + further,
  );
  // The first cable from the root is part of fitting or connecting it: with it counted once too often, two pay for one.
  return cheapestTrees(trees, row, most).map((tree) => tree && { ...tree, cost: tree.cost - further });
}

/** Feeds from one place to two wanted points; null where there are not so many. */
export function pairFeeds({ pair }: Workshop, from: string): Feed[] | null {
  return pair === null ? null : pair.map(({ point }) => ({ from, to: point.id }));
}

/** The feeds of a tree in the words of the job file. */
export function feedsOf({ ground }: Workshop, tree: Tree, root: string): Feed[] {
  const idOf = (i: number): string => (i < 0 ? root : (ground.wanted[i]?.point.id ?? ''));
  return tree.feeds().map(([from, to]) => ({ from: idOf(from), to: idOf(to) }));
}

/** Where a tree starts, with which cable, and what each cable there after the first takes. */
export interface TreeRoot {
  readonly root: WayEnd | null;
  readonly cable?: Cable;
  readonly further: Works;
}

/** The works of a tree: its cables, and every one after the first with its own work where it leaves from. */
export function treeWorks(
  { ground, link, further }: Workshop,
  tree: Tree,
  { root, cable, further: atRoot }: TreeRoot,
): Works {
  const endOf = (i: number) => (i < 0 ? root : (ground.wanted[i]?.end ?? null));
  const feeds = tree.feeds();
  const fromRoot = feeds.filter(([from]) => from < 0).length;
  return worksTogether([
    ...feeds.map(([from, to]) => link(endOf(from), endOf(to), cable)),
    worksTimes(atRoot, fromRoot - 1),
    worksTimes(further, feeds.length - fromRoot),
  ]);
}

/** The cables of a tree from an end, each of which must carry so much. */
export function treeCables(
  { ground }: Pick<Workshop, 'ground'>,
  tree: Tree,
  { root, ...carrying }: Omit<TreeRoot, 'further'> & Pick<CableBetween, 'mustCarryA'>,
): readonly CableBetween[] {
  const endOf = (i: number) => (i < 0 ? root : (ground.wanted[i]?.end ?? null));
  return tree.feeds().map(([from, to]) => ({ from: endOf(from), to: endOf(to), ...carrying }));
}

/** What a new cable of a circuit that is there must carry before the first fuse, A; null where nobody can say. */
export function neededBeforeFuse({ ground }: Pick<Workshop, 'ground'>, circuitId: string): number | null {
  const shape = ground.shapes.get(circuitId);
  return shape === undefined ? null : circuitNeedsA(ground.network, shape);
}

/** How far along the wall from what it stands beside a fused unit is put. Common practice, no source. */
const UNIT_ASIDE_MM = 300;
/** Accessories keep this far from a wall's end. */
const WALL_END_MM = 100;
/** Two plates of one gang and a finger between them. */
const PLATES_MM = 200;

type Spot = NonNullable<Position['onWall']>;

const faceOf = ({ wallId, side }: Spot): string => `${wallId} ${side}`;

/** The points of a house by the face that they are on. */
const standingOn = remembered(({ positionOfPoint }: Plan) => {
  const byFace = new Map<string, { readonly alongMm: number; readonly heightMm: number }[]>();
  for (const { onWall, heightMm } of positionOfPoint.values()) {
    if (onWall === undefined) continue;
    const own = byFace.get(faceOf(onWall)) ?? [];
    own.push({ alongMm: onWall.alongMm, heightMm });
    byFace.set(faceOf(onWall), own);
  }
  return byFace;
});

/** A place for a fused unit beside an accessory: on the same wall, clear of what is there if one side is; null off walls. */
export function placeBeside({ ground }: Workshop, { position }: WayEnd): Place | null {
  const { plan } = ground.house;
  const spot = position.onWall;
  const wall = plan.wallById.get(spot?.wallId ?? '');
  if (spot === undefined || wall === undefined) return null;
  const taken = (standingOn(plan).get(faceOf(spot)) ?? []).flatMap(({ alongMm, heightMm }) =>
    Math.abs(heightMm - position.heightMm) < PLATES_MM ? [alongMm] : [],
  );
  const places = [spot.alongMm + UNIT_ASIDE_MM, spot.alongMm - UNIT_ASIDE_MM].filter(
    (mm) => mm >= WALL_END_MM && mm <= wall.lengthMm - WALL_END_MM,
  );
  const free = places.find((mm) => taken.every((other) => Math.abs(other - mm) >= PLATES_MM));
  const alongMm = free ?? places[0];
  return alongMm === undefined
    ? null
    : { wall: spot.wallId, side: spot.side, alongMm: Math.round(alongMm), heightMm: position.heightMm };
}

/** A place that a fused unit may be brought to, what it takes there, and the trees from it. */
export interface UnitSite {
  readonly place: Place;
  readonly end: WayEnd;
  readonly works: Works;
  /** What each cable from it after the first takes there. */
  readonly further: Works;
  readonly trees: readonly (Tree | null)[];
}

/** A fused unit beside an accessory; null where it cannot be placed or nothing could be fed from it. */
export function unitSite(shop: Workshop, beside: WayEnd | null, circuitId: string): UnitSite | null {
  const { ground, sample } = shop;
  const place = beside === null ? null : placeBeside(shop, beside);
  const position = place === null ? null : positionOfPlace(ground.house.plan, place);
  if (place === null || position === null || sample === null || sample.isUnit) return null;
  const end = keptEnd(ground.kept, { position, mount: null, kind: 'accessory' });
  const unit = { fuseA: 13, place };
  const worksOf = (feeds: Feed[]): Works => {
    const byCause = endsByCause(ground, [{ kind: 'fused-spur', from: { origin: circuitId }, unit, feeds }]);
    return worksTogether(['way-1/unit', loadNodeOf('way-1/unit')].flatMap((id) => byCause.get(id) ?? []));
  };
  const name = `unit ${circuitId} ${kindOfSpot(ground.house.plan, position)} ${position.heightMm} ${shop.sampleKind}`;
  const works = keptCost(ground.kept, name, () => worksOf([{ from: 'unit', to: sample.point.id }]));
  const both = pairFeeds(shop, 'unit');
  const further =
    both === null
      ? noWorks
      : worksLess(
          keptCost(ground.kept, `${name} 2`, () => worksOf(both)),
          works,
        );
  const trees = treesOfRoot(shop, end, { most: CABLES_AT_UNIT, further });
  return { ...{ place, end, works, further }, trees };
}
