import type { Cable } from '#model/cable.ts';
import { cableOhms, HOT_RATIO } from './conductor-ohms.ts';
import { FURTHEST_A } from './scenarios.ts';
import { voltDropCorrection, voltDropPerMetre } from './volt-drop-per-metre.ts';

/** A circuit of one cable whose greatest length is asked for. */
export interface UniformCircuit {
  readonly shape: 'ring' | 'radial';
  readonly cable: Cable;
  /** Current taken at the furthest point: the middle of a ring, the end of a radial; above 0. */
  readonly currentA: number;
  /** Greatest volt drop, V. */
  readonly dropLimitV: number;
  /**
   * What the table lets the cable carry as installed, A, where the volt drop is corrected for the temperature
   * that the load really gives; null takes the tabulated drop as it stands.
   */
  readonly correctedByA: number | null;
  /** Greatest loop impedance of the device, Ω hot; null where an RCD disconnects, or no limit is held. */
  readonly loopLimitOhm: number | null;
  /** External loop impedance; null where unknown. */
  readonly zeOhm: number | null;
}

/** How long a circuit may be, without its spurs. */
export interface LongestLength {
  readonly lengthMm: number;
  readonly by: 'volt-drop' | 'fault-loop';
  readonly byDropMm: number;
  /** Nought where the supply alone is over the limit; null where no limit was given, or Ze or a figure is unknown. */
  readonly byLoopMm: number | null;
}

/** Resistance between the origin and the furthest point as a part of the whole length's. */
const pathRatio = { ring: 1 / 4, radial: 1 } as const;
/** Cables that share the current to the furthest point. */
const waysThere = { ring: 2, radial: 1 } as const;

/**
 * The load at the furthest point that drops as much as the handbook's: 20 A there and the rest of the rating spread
 * evenly, which drops half as much; 26 A for 32 A. A rating up to 20 A counts whole.
 * Source: On-Site Guide 7.2.2, quoted at dev-www.diynot.com, threads/correct-cable-size.470256, page 3.
 */
export function furthestLoadA(ratingA: number): number {
  return ratingA <= FURTHEST_A ? ratingA : FURTHEST_A + (ratingA - FURTHEST_A) / 2;
}

/**
 * The greatest length of a ring (the whole loop) or radial of one cable, by volt drop and by fault loop.
 *
 * @returns null where no volt drop is held for the cable.
 * Source: BS 7671 525 with Appendix 4 §6.1, 411.4.4; the model of On-Site Guide 7.2.2.
 */
export function longestLength(circuit: UniformCircuit): LongestLength | null {
  const byDropMm = lengthByDropMm(circuit);
  if (byDropMm === null) return null;
  const byLoopMm = lengthByLoopMm(circuit);
  const isLoop = byLoopMm !== null && byLoopMm < byDropMm;
  return {
    lengthMm: isLoop ? byLoopMm : byDropMm,
    by: isLoop ? 'fault-loop' : 'volt-drop',
    byDropMm,
    byLoopMm,
  };
}

function lengthByDropMm({ shape, cable, currentA, dropLimitV, correctedByA }: UniformCircuit): number | null {
  const drop = voltDropPerMetre(cable);
  if (drop === null) return null;
  const correction =
    correctedByA === null
      ? 1
      : voltDropCorrection({
          currentA: currentA / waysThere[shape],
          tabulatedA: correctedByA,
          ambientRatio: 1,
          groupRatio: 1,
        });
  // mV per A and m is also V per A and km, so that the quotient is in km.
  const lengthKm = dropLimitV / (drop.millivoltPerAM * currentA * correction * pathRatio[shape]);
  return lengthKm * 1e6; // km to mm
}

function lengthByLoopMm({ shape, cable, loopLimitOhm, zeOhm }: UniformCircuit): number | null {
  const ohms = cableOhms(cable);
  if (loopLimitOhm === null || zeOhm === null || ohms?.cpcMilliohmPerM == null) return null;
  const milliohmPerM = (ohms.lineMilliohmPerM + ohms.cpcMilliohmPerM) * HOT_RATIO * pathRatio[shape];
  // Ω over mΩ per m is km.
  return (Math.max(0, loopLimitOhm - zeOhm) / milliohmPerM) * 1e6; // km to mm
}
