import type { Tap } from '#model/scheme.ts';
import { fuseNeedsA } from '../../proof/must-carry.ts';
import type { WayEnd } from '../../ways/way-cost.ts';
import { CABLES_AT_UNIT } from './branch-trees.ts';
import { keptCost, kindOfPoint } from './kept-costs.ts';
import { sizeOf } from './point-prices.ts';
import type { SchemeColumn } from './scheme-column.ts';
import { endsByCause, type Part, type WantedPoint } from './search-ground.ts';
import { mostSharedWeight } from './shared-works.ts';
import { inTurn } from './spots-in-turn.ts';
import { noWorks, type Works, worksLess, worksTogether } from './works.ts';
import {
  feedsOf,
  joinedAlone,
  neededBeforeFuse,
  treeCables,
  treesOfRoot,
  treeWorks,
  type UnitSite,
  unitSite,
  type Workshop,
} from './workshop.ts';

/** The fuse of a unit that is brought along: the largest of BS 1362. */
export const BROUGHT_FUSE_A = 13;

/** A place where one cable may be joined on. */
export interface Attachment {
  /** Unique among all attachments. */
  readonly key: string;
  readonly tap: Tap;
  readonly end: WayEnd;
  readonly circuitId: string;
  /** What joining one cable on there takes. */
  readonly ends: Works;
}

/** Sites for fused units beside wanted points, shared by all attachments of one circuit. */
export type SitesBeside = ReadonlyMap<WantedPoint, UnitSite>;

/** The sites beside every wanted point that may be behind a fuse. */
export function sitesBeside(shop: Workshop, circuitId: string): SitesBeside {
  return new Map(
    shop.ground.wanted.flatMap((wanted) => {
      const site = wanted.isUnit ? null : unitSite(shop, wanted.end, circuitId);
      return site === null ? [] : [[wanted, site] as const];
    }),
  );
}

/**
 * Everything that one cable from an attachment can be for: a spur, a wanted unit with what it feeds, a branch behind a unit brought
 * along, where that stands best, with the other places for it in turn.
 */
export function attachColumns(shop: Workshop, at: Attachment, sites: SitesBeside): readonly SchemeColumn[] {
  return [...withoutBranches(shop, at), ...branchColumns(shop, at, sites)];
}

/** The same with a column for every place that a unit may be brought to, none in turn after another. */
export function attachColumnsBySite(
  shop: Workshop,
  at: Attachment,
  sites: SitesBeside,
): readonly SchemeColumn[] {
  const near = sitesAround(shop, at, sites);
  const masks = Array.from(shop.sets.masks);
  const branches = masks.flatMap((mask, set) =>
    near.inOrder(mask, set).map((one) => branchAt(shop, at, one)),
  );
  return [...withoutBranches(shop, at), ...branches];
}

const withoutBranches = (shop: Workshop, at: Attachment): readonly SchemeColumn[] => [
  ...shop.ground.wanted.flatMap((wanted, i) => aloneColumn(shop, at, { wanted, i })),
  ...shop.ground.wanted.flatMap((wanted, i) =>
    wanted.isUnit && wanted.mayFeed ? unitColumns(shop, at, { wanted, i }) : [],
  ),
];

/** A wanted point with its bit. */
export interface Indexed {
  readonly wanted: WantedPoint;
  readonly i: number;
}

function aloneColumn(shop: Workshop, at: Attachment, { wanted, i }: Indexed): readonly SchemeColumn[] {
  const works = worksTogether([at.ends, shop.link(at.end, wanted.end)]);
  if (!Number.isFinite(works.millipence)) return [];
  const part = joinedAlone(at.tap, wanted);
  return [
    {
      mask: 1 << i,
      cost: Math.max(0, shop.weigh(works)),
      key: `${at.key}/to/${wanted.point.id}`,
      kind: wanted.isUnit ? 'unit' : 'spurs',
      circuitIds: [at.circuitId],
      works: () => works,
      parts: () => [part],
    },
  ];
}

