import type { Tap } from '#model/scheme.ts';
import type { WayEnd } from '../../ways/way-cost.ts';
import { keptCost, kindOfPoint } from './kept-costs.ts';
import type { SchemeColumn } from './scheme-column.ts';
import { endsByCause, type Part, type WantedPoint } from './search-ground.ts';
import {
  feedsOf,
  joinedAlone,
  messOf,
  treesOfRoot,
  type UnitSite,
  unitSite,
  type Workshop,
} from './workshop.ts';

/** A place where one cable may be joined on. */
export interface Attachment {
  /** Unique among all attachments. */
  readonly key: string;
  readonly tap: Tap;
  readonly end: WayEnd;
  readonly circuitId: string;
  /** What joining one cable on there takes, thousandths of a penny. */
  readonly endsMillipence: number;
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

/** Everything that one cable from an attachment can be for: a spur, a wanted unit with what it feeds, a branch behind a unit brought along. */
export function attachColumns(shop: Workshop, at: Attachment, sites: SitesBeside): readonly SchemeColumn[] {
  return [
    ...shop.ground.wanted.flatMap((wanted, i) => aloneColumn(shop, at, { wanted, i })),
    ...shop.ground.wanted.flatMap((wanted, i) =>
      wanted.isUnit && wanted.mayFeed ? unitColumns(shop, at, { wanted, i }) : [],
    ),
    ...branchColumns(shop, at, sites),
  ];
}

interface Indexed {
  readonly wanted: WantedPoint;
  readonly i: number;
}

function aloneColumn(shop: Workshop, at: Attachment, { wanted, i }: Indexed): readonly SchemeColumn[] {
  const { millipence, mess } = shop.link(at.end, wanted.end);
  if (!Number.isFinite(millipence)) return [];
  const part = joinedAlone(at.tap, wanted);
  return [
    {
      mask: 1 << i,
      millipence: Math.max(0, at.endsMillipence + millipence),
      key: `${at.key}/to/${wanted.point.id}`,
      kind: wanted.isUnit ? 'unit' : 'spurs',
      circuitIds: [at.circuitId],
      mess,
      parts: () => [part],
    },
  ];
}

/** What a wanted unit takes more, or less, where cable goes on from it: no flex to an appliance then, perhaps another fuse. */
function changeByFeeding(shop: Workshop, wanted: WantedPoint): number {
  const { ground, sampleKind } = shop;
  const name = `feeding ${kindOfPoint(ground, wanted)} ${sampleKind}`;
  return keptCost(ground.kept, name, () => workChangeByFeeding(shop, wanted));
}

function workChangeByFeeding({ ground, baseOf, sample }: Workshop, { point }: WantedPoint): number {
  const board = ground.house.job.boards[0]?.id ?? '';
  if (sample === null || sample.isUnit) return 0;
  const device = { standard: 'BS-EN-60898', curve: 'B', ratingA: 20 } as const;
  const feeds = [
    { from: 'origin', to: point.id },
    { from: point.id, to: sample.point.id },
  ];
  const feeding = endsByCause(ground, [{ kind: 'radial', board, device, feeds }]).get(point.id) ?? 0;
  return feeding - (baseOf.get(point.id) ?? 0);
}

/** A wanted unit that may feed others, with every set of them. */
function unitColumns(shop: Workshop, at: Attachment, { wanted, i }: Indexed): readonly SchemeColumn[] {
  const own = shop.link(at.end, wanted.end);
  const change = changeByFeeding(shop, wanted);
  return treesOfRoot(shop, wanted.end, 2).flatMap((tree, set): readonly SchemeColumn[] => {
    const mask = shop.sets.masks[set] as number;
    const millipence = at.endsMillipence + own.millipence + change + (tree?.cost ?? 0);
    if (tree === null || !Number.isFinite(millipence)) return [];
    return [
      {
        mask: mask | (1 << i),
        millipence: Math.max(0, millipence),
        key: `${at.key}/unit/${wanted.point.id}/${mask}`,
        kind: 'fused-branch',
        circuitIds: [at.circuitId],
        mess: own.mess + messOf(shop, tree, wanted.end),
        parts: () => [
          { kind: 'fused-spur', from: at.tap, unit: wanted.point.id, feeds: feedsOf(shop, tree, 'unit') },
        ],
      },
    ];
  });
}

/** A branch behind a unit brought along, for every set: the unit stands where the whole costs least, beside the tap or a point of the set. */
function branchColumns(shop: Workshop, at: Attachment, sites: SitesBeside): readonly SchemeColumn[] {
  const { wanted } = shop.ground;
  const own = unitSite(shop, at.end, at.circuitId);
  return Array.from(shop.sets.masks).flatMap((mask): readonly SchemeColumn[] => {
    const near = wanted.flatMap((each, i) => ((mask >> i) & 1 ? (sites.get(each) ?? []) : []));
    const best = [...(own === null ? [] : [own]), ...near]
      .map((site) => ({ site, millipence: siteMillipence(shop, at, { site, mask }) }))
      .reduce<{ site: UnitSite; millipence: number } | null>(
        (so, each) => (so === null || each.millipence < so.millipence ? each : so),
        null,
      );
    const tree = best?.site.trees[shop.sets.at(mask)];
    if (!best || !tree || !Number.isFinite(best.millipence)) return [];
    return [branchColumn(shop, at, { mask, ...best, part: () => branchPart(shop, at, best.site, mask) })];
  });
}

function siteMillipence(
  shop: Workshop,
  at: Attachment,
  { site, mask }: { site: UnitSite; mask: number },
): number {
  const tree = site.trees[shop.sets.at(mask)]?.cost ?? Number.POSITIVE_INFINITY;
  return at.endsMillipence + site.millipence + shop.link(at.end, site.end).millipence + tree;
}

function branchPart(shop: Workshop, { tap }: Attachment, { place, trees }: UnitSite, mask: number): Part {
  const tree = trees[shop.sets.at(mask)];
  const feeds = tree ? feedsOf(shop, tree, 'unit') : [];
  return { kind: 'fused-spur', from: tap, unit: { fuseA: 13, place }, feeds };
}

function branchColumn(
  shop: Workshop,
  at: Attachment,
  { mask, site, millipence, part }: { mask: number; site: UnitSite; millipence: number; part: () => Part },
): SchemeColumn {
  const tree = site.trees[shop.sets.at(mask)];
  return {
    mask,
    millipence: Math.max(0, millipence),
    key: `${at.key}/branch/${mask}`,
    kind: 'fused-branch',
    circuitIds: [at.circuitId],
    mess: shop.link(at.end, site.end).mess + (tree ? messOf(shop, tree, site.end) : 0),
    parts: () => [part()],
  };
}
