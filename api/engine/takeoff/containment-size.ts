import { channelCapacity } from '#data/standards/channel-capacity.ts';
import { conduitFill } from '#data/standards/conduit-fill.ts';
import type { Cable } from '#model/cable.ts';
import { channelTakes } from '../ways/channel-fill.ts';
import { flatCableSectionMm2, flatCableSize } from '../ways/flat-cable-size.ts';
import type { KitCounts } from './kit-counts.ts';

/** The largest tube and the widest capping that merchants sell, mm. Common practice, no source. */
const LARGEST_OVAL_MM = 38;
const WIDEST_CAPPING_MM = 50;

/**
 * The smallest mini-trunking for these flat cables at 45 % fill by their rounded section, and wide enough for
 * the widest of them; the largest listed where none is enough.
 */
export function channelSize(cables: readonly Cable[]): string {
  return (channelCapacity.rows.find(({ name }) => channelTakes(name, cables)) ?? channelCapacity.rows[5])
    .name;
}

/** The oval tube for these cables, nominal mm: as the firm does it for one or two, else the largest. */
export function ovalSizeMm(cables: readonly Cable[], counts: KitCounts): number {
  const largestMm2 = Math.max(0, ...cables.map((cable) => cable.lineMm2));
  if (cables.length > 2) return LARGEST_OVAL_MM;
  if (cables.length === 2) return largestMm2 <= 2.5 ? counts.ovalTwoMm : LARGEST_OVAL_MM;
  if (largestMm2 <= 1.5) return counts.ovalFineMm;
  if (largestMm2 <= 2.5) return counts.ovalOneMm;
  return largestMm2 <= 10 ? counts.ovalThickMm : 32;
}

/** The capping over these cables, mm wide: as the firm does it for one or two, else the widest. */
export function cappingSizeMm(cables: readonly Cable[], counts: KitCounts): number {
  const largestMm2 = Math.max(0, ...cables.map((cable) => cable.lineMm2));
  if (cables.length > 2) return WIDEST_CAPPING_MM;
  if (cables.length === 2) {
    if (largestMm2 <= 1.5) return counts.cappingTwoFineMm;
    return largestMm2 <= 2.5 ? counts.cappingTwoMm : WIDEST_CAPPING_MM;
  }
  if (largestMm2 <= 1.5) return counts.cappingFineMm;
  return largestMm2 <= 6 ? counts.cappingOneMm : 38;
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
