import { letThroughClass } from '#data/standards/let-through-class.ts';
import { protectiveConductorK } from '#data/standards/protective-conductor-k.ts';
import type { Device } from '#model/installation.ts';

/** A fault current that flows for a time through a conductor of factor k. */
export interface Fault {
  readonly currentA: number;
  /** From 0.1 to 5 s: below, the device's let-through energy counts instead. */
  readonly seconds: number;
  /** A·√s per mm². */
  readonly k: number;
}

/**
 * Factor k of a copper protective conductor with 70 °C thermoplastic insulation: 115 inside a cable or bunched,
 * 143 by itself.
 * Source: BS 7671 Tables 54.3 and 54.2.
 */
export function protectiveK(lies: 'in-cable' | 'separate'): number {
  const row = protectiveConductorK.rows.find((each) => each.lies === lies) ?? protectiveConductorK.rows[0];
  return row.k;
}

/**
 * The energy per ohm that a conductor takes before its insulation is harmed, k²S² in A²s.
 * Source: BS 7671 434.5.2 and 543.1.3; harm begins at 160 °C for thermoplastic.
 */
export function withstandA2s(areaMm2: number, k: number): number {
  const root = k * areaMm2;
  return root * root;
}

/**
 * Least area of a conductor that takes a fault, √(I²t)/k in mm².
 * Source: BS 7671 543.1.3.
 */
export function adiabaticAreaMm2({ currentA, seconds, k }: Fault): number {
  return (currentA * Math.sqrt(seconds)) / k;
}

/**
 * The ceiling of a breaker's let-through energy at its full rated capacity, A²s, by its energy-limiting class.
 * A conductor that withstands it is proved; one that does not is not failed by it, since at the fault level of a
 * house devices let through far less.
 *
 * @returns null where no ceiling is held: most devices.
 * Source: BS EN 60898-1 Annex ZA.
 */
export function letThroughCeilingA2s(device: Device, energyClass: 2 | 3): number | null {
  const row = letThroughClass.rows.find(
    ({ curve, uptoA, breakingKA, energyClass: ofRow }) =>
      device.standard === 'BS-EN-60898' &&
      curve === device.curve &&
      device.ratingA <= uptoA &&
      breakingKA === device.breakingKA &&
      ofRow === energyClass,
  );
  return row?.letThroughA2s ?? null;
}
