import type { PointKind } from '#model/installation.ts';

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
  joint: [],
  blank: outlet.slice(0, 2),
  other: outlet,
};

/** The heights at which a kind of point is often fitted, likeliest first. Common practice, no source, unless said. */
export const usualHeights = (kind: PointKind): readonly UsualHeight[] => byKind[kind];

/** Where a point of a kind begins: its likeliest height, or that of a low outlet. */
export const firstHeightMm = (kind: PointKind): number => byKind[kind][0]?.heightMm ?? 450;
