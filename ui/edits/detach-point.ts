import type { Draft } from 'immer';
import { connectedPoints } from '#drawing/label-of.ts';
import type { Connection, Feed, Scheme, Tap } from '#model/scheme.ts';

/**
 * The wanted points that a connection brings the circuit to, in its own order; a unit that is a point is the first.
 * A spur that is closed into the ring brings it to none: its end was there before.
 */
export const joinedBy = (connection: Connection): readonly string[] =>
  connection.kind === 'close-spur' ? [] : connectedPoints(connection);

/** The connection of a scheme that a point is joined by; null when it is not joined. */
export const connectionOf = (scheme: Scheme, pointId: string): Connection | null =>
  scheme.connections.find((connection) => joinedBy(connection).includes(pointId)) ?? null;

/** Takes a point out of a row of feeds: what it fed is fed from where it was fed itself. */
export function feedsWithout(feeds: readonly Feed[], pointId: string): Feed[] {
  const source = feeds.find(({ to }) => to === pointId)?.from;
  return feeds.flatMap((feed) => {
    if (feed.to === pointId) return [];
    return [feed.from === pointId && source !== undefined ? { ...feed, from: source } : { ...feed }];
  });
}

/** The connection without the point; null when nothing is left of it. */
function without(connection: Draft<Connection>, pointId: string): Draft<Connection> | null {
  switch (connection.kind) {
    case 'spur':
      return connection.to === pointId ? null : connection;
    case 'fused-spur':
      if (connection.unit === pointId) return null;
      connection.feeds = feedsWithout(connection.feeds, pointId);
      return connection.feeds.length === 0 && typeof connection.unit !== 'string' ? null : connection;
    case 'fuse-down':
      if (connection.unit === pointId) return null;
      connection.feeds = feedsWithout(connection.feeds, pointId);
      return connection;
    case 'radial':
      connection.feeds = feedsWithout(connection.feeds, pointId);
      return connection.feeds.length === 0 ? null : connection;
    case 'ring-extension':
      connection.through = connection.through.filter((id) => id !== pointId);
      return connection.through.length === 0 ? null : connection;
    case 'close-spur':
      return connection.point === pointId ? null : connection;
  }
}

const isTapOf = (tap: Tap, pointId: string): boolean => 'point' in tap && tap.point === pointId;

/** Where a point of the scheme takes its supply: what hangs on it is hung there once it goes. */
function sourceOf(scheme: Scheme, pointId: string): Tap | null {
  const connection = connectionOf(scheme, pointId);
  if (connection === null) return null;
  if (connection.kind === 'spur' || connection.kind === 'fused-spur') return connection.from;
  return null;
}

/** Pinned runs that end at the point go with it. */
function dropRunsOf(connection: Draft<Connection>, pointId: string): void {
  if (connection.runs === undefined) return;
  const ends = (end: object): boolean => 'point' in end && end.point === pointId;
  const kept = connection.runs.filter(({ from, to }) => !ends(from) && !ends(to));
  if (kept.length > 0) connection.runs = kept;
  else delete connection.runs;
}

/**
 * Takes a point out of a scheme: its connection loses it, or goes when nothing is left of it; what was joined on from
 * the point is joined on from where the point was, or goes too where that cannot be told. Locks follow.
 *
 * @param options.isJoinedAgain the point comes back in another way: what is joined on from it stays there.
 */
export function detachPoint(
  scheme: Draft<Scheme>,
  pointId: string,
  options: { readonly isJoinedAgain: boolean } = { isJoinedAgain: false },
): void {
  const source = sourceOf(scheme, pointId);
  const kept = scheme.connections.flatMap((connection): Draft<Connection>[] => {
    const left = without(connection, pointId);
    if (left === null) return [];
    dropRunsOf(left, pointId);
    const hangsOnIt = (left.kind === 'spur' || left.kind === 'fused-spur') && isTapOf(left.from, pointId);
    if (hangsOnIt && !options.isJoinedAgain) {
      if (source === null) return [];
      left.from = source as Draft<Tap>;
      delete left.runs;
    }
    return [left];
  });
  scheme.connections = kept;
  const ids = new Set(kept.map(({ id }) => id));
  scheme.locks = scheme.locks.filter((id) => ids.has(id));
}
