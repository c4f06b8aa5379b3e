import type { Device, Supply } from '#model/installation.ts';
import type { Facts } from './facts.ts';

/** A device with residual current protection that the scheme fits, by what it is fitted for. */
export interface FittedRcd {
  /** The circuit, board or connection that it is for. */
  readonly id: string;
}

/** The RCDs and RCBOs of a scheme at the board, sorted by what they are for. */
export function fittedRcds({ scheme }: Facts): readonly FittedRcd[] {
  if (!scheme) return [];
  const remedies = scheme.remedies
    .filter(({ kind }) => kind === 'rcbo' || kind === 'rcd-enclosure' || kind === 'new-board')
    .map(({ kind, at }) => ({ id: at ?? kind }));
  const radials = scheme.connections
    .filter((connection) => connection.kind === 'radial' && connection.device.rcd !== undefined)
    .map(({ id }) => ({ id }));
  return [...remedies, ...radials].sort((a, b) => (a.id < b.id ? -1 : 1));
}

/** Whether the scheme exchanges the board: this one, or any when none is named. */
export function exchangesBoard({ scheme }: Pick<Facts, 'scheme'>, boardId?: string): boolean {
  return (scheme?.remedies ?? []).some(
    ({ kind, at }) => kind === 'new-board' && (boardId === undefined || at === undefined || at === boardId),
  );
}

/** The ids of the connections that make new circuits, in the scheme's order. */
export function newCircuitIds({ scheme }: Facts): readonly string[] {
  return (scheme?.connections ?? []).filter(({ kind }) => kind === 'radial').map(({ id }) => id);
}

/** What a bonded service is called in a sentence. */
export function serviceWords(service: Supply['bonding'][number]['service']): string {
  if (service === 'steel') return 'the steelwork';
  return service === 'other' ? 'another service' : service;
}

/** Whether the scheme renews the bond of a service: by its name, or all of them where none is named. */
export function renewsBond({ scheme }: Pick<Facts, 'scheme'>, service: string): boolean {
  return (scheme?.remedies ?? []).some(
    ({ kind, at }) => kind === 'bond-upgrade' && (at === undefined || at === service),
  );
}

/**
 * Whether the scheme fits the device that a circuit is behind when all is done: a remedy names it, it differs
 * from what was found, or the circuit is new.
 */
export function fitsDevice(
  { scheme, found, proposed }: Pick<Facts, 'scheme' | 'found' | 'proposed'>,
  circuitId: string,
): boolean {
  if (scheme === null) return false;
  const now = proposed.circuits.find(({ id }) => id === circuitId);
  if (!now?.device) return false;
  if (now.isNew) return true;
  const isNamed = scheme.remedies.some(
    ({ kind, at, device }) =>
      (kind === 'rcbo' || kind === 'lower-device') && at === circuitId && device !== undefined,
  );
  const before = found.circuits.find(({ id }) => id === circuitId)?.device;
  return isNamed || !isSameDevice(now.device, before ?? null);
}

function isSameDevice(a: Device, b: Device | null): boolean {
  const keyOf = ({ standard, curve, ratingA, rcd }: Device) =>
    [standard, curve, ratingA, rcd?.type, rcd?.mA].join(' ');
  return b !== null && keyOf(a) === keyOf(b);
}
