import type { Draft } from 'immer';
import { connectedPoints } from '#drawing/label-of.ts';
import type { Connection, Feed, Scheme } from '#model/scheme.ts';
import { hangElsewhere } from './hang-elsewhere.ts';

/** Takes a point out of a row of feeds: what it fed is fed from where it was fed itself, or goes where that is not told. */
function feedsWithout(feeds: readonly Feed[], pointId: string): Feed[] {
  const source = feeds.find(({ from, to }) => to === pointId && from !== pointId)?.from;
  return feeds.flatMap((feed) => {
    if (feed.to === pointId) return [];
    if (feed.from !== pointId) return [{ ...feed }];
    return source === undefined ? [] : [{ ...feed, from: source }];
  });
}

/** Whether a connection has to do with a point otherwise than by being joined on at it. */
const isPartOf = (connection: Connection, pointId: string): boolean =>
  connectedPoints(connection).includes(pointId) ||
  ('feeds' in connection && connection.feeds.some(({ from }) => from === pointId));

/** The connection without the point; null when nothing is left of it. */
function without(connection: Draft<Connection>, pointId: string): Draft<Connection> | null {
  if (!isPartOf(connection, pointId)) return connection;
  switch (connection.kind) {
    case 'spur':
    case 'close-spur':
      return null;
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
  }
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
 * the point is joined on from where the point was, never ahead of a fuse that it was behind, or goes too where that
 * cannot be told. Locks follow.
 *
 * @param options.isJoinedAgain the point comes back in another way: what is joined on from it stays there.
 */
export function detachPoint(
  scheme: Draft<Scheme>,
  pointId: string,
  options: { readonly isJoinedAgain: boolean } = { isJoinedAgain: false },
): void {
  if (!options.isJoinedAgain) hangElsewhere(scheme, pointId);
  const kept = scheme.connections.flatMap((connection): Draft<Connection>[] => {
    const left = without(connection, pointId);
    if (left === null) return [];
    dropRunsOf(left, pointId);
    return [left];
  });
  scheme.connections = kept;
  const ids = new Set(kept.map(({ id }) => id));
  scheme.locks = scheme.locks.filter((id) => ids.has(id));
}
