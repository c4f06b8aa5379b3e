import type { Device } from '#model/installation.ts';
import type { Remedy } from '#model/scheme.ts';
import type { Worked } from '../connections/worked.ts';
import type { Demand } from './demand.ts';

/** Bonding conductor to a service where nobody has measured the way, m. Common practice, no source. */
const BOND_M = { measured: 10, low: 4, high: 20 } as const;

/** How a remedy is named as a cause, the way the labour stage names it. */
export function remedyCause({ kind, at }: Remedy): string {
  return at === undefined ? `remedy/${kind}` : `remedy/${kind}/${at}`;
}

/** Devices for new circuits, and the material of remedies; boxes and accessories that remedies change are counted there. */
export function protectionDemands(worked: Worked): readonly Demand[] {
  const { scheme } = worked;
  if (scheme === null) return [];
  const devices = scheme.connections.flatMap((connection) =>
    connection.kind === 'radial' ? [piece(deviceItem(connection.device), connection.id)] : [],
  );
  return [...devices, ...scheme.remedies.flatMap((remedy) => remedyDemands(worked, remedy))];
}

function piece(item: string, cause: string): Demand {
  return {
    item,
    unit: item === 'consumer-unit' ? 'set' : 'each',
    group: 'protection',
    measured: 1,
    causes: [cause],
  };
}

/** Whether a device opens on residual current as well. */
export function isRcbo(device: Device): boolean {
  return device.rcd !== undefined || device.standard === 'BS-EN-61009';
}

/** The item id of a device: with residual current protection an RCBO, else a circuit-breaker of its curve and rating. */
export function deviceItem(device: Device): string {
  const curve = device.curve === 'C' || device.curve === 'D' ? device.curve.toLowerCase() : 'b';
  const size = `${curve}${device.ratingA}`;
  if (!isRcbo(device)) return `mcb-${size}`;
  return `rcbo-${size}-${device.rcd?.mA ?? 30}-${(device.rcd?.type ?? 'A').toLowerCase()}`;
}

function remedyDemands(worked: Worked, remedy: Remedy): Demand[] {
  const cause = remedyCause(remedy);
  switch (remedy.kind) {
    case 'rcbo':
      return [piece(deviceItem({ ...deviceFor(worked, remedy), standard: 'BS-EN-61009' }), cause)];
    case 'lower-device': {
      const found = deviceFor(worked, remedy);
      return [piece(deviceItem(remedy.device ?? { ...found, ratingA: 20 }), cause)];
    }
    case 'rcd-enclosure':
      return [
        piece('enclosure-2-module', cause),
        piece('rcd-63-30-a', cause),
        { item: 'tails-16', unit: 'm', group: 'cable', measured: 1, causes: [cause] },
      ];
    case 'bond-upgrade':
      return [
        { item: 'earth-single-10', unit: 'm', group: 'cable', ...BOND_M, causes: [cause] },
        piece('bonding-clamp', cause),
      ];
    case 'new-board':
      return [piece('consumer-unit', cause)];
    default:
      return [];
  }
}

/** The device asked for, else the found one; a ring's usual 32 A where nobody looked. Type A, as now sold. */
function deviceFor(worked: Worked, remedy: Remedy): Device {
  if (remedy.device) return remedy.device;
  const found = worked.found.circuits.find((circuit) => circuit.id === remedy.at)?.device;
  // A found RCD's type says nothing about the new one.
  return { standard: 'BS-EN-60898', curve: found?.curve ?? 'B', ratingA: found?.ratingA ?? 32 };
}
