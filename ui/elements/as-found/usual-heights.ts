import type { Point, PointKind } from '#model/installation.ts';
import type { OwnHeights } from '#model/library.ts';

/** A height that is often asked for, and where. */
export interface UsualHeight {
  /** The plate's centre above the finished floor. */
  readonly heightMm: number;
  readonly words: string;
}

/** Low outlets: 450 mm is the lower bound for new dwellings. Source: Approved Document M, 2015 (from memory); 300: common practice, no source. */
const outlet: readonly UsualHeight[] = [
  { heightMm: 450, words: 'usual' },
  { heightMm: 300, words: 'as in older rooms' },
  { heightMm: 1100, words: 'above a worktop' },
];

/** Above a worktop of 900 mm, clear of its upstand. Common practice, no source. */
const aboveWorktop: readonly UsualHeight[] = [
  { heightMm: 1100, words: 'above a worktop' },
  { heightMm: 450, words: 'low on the wall' },
];

/** Within reach of a standing person. Common practice, no source. */
const atHand: readonly UsualHeight[] = [
  { heightMm: 1200, words: 'at the hand' },
  { heightMm: 1100, words: 'above a worktop' },
];

const byKind: Readonly<Record<PointKind, readonly UsualHeight[]>> = {
  'socket-single': outlet,
  'socket-twin': outlet,
  'fused-unit': aboveWorktop,
  'flex-outlet': [{ heightMm: 450, words: 'behind an appliance' }, ...atHand.slice(1)],
  'dp-switch': atHand,
  'cooker-control': aboveWorktop.slice(0, 1),
  grid: atHand,
  shaver: [{ heightMm: 1400, words: 'beside a mirror' }],
  // Most lie below a floor or above a ceiling. Common practice, no source.
  joint: [{ heightMm: 0, words: 'at the floor' }],
  blank: outlet.slice(0, 2),
  other: outlet,
};

/**
 * The heights at which a kind of point is often fitted, likeliest first: the firm's own before the usual ones. Common practice, no
 * source, unless said.
 */
export function usualHeights(kind: PointKind, own: OwnHeights = {}): readonly UsualHeight[] {
  const ownMm = own[kind];
  if (ownMm === undefined) return byKind[kind];
  return [
    { heightMm: ownMm, words: 'as you do' },
    ...byKind[kind].filter(({ heightMm }) => heightMm !== ownMm),
  ];
}

/** Where a new point of a kind begins: the firm's own height, else the likeliest, else that of a low outlet. */
export const firstHeightMm = (kind: PointKind, own: OwnHeights = {}): number =>
  usualHeights(kind, own)[0]?.heightMm ?? 450;

/** Kinds that one fits at one height in one room. */
const socketLike: ReadonlySet<PointKind> = new Set(['socket-single', 'socket-twin', 'blank', 'other']);

/** Whether two kinds are fitted at the same heights. */
export const isSameHeightKind = (one: PointKind, other: PointKind): boolean =>
  one === other || (socketLike.has(one) && socketLike.has(other));

/** Where the next point that is found begins: as high as the last of such kinds in this house, else as a new one. */
export function foundHeightMm(
  points: readonly Pick<Point, 'kind' | 'status' | 'place'>[],
  kind: PointKind,
  own: OwnHeights = {},
): number {
  const last = points.findLast(
    (point) => point.status !== 'wanted' && point.place !== undefined && isSameHeightKind(point.kind, kind),
  );
  return last?.place?.heightMm ?? firstHeightMm(kind, own);
}
