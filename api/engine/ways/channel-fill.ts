import { channelCapacity } from '#data/standards/channel-capacity.ts';
import type { Cable } from '#model/cable.ts';
import { flatCableSectionMm2, flatCableSize } from './flat-cable-size.ts';

/** A size of mini-trunking, by the name that price lists and surveys use. */
export type ChannelSize = (typeof channelCapacity.rows)[number]['name'];

/** Every size, the smallest first. */
export const CHANNEL_SIZES: readonly ChannelSize[] = channelCapacity.rows.map(({ name }) => name);

/** Walls and lid lip that a flat cable's width cannot use, mm. Common practice, no source. */
const WALLS_MM = 3;

/**
 * Whether flat cables lie in a channel: 45 % of it at most by their rounded sections, and wide enough for the widest of them.
 * Source: the table.
 */
export function channelTakes(size: ChannelSize, cables: readonly Cable[]): boolean {
  const sizes = cables.map((cable) => flatCableSize(cable.lineMm2));
  const sectionMm2 = sizes.reduce((sum, each) => sum + flatCableSectionMm2(each), 0);
  const widestMm = Math.max(0, ...sizes.map((each) => each.widthMm));
  return channelCapacity.rows.some(
    ({ name, wideMm, capacityMm2 }) =>
      name === size && sectionMm2 <= capacityMm2 && widestMm <= wideMm - WALLS_MM,
  );
}
