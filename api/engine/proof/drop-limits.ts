import { voltDropLimits } from '#data/standards/volt-drop-limits.ts';
import type { Limits } from '#model/library.ts';
import type { LegProof } from './circuit-proof.ts';
import type { ProofCase } from './proof-case.ts';
import { NOMINAL_V } from './spur-load.ts';
import { voltDropCorrection } from './volt-drop-per-metre.ts';

const percentFor = (use: 'lighting' | 'other'): number =>
  voltDropLimits.rows.find((row) => row.use === use)?.percent ?? 0;

/** What the volt drop may be, V at 230 V: the firm's own limit for sockets where it has one, and that of lighting. */
export const dropLimitsV = ({
  voltDropPercent = percentFor('other'),
}: Limits): { readonly dropLimitV: number; readonly lightingDropLimitV: number } => ({
  dropLimitV: (NOMINAL_V * voltDropPercent) / 100,
  lightingDropLimitV: (NOMINAL_V * percentFor('lighting')) / 100,
});

/**
 * The factor on tabulated volt drops where conductors run cooler than 70 °C: that of the leg that carries most of its
 * capacity, for the whole circuit, so that no leg is taken for cooler than it is. 1 where the firm does not want it, with a
 * rewireable fuse or a device that may be one, and where the capacity of some leg is not known.
 *
 * @param legs of the circuit, in its order, under the loads that count.
 * Source: BS 7671 Appendix 4 §6.1; that it is not for BS 3036 is from memory.
 */
export function dropCorrection({ input, circuit }: ProofCase, legs: readonly LegProof[]): number {
  if (input.limits.voltDropCorrected !== true || circuit.device?.standard === 'BS-3036') return 1;
  if (circuit.device !== null && circuit.device.standard === undefined) return 1;
  let greatest = 0;
  for (const [i, { leg, currentA }] of legs.entries()) {
    const cable = input.capacities.get(leg);
    if (currentA === null || circuit.legs[i]?.kind === 'fuse') continue;
    if (cable === undefined || cable.izA === null) return 1;
    // What insulation takes off stays off: the cable runs as warm with that much less.
    const ambientRatio = cable.ambientFactor ?? 1;
    const tabulatedA = cable.izA / (cable.groupFactor * ambientRatio);
    const ratio = voltDropCorrection({
      currentA,
      tabulatedA,
      ambientRatio,
      groupRatio: cable.groupFactor,
    });
    greatest = Math.max(greatest, ratio);
  }
  return greatest === 0 ? 1 : Math.min(1, greatest);
}
