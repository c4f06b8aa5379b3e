import type { Device } from '#model/installation.ts';
import type { Remedy } from '#model/scheme.ts';
import { fittedDevice } from '../circuit/fitted-device.ts';
import type { Worked } from '../connections/worked.ts';
import { boardDemands } from './board-lines.ts';
import { bondDemands } from './bonding-lines.ts';
import type { Demand } from './demand.ts';
import { deviceItem } from './device-item.ts';
import type { KitCounts } from './kit-counts.ts';
import { remedyCause } from './remedy-cause.ts';

/**
 * Devices for new circuits, new boards, and the material of remedies; boxes and accessories that remedies change are counted
 * there. However many remedies are about the device of one circuit, one device is bought for it: the one that the
 * circuit has in the end.
 */
export function protectionDemands(worked: Worked, counts: KitCounts): readonly Demand[] {
  const { scheme } = worked;
  if (scheme === null) return [];
  const devices = scheme.connections.flatMap((connection) =>
    connection.kind === 'radial' ? [piece(deviceItem(connection.device), [connection.id])] : [],
  );
  const exchanged = exchangedDevices(scheme.remedies).map((remedies) =>
    piece(deviceItem(deviceAfter(worked, remedies)), remedies.map(remedyCause)),
  );
  return [
    ...devices,
    ...exchanged,
    ...boardDemands(worked, counts),
    ...scheme.remedies.flatMap((remedy) => remedyDemands(worked, remedy, counts)),
  ];
}

/** The remedies that exchange the device of a circuit, those of one circuit together; each without a circuit by itself. */
export function exchangedDevices(remedies: readonly Remedy[]): readonly (readonly Remedy[])[] {
  const exchanging = remedies.filter(({ kind }) => kind === 'rcbo' || kind === 'lower-device');
  const circuitIds = [...new Set(exchanging.flatMap(({ at }) => at ?? []))];
  return [
    ...circuitIds.map((circuitId) => exchanging.filter(({ at }) => at === circuitId)),
    ...exchanging.filter(({ at }) => at === undefined).map((remedy) => [remedy]),
  ];
}

function piece(item: string, causes: readonly string[]): Demand {
  return { item, unit: 'each', group: 'protection', measured: 1, causes };
}

function remedyDemands(worked: Worked, remedy: Remedy, counts: KitCounts): Demand[] {
  const cause = remedyCause(remedy);
  switch (remedy.kind) {
    case 'rcd-enclosure':
      return [
        piece('enclosure-2-module', [cause]),
        piece('rcd-63-30-a', [cause]),
        {
          item: 'tails-16',
          unit: 'm',
          group: 'cable',
          measured: counts.enclosureTailsMm / 1e3,
          causes: [cause],
        },
        ...deviceInEnclosure(worked, remedy),
      ];
    case 'bond-upgrade':
      return [...bondDemands(worked.job.supply, cause, counts)];
    default:
      return [];
  }
}

/** A breaker beside the RCD, where the device named for the enclosure is of another rating or curve than the one found. */
function deviceInEnclosure({ found }: Worked, remedy: Remedy): Demand[] {
  const named = remedy.device;
  const before = found.circuits.find(({ id }) => id === remedy.at)?.device;
  if (named === undefined || !before || (named.ratingA === before.ratingA && named.curve === before.curve))
    return [];
  const breaker: Device = { standard: 'BS-EN-60898', curve: named.curve ?? 'B', ratingA: named.ratingA };
  return [piece(deviceItem(breaker), [remedyCause(remedy)])];
}

/** A ring's usual device, for a circuit at whose own nobody looked. */
const unseenDevice: Device = { standard: 'BS-EN-60898', curve: 'B', ratingA: 32 };

/**
 * The device that a circuit has when these remedies are carried out: the one of the wiring as proposed. For a
 * circuit that is not told, or whose device nobody looked at, what the remedies would make of a usual one.
 */
export function deviceAfter({ proposed }: Worked, remedies: readonly Remedy[]): Device {
  const circuitId = remedies[0]?.at;
  const told = proposed.circuits.find(({ id, isNew }) => id === circuitId && !isNew)?.device;
  const asked = remedies.reduce<Device | null>(
    (current, remedy) => fittedDevice(remedy, current),
    unseenDevice,
  );
  return told ?? asked ?? unseenDevice;
}