/** What a wanted unit takes more, or less, where cables go on from it: no flex to an appliance then, perhaps another fuse. */
function changeByFeeding(shop: Workshop, wanted: WantedPoint, fed: readonly WantedPoint[]): Works {
  const { ground, sampleKind } = shop;
  const name = `feeding ${fed.length} ${kindOfPoint(ground, wanted)} ${sampleKind}`;
  return keptCost(ground.kept, name, () => workChangeByFeeding(shop, wanted, fed));
}

function workChangeByFeeding(
  { ground, baseOf }: Workshop,
  { point }: WantedPoint,
  fed: readonly WantedPoint[],
): Works {
  const board = ground.house.job.boards[0]?.id ?? '';
  const device = { standard: 'BS-EN-60898', curve: 'B', ratingA: 20 } as const;
  const feeds = [
    { from: 'origin', to: point.id },
    ...fed.map((each) => ({ from: point.id, to: each.point.id })),
  ];
  const feeding = endsByCause(ground, [{ kind: 'radial', board, device, feeds }]).get(point.id) ?? noWorks;
  return worksLess(feeding, baseOf.get(point.id) ?? noWorks);
}

/** A wanted unit that may feed others, with every set of them. */
export function unitColumns(shop: Workshop, at: Attachment, { wanted, i }: Indexed): readonly SchemeColumn[] {
  const { sample, pair } = shop;
  const change = sample === null || sample.isUnit ? noWorks : changeByFeeding(shop, wanted, [sample]);
  const further = pair === null ? noWorks : worksLess(changeByFeeding(shop, wanted, pair), change);
  const toUnit = shop.link(at.end, wanted.end);
  const upTo = worksTogether([at.ends, toUnit, change]);
  const weight = shop.weigh(upTo);
  const linkWeight = shop.weigh(toUnit);
  return treesOfRoot(shop, wanted.end, { most: CABLES_AT_UNIT, further }).flatMap(
    (tree, set): readonly SchemeColumn[] => {
      const mask = shop.sets.masks[set] as number;
      const cost = weight + (tree?.cost ?? 0);
      if (tree === null || !Number.isFinite(cost)) return [];
      return [
        {
          mask: mask | (1 << i),
          cost: Math.max(0, cost),
          key: `${at.key}/unit/${wanted.point.id}/${mask}`,
          kind: 'fused-branch',
          circuitIds: [at.circuitId],
          works: () => worksTogether([upTo, treeWorks(shop, tree, { root: wanted.end, further })]),
          cables: () => [
            { from: at.end, to: wanted.end, mustCarryA: neededBeforeFuse(shop, at.circuitId) },
            ...treeCables(shop, tree, { root: wanted.end, mustCarryA: fuseNeedsA(wanted.point.unit?.fuseA) }),
          ],
          mostShared: mostSharedWeight(linkWeight + tree.cost, 1 + sizeOf(mask)),
          parts: () => [
            { kind: 'fused-spur', from: at.tap, unit: wanted.point.id, feeds: feedsOf(shop, tree, 'unit') },
          ],
        },
      ];
    },
  );
}

/**
 * A branch behind a unit brought along, for every set: the unit stands where the whole weighs least, beside the tap or a point of
 * the set; the other places come in turn where a rule bars that.
 */
function branchColumns(shop: Workshop, at: Attachment, sites: SitesBeside): readonly SchemeColumn[] {
  const near = sitesAround(shop, at, sites);
  return Array.from(shop.sets.masks).flatMap((mask, set) => {
    const first = near.least(mask, set);
    if (first === null) return [];
    const others = () => near.inOrder(mask, set).slice(1);
    return [inTurn(branchAt(shop, at, first), () => others().map((other) => branchAt(shop, at, other)))];
  });
}

/** A branch to a set, with its unit at one of the places for it. */
interface Branch {
  readonly mask: number;
  readonly reached: Reached;
  readonly cost: number;
  /** How many places for it come before this one. */
  readonly rank: number;
}

