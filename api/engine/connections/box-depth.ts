import type { PointKind } from '#model/installation.ts';

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

const byKind: Readonly<Record<PointKind, BoxDepths>> = {
  'socket-single': { minimumMm: 25, preferredMm: 35 },
  'socket-twin': { minimumMm: 25, preferredMm: 35 },
  'fused-unit': { minimumMm: 25, preferredMm: 35 },
  'flex-outlet': { minimumMm: 25, preferredMm: 35 },
  joint: { minimumMm: 35, preferredMm: 47 },
  'dp-switch': { minimumMm: 25, preferredMm: 35 },
  'cooker-control': { minimumMm: 47, preferredMm: 47 },
  grid: { minimumMm: 35, preferredMm: 47 },
  shaver: { minimumMm: 47, preferredMm: 47 },
  blank: { minimumMm: 25, preferredMm: 25 },
  other: { minimumMm: 25, preferredMm: 35 },
};

const byFeature: Readonly<Record<string, BoxDepths>> = {
  usb: { minimumMm: 35, preferredMm: 47 },
  rcd: { minimumMm: 35, preferredMm: 47 },
  metal: { minimumMm: 35, preferredMm: 35 },
};

const withFlexOutlet: BoxDepths = { minimumMm: 35, preferredMm: 47 };
const withThirdCable: BoxDepths = { minimumMm: 35, preferredMm: 35 };

/**
 * The depth of box that an accessory wants: the deepest that its kind, its features, a flex outlet and its
 * cables each ask for.
 *
 * Source: common practice, from makers' notes on metal back boxes (25 mm for ordinary outlets, 35 mm for flat
 * plates and USB, 47 mm for cooker controls); RCD, flex outlet and three cables: from memory. The sheet that
 * comes with the accessory wins.
 */
export function boxDepths({ kind, features, flexOutlet, cables }: BoxContents): BoxDepths {
  const asked = [byKind[kind], ...features.flatMap((feature) => byFeature[feature] ?? [])];
  if (flexOutlet) asked.push(withFlexOutlet);
  if (cables >= 3) asked.push(withThirdCable);
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
