import type { Norms } from '#model/library.ts';
import { remembered } from '../plan/remembered.ts';

/** Lengths and counts that no drawing tells. */
export interface KitCounts {
  /** Flex of a fixed appliance. */
  readonly applianceFlexMm: number;
  /** From a steel box's earth terminal to the accessory's. */
  readonly boxTailMm: number;
  /** Sleeving over the bare protective conductor of one cable end. */
  readonly sleeveMm: number;
  /** On a surface one clip in so many is of metal, so that cable does not hang low in a fire. */
  readonly metalClipEvery: number;
  /** Metal clips inside plastic channel, for the same reason, mm apart. */
  readonly metalClipInChannelMm: number;
  /** Between pins of capping, mm apart; one more stands at the end. */
  readonly cappingPinMm: number;
  /** Between screws of channel beside its adhesive, mm apart; one more stands at the end. */
  readonly channelScrewMm: number;
}

/** Where the firm says nothing of its own. Common practice, no source (sleeves are 100 to 150 mm); metal clips are from memory. */
export const usualCounts: KitCounts = {
  applianceFlexMm: 2000,
  boxTailMm: 150,
  sleeveMm: 120,
  metalClipEvery: 3,
  metalClipInChannelMm: 1000,
  cappingPinMm: 300,
  channelScrewMm: 500,
};

/** The usual counts with the firm's own in their place; the same object for the same norms. */
export const kitCountsOf = remembered(
  ({ counts = {} }: Norms): KitCounts => ({
    applianceFlexMm: counts.applianceFlexMm ?? usualCounts.applianceFlexMm,
    boxTailMm: counts.boxTailMm ?? usualCounts.boxTailMm,
    sleeveMm: counts.sleeveMm ?? usualCounts.sleeveMm,
    metalClipEvery: counts.metalClipEvery ?? usualCounts.metalClipEvery,
    metalClipInChannelMm: counts.metalClipInChannelMm ?? usualCounts.metalClipInChannelMm,
    cappingPinMm: counts.cappingPinMm ?? usualCounts.cappingPinMm,
    channelScrewMm: counts.channelScrewMm ?? usualCounts.channelScrewMm,
  }),
);