/** The places for a unit of one attachment. */
interface SitesAround {
  /** Where the branch weighs least, of two alike the first; null where there is none. */
  least(mask: number, set: number): Branch | null;
  /** Every place for it, the least weight first. */
  inOrder(mask: number, set: number): readonly Branch[];
}

function sitesAround(shop: Workshop, at: Attachment, sites: SitesBeside): SitesAround {
  // A unit stands beside what is in sight: where a joint lies, in a void or low in a wall, none is fitted.
  const own = at.end.kind === 'joint' ? null : reached(shop, at, unitSite(shop, at.end, at.circuitId));
  const near = shop.ground.wanted.map((each) => reached(shop, at, sites.get(each) ?? null));
  const least = (mask: number, set: number): Branch | null => {
    let [best, cost] = [own, wholeAt(own, set)];
    for (let rest = mask; rest > 0; rest &= rest - 1) {
      const other = near[31 - Math.clz32(rest & -rest)] ?? null;
      const whole = wholeAt(other, set);
      if (whole < cost) [best, cost] = [other, whole];
    }
    return best === null || !Number.isFinite(cost) ? null : { mask, reached: best, cost, rank: 0 };
  };
  const inOrder = (mask: number, set: number): readonly Branch[] =>
    [own, ...near]
      .flatMap((one, place) => {
        const cost = wholeAt(one, set);
        const isOf = place === 0 || (mask & (1 << (place - 1))) !== 0;
        return one === null || !isOf || !Number.isFinite(cost) ? [] : [{ one, cost, place }];
      })
      .toSorted((a, b) => a.cost - b.cost || a.place - b.place)
      .map(({ one, cost }, rank) => ({ mask, reached: one, cost, rank }));
  return { least, inOrder };
}

/** A site with what a branch takes from the attachment up to its unit. */
interface Reached {
  readonly site: UnitSite;
  readonly works: Works;
  readonly weight: number;
  /** What the cable to the unit weighs. */
  readonly linkWeight: number;
}

function reached(shop: Workshop, at: Attachment, site: UnitSite | null): Reached | null {
  if (site === null) return null;
  const link = shop.link(at.end, site.end);
  const works = worksTogether([at.ends, site.works, link]);
  return { site, works, weight: shop.weigh(works), linkWeight: shop.weigh(link) };
}

const wholeAt = (at: Reached | null, set: number): number =>
  at === null ? Number.POSITIVE_INFINITY : at.weight + (at.site.trees[set]?.cost ?? Number.POSITIVE_INFINITY);

function branchPart(shop: Workshop, { tap }: Attachment, { place, trees }: UnitSite, mask: number): Part {
  const tree = trees[shop.sets.at(mask)];
  const feeds = tree ? feedsOf(shop, tree, 'unit') : [];
  return { kind: 'fused-spur', from: tap, unit: { fuseA: BROUGHT_FUSE_A, place }, feeds };
}

function branchAt(
  shop: Workshop,
  at: Attachment,
  { mask, reached: { site, works, linkWeight }, cost, rank }: Branch,
): SchemeColumn {
  const tree = site.trees[shop.sets.at(mask)];
  return {
    mask,
    cost: Math.max(0, cost),
    key: `${at.key}/branch/${mask}${rank === 0 ? '' : ` ${rank}`}`,
    kind: 'fused-branch',
    circuitIds: [at.circuitId],
    works: () =>
      worksTogether([
        works,
        ...(tree ? [treeWorks(shop, tree, { root: site.end, further: site.further })] : []),
      ]),
    cables: () => [
      { from: at.end, to: site.end, mustCarryA: neededBeforeFuse(shop, at.circuitId) },
      ...(tree ? treeCables(shop, tree, { root: site.end, mustCarryA: BROUGHT_FUSE_A }) : []),
    ],
    mostShared: mostSharedWeight(linkWeight + (tree?.cost ?? 0), 1 + sizeOf(mask)),
    parts: () => [branchPart(shop, at, site, mask)],
  };
}
