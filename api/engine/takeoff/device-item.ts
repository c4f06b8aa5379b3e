import type { Device } from '#model/installation.ts';
import { isRcbo } from '../circuit/fitted-device.ts';

/** The item id of a device: with residual current protection an RCBO, else a circuit-breaker of its curve and rating. */
export function deviceItem(device: Device): string {
  const curve = device.curve === 'C' || device.curve === 'D' ? device.curve.toLowerCase() : 'b';
  const size = `${curve}${device.ratingA}`;
  if (!isRcbo(device)) return `mcb-${size}`;
  return `rcbo-${size}-${device.rcd?.mA ?? 30}-${(device.rcd?.type ?? 'A').toLowerCase()}`;
}
