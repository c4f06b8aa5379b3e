import type { Device } from '#model/installation.ts';
import type { Remedy } from '#model/scheme.ts';

/** What an RCBO is sold with when nothing else is asked for. Source: BS 7671 415.1.1 (30 mA), 531.3.3 (type A). */
const USUAL_RCD = { type: 'A', mA: 30 } as const;

/** The device that a circuit is lowered to unless another is named, A. Common practice, no source. */
const LOWERED_A = 20;

/** Ratings below that, which a still smaller device may have. Source: BS EN 60898-1 preferred values, from memory. */
const SMALLER_A = [16, 10, 6] as const;

/** Ratings of old fuses and breakers and those that have taken their place. Common practice, no source. */
const ratingNow: ReadonlyMap<number, number> = new Map([
  [5, 6],
  [15, 16],
  [30, 32],
]);

/** Whether a device opens on residual current as well. */
export function isRcbo(device: Device): boolean {
  return device.rcd !== undefined || device.standard === 'BS-EN-61009';
}

/**
 * The device of a circuit when one remedy is carried out on it.
 *
 * - `rcbo`: the one named, made an RCBO; else one for the device that is there.
 * - `rcd-enclosure`: the one named; else the device stays, an RCD comes before it.
 * - `lower-device`: the one named; else 20 A, or the next smaller rating where it is no more than that now; an
 *   RCBO stays one.
 * - `new-board`: the one named; else an RCBO for the device that is there, as boards are now fitted out.
 *
 * An RCBO "for" a device has its rating (30 A of old is 32 A now, 15 is 16, 5 is 6) and its curve, B where
 * that is none of today's, and a residual current part of 30 mA, type A.
 *
 * @param current what is there, or what the remedies before this one have put there; null while unknown.
 * @returns null while its rating cannot be told; `current` itself where the remedy changes no device.
 */
export function fittedDevice(remedy: Remedy, current: Device | null): Device | null {
  const named = remedy.device;
  switch (remedy.kind) {
    case 'rcbo':
      return named ? asRcbo(named) : rcboFor(current);
    case 'new-board':
      return named ?? rcboFor(current);
    case 'lower-device':
      return named ?? lowered(current);
    case 'rcd-enclosure':
      return named ?? current;
    default:
      return current;
  }
}

function asRcbo(device: Device): Device {
  return { ...device, standard: 'BS-EN-61009', rcd: device.rcd ?? USUAL_RCD };
}

function rcboFor(current: Device | null): Device | null {
  if (current === null) return null;
  const ratingA = ratingNow.get(current.ratingA) ?? current.ratingA;
  return asRcbo({ standard: 'BS-EN-61009', curve: curveNow(current), ratingA });
}

function lowered(current: Device | null): Device {
  const currentA = current?.ratingA ?? Number.POSITIVE_INFINITY;
  const ratingA =
    currentA > LOWERED_A ? LOWERED_A : (SMALLER_A.find((smallerA) => smallerA < currentA) ?? currentA);
  const breaker: Device = { standard: 'BS-EN-60898', curve: curveNow(current), ratingA };
  return current !== null && isRcbo(current) ? asRcbo(breaker) : breaker;
}

/** The curves of breakers before BS EN 60898 (1, 2, 3) are not sold any more, and fuses have none. */
function curveNow(current: Device | null): 'B' | 'C' | 'D' {
  return current?.curve === 'C' || current?.curve === 'D' ? current.curve : 'B';
}
