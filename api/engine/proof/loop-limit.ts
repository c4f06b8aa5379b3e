import { breakerTrip } from '#data/standards/breaker-trip.ts';
import { fuseLoopImpedance } from '#data/standards/fuse-loop-impedance.ts';
import type { RowStatus } from '#data/standards/table.ts';
import type { Device } from '#model/installation.ts';
import { NOMINAL_V } from './spur-load.ts';

/** The greatest earth fault loop impedance with which a device clears a fault in time. */
export interface LoopLimit {
  /** Ω with the conductors at operating temperature. */
  readonly maximumOhm: number;
  /** Fault current that operates the device in that time, A; null where only the impedance is known. */
  readonly operatingA: number | null;
  readonly grade: RowStatus;
  /** How it comes about, for people: "B32: 218.5 V ÷ 160 A". */
  readonly by: string;
}

/** The least voltage that the supply is counted on to have, as a part of the nominal. Source: BS 7671 411.4.4, Cmin. */
const LEAST_VOLTAGE_RATIO = 0.95;

/** Voltage that drives the fault current when a limit is worked out: 218.5 V. Source: BS 7671 411.4.4. */
export const LEAST_FAULT_V = NOMINAL_V * LEAST_VOLTAGE_RATIO;

/** Touch voltage that may stand: what an RCD's limit rests on. Source: BS 7671 411.5.3, Table 41.5. */
const TOUCH_V = 50;

/**
 * The limit of a circuit's device for disconnection within 0.4 s. A breaker's is worked out, not rounded (the
 * printed tables round to 0.01 Ω), and serves every time from 0.1 s on.
 *
 * @returns null where none is held: a device of unknown standard, a breaker of unknown or foreign curve, a fuse without a figure for 0.4 s
 *   (45 A). An RCD that the device has counts nothing here. For a TT system's 0.2 s a fuse's limit does not do.
 * Source: BS 7671 411.4.4, Tables 41.2 and 41.3.
 */
export function loopLimit(device: Device): LoopLimit | null {
  switch (device.standard) {
    case undefined:
      return null;
    case 'BS-EN-60898':
    case 'BS-EN-61009':
    case 'BS-3871':
      return breakerLimit(device);
    default:
      return fuseLimit(device.standard, device.ratingA);
  }
}

/**
 * The limit of a plug fuse, 3 or 13 A, for disconnection within 0.4 s; null for other ratings.
 * Source: BS 7671 Table 41.2, fuses to BS 1362.
 */
export function plugFuseLimit(fuseA: number): LoopLimit | null {
  return fuseLimit('BS-1362', fuseA);
}

function breakerLimit({ standard, curve, ratingA }: Device): LoopLimit | null {
  const family = standard === 'BS-3871' ? 'BS-3871' : 'BS-EN-60898';
  const row = breakerTrip.rows.find((each) => each.standard === family && each.curve === curve);
  if (row === undefined || ratingA <= 0) return null;
  const operatingA = row.tripMultiple * ratingA;
  const name = family === 'BS-3871' ? `type ${row.curve}, ${ratingA} A` : `${row.curve}${ratingA}`;
  return {
    maximumOhm: LEAST_FAULT_V / operatingA,
    operatingA,
    // Seen or not, the multiple only leads to the limit by arithmetic.
    grade: row.status === 'memory' ? 'memory' : 'derived',
    by: `${name}: ${LEAST_FAULT_V} V ÷ ${operatingA} A`,
  };
}

function fuseLimit(standard: string, ratingA: number): LoopLimit | null {
  const row = fuseLoopImpedance.rows.find((each) => each.standard === standard && each.ratingA === ratingA);
  if (row === undefined) return null;
  const { maximumOhm, operatingA, status: grade } = row;
  return { maximumOhm, operatingA, grade, by: `${standard.replaceAll('-', ' ')} fuse, ${ratingA} A: 0.4 s` };
}

/**
 * Greatest loop impedance, Ω, with which an RCD of this rated residual current, mA above 0, keeps the touch
 * voltage to 50 V.
 * Source: BS 7671 411.5.3, Table 41.5.
 */
export function rcdLoopLimitOhm(residualMA: number): number {
  return TOUCH_V / (residualMA / 1000); // mA to A
}

/** Part of a limit at operating temperature that a cold reading is compared with. */
const coldRatios = {
  // BS 7671 Appendix 3.
  'eighty-percent': 0.8,
  // On-Site Guide Appendix B, for a reading at 10 °C: 0.96 to 1.20 is 1.25, which the guide takes as 1.24.
  'guide-divisor': 1 / 1.24,
} as const;

/**
 * What a loop impedance measured on cold conductors is compared with, Ω. The two ways differ by 0.8 %; the 80 %
 * rule is the lower.
 * Source: BS 7671 Appendix 3; On-Site Guide Appendix B
 * (https://www.electriciansforums.net/threads/max-zs-values-in-the-on-suite-guide.199276/).
 */
export function coldLimit(maximumOhm: number, how: keyof typeof coldRatios): number {
  return maximumOhm * coldRatios[how];
}
