import type { Draft } from 'immer';
import type { Connection, Scheme, Tap } from '#model/scheme.ts';
import { joinedBy } from './joined-by.ts';
import { isOfOneCable } from './one-branch.ts';

type Branch = Extract<Connection, { kind: 'fused-spur' | 'fuse-down' | 'radial' }>;
/** What is joined on at a point of the scheme. */
type Hanging = Extract<Connection, { kind: 'spur' | 'fused-spur' }>;

/** Where a point takes its supply: at a place to join on at, or where the feeds of a branch begin; null: not told. */
type Source = { readonly tap: Tap } | { readonly startOf: Draft<Branch> } | null;

const hangsOn = (connection: Connection, pointId: string): connection is Hanging =>
  (connection.kind === 'spur' || connection.kind === 'fused-spur') &&
  'point' in connection.from &&
  connection.from.point === pointId;

function sourceInBranch(branch: Draft<Branch>, pointId: string): Source {
  const from = branch.feeds.find(({ to }) => to === pointId)?.from;
  if (from === undefined) return null;
  if (from !== 'unit' && from !== 'origin') return { tap: { point: from } };
  // A cable that begins at a fused unit which is a point begins at its load side.
  if ('unit' in branch && typeof branch.unit === 'string') return { tap: { point: branch.unit } };
  return { startOf: branch };
}

/** The neighbour in the extension; of its last point the end of the leg that the ring goes back to. */
function sourceOnRing(extension: Extract<Connection, { kind: 'ring-extension' }>, pointId: string): Source {
  const { through, between } = extension;
  const at = through.indexOf(pointId);
  const neighbour = through[at - 1] ?? through[at + 1];
  if (neighbour !== undefined) return { tap: { point: neighbour } };
  const end = between.find((one) => 'point' in one);
  return { tap: end === undefined ? { origin: extension.circuit } : { point: end.point } };
}

function sourceOf(connection: Draft<Connection> | null, pointId: string): Source {
  switch (connection?.kind) {
    case 'spur':
      return { tap: connection.from };
    case 'fused-spur':
    case 'fuse-down':
    case 'radial':
      return sourceInBranch(connection, pointId);
    case 'ring-extension':
      return sourceOnRing(connection, pointId);
    default:
      return null;
  }
}

function joinOnAt(hanging: Draft<Hanging>, tap: Tap): void {
  hanging.from = { ...tap } as Draft<Tap>;
  delete hanging.runs;
}

/**
 * Brings what hung on a branch's first point to where the branch begins, which nothing can be joined on at: a spur
 * becomes one of its feeds; what has a fuse or a cable of its own hangs on the next point of the branch.
 *
 * @returns whether the hanging connection stays one of its own; null where it cannot stay at all.
 */
function bringToStart(branch: Draft<Branch>, hanging: Draft<Hanging>, pointId: string): boolean | null {
  const next = branch.feeds.find(({ to }) => to !== pointId)?.to;
  if (hanging.kind === 'spur' && (next === undefined || isOfOneCable(branch, hanging))) {
    if (hanging.cable !== undefined) branch.cable = hanging.cable;
    // Fed from the leaving point, as it was: it is then mended with the other feeds.
    branch.feeds.push({ from: pointId, to: hanging.to });
    return false;
  }
  if (next !== undefined) joinOnAt(hanging, { point: next });
  // Nothing is left of the branch, and its fuse is not missed before another fuse.
  else if (branch.kind === 'fused-spur') joinOnAt(hanging, branch.from);
  else return null;
  return true;
}

/** Hangs what is joined on at a point on what the point hangs on itself, before the point leaves the scheme. */
export function hangElsewhere(scheme: Draft<Scheme>, pointId: string): void {
  const own = scheme.connections.find((connection) => joinedBy(connection).includes(pointId)) ?? null;
  const source = sourceOf(own, pointId);
  scheme.connections = scheme.connections.filter((connection) => {
    if (!hangsOn(connection, pointId) || connection === own) return true;
    // Of a unit that leaves, only what has a fuse itself may hang where the unit did.
    const isUnit = own !== null && 'unit' in own && own.unit === pointId;
    if (isUnit) return hangWithOwnFuse(own, connection);
    if (source === null) return false;
    if ('startOf' in source) return bringToStart(source.startOf, connection, pointId) === true;
    if ('point' in source.tap && joinedBy(connection).includes(source.tap.point)) return false;
    joinOnAt(connection, source.tap);
    return true;
  });
}

function hangWithOwnFuse(own: Connection, hanging: Draft<Hanging>): boolean {
  if (own.kind !== 'fused-spur' || hanging.kind !== 'fused-spur') return false;
  joinOnAt(hanging, own.from);
  return true;
}
