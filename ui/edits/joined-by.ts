import { connectedPoints } from '#drawing/label-of.ts';
import type { Connection, Scheme } from '#model/scheme.ts';

/**
 * The wanted points that a connection brings the circuit to, in its own order; a unit that is a point is the first.
 * A spur that is closed into the ring brings it to none: its end was there before.
 */
export const joinedBy = (connection: Connection): readonly string[] =>
  connection.kind === 'close-spur' ? [] : connectedPoints(connection);

/** The connection of a scheme that a point is joined by; null when it is not joined. */
export const connectionOf = (scheme: Scheme, pointId: string): Connection | null =>
  scheme.connections.find((connection) => joinedBy(connection).includes(pointId)) ?? null;
