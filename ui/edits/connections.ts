import type { Draft } from 'immer';
import type { Place } from '#model/installation.ts';
import type { Connection } from '#model/scheme.ts';
import type { JobEdit } from '../job-events.ts';
import { detachPoint } from './detach-point.ts';
import { joinedBy } from './joined-by.ts';

/** Where a connection is. */
export interface ConnectionAt {
  readonly schemeId: string;
  readonly connectionId: string;
}

/**
 * Changes one connection. Ways pinned by hand are dropped when `ends` says that a cable's end moves, since they
 * would lead to where it was.
 */
export function changeConnection<K extends Connection['kind']>(
  { schemeId, connectionId }: ConnectionAt,
  kind: K,
  options: { readonly label: string; readonly ends?: boolean },
  change: (connection: Draft<Extract<Connection, { kind: K }>>) => void,
): JobEdit {
  return {
    label: options.label,
    change: (job) => {
      const connection = job.schemes
        .find(({ id }) => id === schemeId)
        ?.connections.find(({ id }) => id === connectionId);
      if (connection?.kind !== kind) return;
      change(connection as Draft<Extract<Connection, { kind: K }>>);
      if (options.ends === true) delete connection.runs;
    },
  };
}

/** Changes what every kind of connection has: its cable; null is the usual one. */
export const setConnectionCable = (
  { schemeId, connectionId }: ConnectionAt,
  cable: Connection['cable'] | null,
): JobEdit => ({
  label: 'Change the cable',
  change: (job) => {
    const connection = job.schemes
      .find(({ id }) => id === schemeId)
      ?.connections.find(({ id }) => id === connectionId);
    if (connection === undefined) return;
    if (cable === null || cable === undefined) delete connection.cable;
    else connection.cable = cable;
  },
});

/** Says where the unit goes that a connection brings along; null leaves it beside what feeds it. */
export const setUnitPlace = (
  at: ConnectionAt,
  kind: 'fused-spur' | 'fuse-down',
  place: Place | null,
): JobEdit =>
  changeConnection(at, kind, { label: 'Place the fused unit', ends: true }, ({ unit }) => {
    if (typeof unit === 'string') return;
    if (place === null) delete unit.place;
    else unit.place = { ...place };
  });

/** Locks a connection, so that no search changes it, or lets it go. */
export const setLock = ({ schemeId, connectionId }: ConnectionAt, locked: boolean): JobEdit => ({
  label: locked ? 'Lock a connection' : 'Unlock a connection',
  change: (job) => {
    const scheme = job.schemes.find(({ id }) => id === schemeId);
    if (scheme === undefined) return;
    scheme.locks = scheme.locks.filter((id) => id !== connectionId);
    const isThere = scheme.connections.some(({ id }) => id === connectionId);
    if (locked && isThere) scheme.locks.push(connectionId);
  },
});

/** Takes a connection out; what is joined on from its points goes with it or is joined on elsewhere. */
export const removeConnection = ({ schemeId, connectionId }: ConnectionAt, name: string): JobEdit => ({
  label: `Take out: ${name}`,
  change: (job) => {
    const scheme = job.schemes.find(({ id }) => id === schemeId);
    const connection = scheme?.connections.find(({ id }) => id === connectionId);
    if (scheme === undefined || connection === undefined) return;
    for (const pointId of joinedBy(connection)) detachPoint(scheme, pointId);
    scheme.connections = scheme.connections.filter(({ id }) => id !== connectionId);
    scheme.locks = scheme.locks.filter((id) => id !== connectionId);
  },
});

/** The points of a row of feeds in the order of the cable; one that branches is told breadth first. */
export function orderOfFeeds(connection: Connection): readonly string[] {
  if (connection.kind === 'ring-extension') return connection.through;
  return 'feeds' in connection ? connection.feeds.map(({ to }) => to) : [];
}

/** Puts the points of a connection into another order: one after another, each fed from the one before. */
export const reorderPoints = (at: ConnectionAt, order: readonly string[]): JobEdit => ({
  label: 'Change the order of the points',
  change: (job) => {
    const connection = job.schemes
      .find(({ id }) => id === at.schemeId)
      ?.connections.find(({ id }) => id === at.connectionId);
    if (connection === undefined) return;
    delete connection.runs;
    if (connection.kind === 'ring-extension') connection.through = [...order];
    else if (connection.kind === 'radial')
      connection.feeds = order.map((to, i) => ({ from: order[i - 1] ?? 'origin', to }));
    else if (connection.kind === 'fused-spur' || connection.kind === 'fuse-down')
      connection.feeds = order.map((to, i) => ({ from: order[i - 1] ?? 'unit', to }));
  },
});
