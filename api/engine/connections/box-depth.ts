import type { PointKind } from '#model/installation.ts';
import type { OwnBoxDepths } from '#model/library.ts';

/** What a back box has to hold. */
export interface BoxContents {
  readonly kind: PointKind;
  readonly features: readonly string[];
  readonly flexOutlet: boolean;
  readonly cables: number;
}

/** Depths that an accessory and its cables want, mm. */
export interface BoxDepths {
  readonly minimumMm: number;
  readonly preferredMm: number;
}

/** Depths in which boxes of every build are stocked, mm; 16 mm takes plain light switches only. */
export const STOCK_DEPTHS_MM = [25, 35, 47] as const;

/** What asks for a depth of box: the accessory, or something about it. */
export type DepthAsker = keyof OwnBoxDepths;

/** What a flex with its grip wants behind a plate, of an outlet for it alone and of a fused unit alike, mm. */
const flexWants: BoxDepths = { minimumMm: 35, preferredMm: 47 };

/** What is usual, by what asks for it. Its grade is told at `boxDepths`. */
export const usualBoxDepths: Readonly<Record<DepthAsker, BoxDepths>> = {
  'socket-single': { minimumMm: 25, preferredMm: 35 },
  'socket-twin': { minimumMm: 25, preferredMm: 35 },
  'fused-unit': { minimumMm: 25, preferredMm: 35 },
  'flex-outlet': flexWants,
  joint: { minimumMm: 35, preferredMm: 47 },
  'dp-switch': { minimumMm: 25, preferredMm: 35 },
  'cooker-control': { minimumMm: 47, preferredMm: 47 },
  grid: { minimumMm: 35, preferredMm: 47 },
  shaver: { minimumMm: 47, preferredMm: 47 },
  blank: { minimumMm: 25, preferredMm: 25 },
  other: { minimumMm: 25, preferredMm: 35 },
  usb: { minimumMm: 35, preferredMm: 47 },
  rcd: { minimumMm: 35, preferredMm: 47 },
  metal: { minimumMm: 35, preferredMm: 35 },
  'flex-outlet-of-unit': flexWants,
  'third-cable': { minimumMm: 35, preferredMm: 35 },
};

const features = ['usb', 'rcd', 'metal'] as const;

const askedOf = ({ kind, features: has, flexOutlet, cables }: BoxContents): readonly DepthAsker[] => [
  kind,
  ...features.filter((feature) => has.includes(feature)),
  // A plate that is nothing but an outlet for a flex asks as what it is.
  ...(flexOutlet && kind !== 'flex-outlet' ? (['flex-outlet-of-unit'] as const) : []),
  ...(cables >= 3 ? (['third-cable'] as const) : []),
];

/** By the firm's own sheet where it has one; what is preferred is never less. */
function depthsOf(what: DepthAsker, own: OwnBoxDepths): BoxDepths {
  const { minimumMm, preferredMm } = usualBoxDepths[what];
  const leastMm = own[what] ?? minimumMm;
  return { minimumMm: leastMm, preferredMm: Math.max(leastMm, preferredMm) };
}

/**
 * The depth of box that an accessory wants: the deepest that its kind, its features, a flex outlet and its
 * cables each ask for.
 *
 * Source: common practice, from makers' notes on metal back boxes (25 mm for ordinary outlets, 35 mm for flat
 * plates and USB, 47 mm for cooker controls); RCD, flex outlet and three cables: from memory. The sheet that
 * comes with the accessory wins.
 *
 * @param own the least depths by the firm's own makers' sheets; what is absent is as usual.
 */
export function boxDepths(contents: BoxContents, own: OwnBoxDepths = {}): BoxDepths {
  const asked = askedOf(contents).map((what) => depthsOf(what, own));
  return {
    minimumMm: Math.max(...asked.map((depths) => depths.minimumMm)),
    preferredMm: Math.max(...asked.map((depths) => depths.preferredMm)),
  };
}

/** Depths of spacer frames between a box and its plate, mm. Sold between 10 and 25 mm deep; the steps are from memory. */
export const FRAME_DEPTHS_MM = [10, 20, 25] as const;

/** The shallowest spacer frame that makes a box deep enough, mm; the deepest there is where none does. */
export function frameDepthMm(foundMm: number, minimumMm: number): number {
  return FRAME_DEPTHS_MM.find((frameMm) => foundMm + frameMm >= minimumMm) ?? FRAME_DEPTHS_MM[2];
}

/**
 * The depth that is fitted new: 35 mm serves what wants 25 as well and leaves room for a later cable.
 *
 * @returns a stock depth; what is deeper than any stays as asked.
 */
export function fittedDepthMm(minimumMm: number): number {
  return STOCK_DEPTHS_MM.find((depthMm) => depthMm >= Math.max(minimumMm, 35)) ?? minimumMm;
}
