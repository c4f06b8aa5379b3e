import { channelCapacity } from '#data/standards/channel-capacity.ts';
import { conduitFill } from '#data/standards/conduit-fill.ts';
import type { Cable } from '#model/cable.ts';
import { channelTakes } from '../ways/channel-fill.ts';
import { flatCableSectionMm2, flatCableSize } from '../ways/flat-cable-size.ts';

/**
 * The smallest mini-trunking for these flat cables at 45 % fill by their rounded section, and wide enough for
 * the widest of them; the largest listed where none is enough.
 */
export function channelSize(cables: readonly Cable[]): string {
  return (channelCapacity.rows.find(({ name }) => channelTakes(name, cables)) ?? channelCapacity.rows[5])
    .name;
}

/** The oval tube for these cables, nominal mm. Source: common practice (one 2.5 mm² in 20, two in 32), no published table. */
export function ovalSizeMm(cables: readonly Cable[]): number {
  const largestMm2 = Math.max(0, ...cables.map((cable) => cable.lineMm2));
  if (cables.length > 2) return 38;
  if (cables.length === 2) return largestMm2 <= 2.5 ? 32 : 38;
  if (largestMm2 <= 1.5) return 16;
  if (largestMm2 <= 2.5) return 20;
  return largestMm2 <= 10 ? 25 : 32;
}

/** The capping over these cables, mm wide. Source: common practice, no published table. */
export function cappingSizeMm(cables: readonly Cable[]): number {
  const largestMm2 = Math.max(0, ...cables.map((cable) => cable.lineMm2));
  if (cables.length > 2) return 50;
  if (cables.length === 2) return largestMm2 <= 1.5 ? 25 : largestMm2 <= 2.5 ? 38 : 50;
  if (largestMm2 <= 1.5) return 13;
  return largestMm2 <= 6 ? 25 : 38;
}

/**
 * The smallest round conduit for these flat cables by their rounded section, no wider than its bore, nominal mm; the largest
 * listed where none is enough. Source: the table.
 */
export function conduitSizeMm(cables: readonly Cable[]): number {
  const sizes = cables.map((cable) => flatCableSize(cable.lineMm2));
  const sectionMm2 = sizes.reduce((sum, size) => sum + flatCableSectionMm2(size), 0);
  const widestMm = Math.max(0, ...sizes.map((size) => size.widthMm));
  const fits = ({ boreMm }: { readonly boreMm: number }): boolean =>
    widestMm <= boreMm && sectionMm2 <= (conduitFill.fillPercent / 100) * (Math.PI / 4) * boreMm ** 2;
  return (conduitFill.rows.find(fits) ?? conduitFill.rows[2]).sizeMm;
}
