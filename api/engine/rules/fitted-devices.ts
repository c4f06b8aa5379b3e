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
export function exchangesBoard({ scheme }: Facts, boardId?: string): boolean {
  return (scheme?.remedies ?? []).some(
    ({ kind, at }) => kind === 'new-board' && (boardId === undefined || at === undefined || at === boardId),
  );
}

/** The ids of the connections that make new circuits, in the scheme's order. */
export function newCircuitIds({ scheme }: Facts): readonly string[] {
  return (scheme?.connections ?? []).filter(({ kind }) => kind === 'radial').map(({ id }) => id);
}

/** Whether the scheme renews the bond of a service: by its name, or all of them where none is named. */
export function renewsBond({ scheme }: Facts, service: string): boolean {
  return (scheme?.remedies ?? []).some(
    ({ kind, at }) => kind === 'bond-upgrade' && (at === undefined || at === service),
  );
}
