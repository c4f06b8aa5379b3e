import type { End } from '#model/cable.ts';
import type { Connection, Scheme } from '#model/scheme.ts';

/** What is leaving a job, by id. */
export interface Leaving {
  readonly points: ReadonlySet<string>;
  readonly legs: ReadonlySet<string>;
  readonly circuits: ReadonlySet<string>;
  readonly boards: ReadonlySet<string>;
}

/** True where a cable's end is at something that leaves. */
export const endLeaves = (end: End, { points, circuits }: Leaving): boolean =>
  'point' in end ? points.has(end.point) : circuits.has(end.origin);

/**
 * A scheme without what leaves: connections that hang on it go, those that only pass through it are mended, and
 * locks and remedies on what went go with it.
 */
export function schemeWithout(scheme: Scheme, leaving: Leaving): void {
  scheme.connections = scheme.connections.flatMap((connection) => {
    const kept = keptConnection(connection, leaving);
    return kept === null ? [] : [withoutRuns(kept, leaving)];
  });
  scheme.remedies = scheme.remedies.filter(
    ({ at }) =>
      at === undefined || !(leaving.points.has(at) || leaving.circuits.has(at) || leaving.boards.has(at)),
  );
  scheme.locks = scheme.locks.filter((id) => scheme.connections.some((connection) => connection.id === id));
}

function keptConnection(connection: Connection, leaving: Leaving): Connection | null {
  switch (connection.kind) {
    case 'spur':
      return tapLeaves(connection.from, leaving) || leaving.points.has(connection.to) ? null : connection;
    case 'fused-spur':
      return tapLeaves(connection.from, leaving) ? null : keptBranch(connection, leaving);
    case 'fuse-down':
      return leaving.legs.has(connection.leg) ? null : keptBranch(connection, leaving);
    case 'ring-extension':
      return keptExtension(connection, leaving);
    case 'radial': {
      if (leaving.boards.has(connection.board)) return null;
      const feeds = mendedFeeds(connection.feeds, leaving);
      return feeds.length === 0 && connection.feeds.length > 0 ? null : { ...connection, feeds };
    }
    case 'close-spur':
      return leaving.points.has(connection.point) || leaving.legs.has(connection.leg) ? null : connection;
  }
}

type Tap = Extract<Connection, { kind: 'spur' }>['from'];
type Branch = Extract<Connection, { kind: 'fused-spur' | 'fuse-down' }>;
type Extension = Extract<Connection, { kind: 'ring-extension' }>;
type Feed = Branch['feeds'][number];

function tapLeaves(tap: Tap, { points, legs, circuits }: Leaving): boolean {
  if ('point' in tap) return points.has(tap.point);
  return 'leg' in tap ? legs.has(tap.leg) : circuits.has(tap.origin);
}

/** A fused branch goes with its unit, and with the last point that a unit of its own was there for. */
function keptBranch<B extends Branch>(branch: B, leaving: Leaving): B | null {
  if (typeof branch.unit === 'string' && leaving.points.has(branch.unit)) return null;
  const feeds = mendedFeeds(branch.feeds, leaving);
  const isEmptied = feeds.length === 0 && branch.feeds.length > 0;
  const isForFeeds = branch.kind === 'fused-spur' && typeof branch.unit !== 'string';
  return isEmptied && isForFeeds ? null : { ...branch, feeds };
}

/** Without its leg an extension still says where it is; its cuts in that leg become the neighbours' terminals. */
function keptExtension(extension: Extension, leaving: Leaving): Extension | null {
  if (leaving.circuits.has(extension.circuit)) return null;
  if (extension.between.some((end) => endLeaves(end, leaving))) return null;
  const through = extension.through.filter((id) => !leaving.points.has(id));
  if (through.length === 0 && extension.through.length > 0) return null;
  if (extension.leg === undefined || !leaving.legs.has(extension.leg)) return { ...extension, through };
  const { leg: _gone, ...others } = extension;
  return { ...others, through, out: { how: 'terminals' }, back: { how: 'terminals' } };
}

/** Feeds without the points that leave: what a leaving point fed is fed from where that point was. */
function mendedFeeds(feeds: readonly Feed[], { points }: Leaving): Feed[] {
  const sourceOf = new Map(feeds.map(({ from, to }) => [to, from]));
  return feeds
    .filter(({ to }) => !points.has(to))
    .flatMap(({ from, to }) => {
      const source = stayingSource(from, sourceOf, points);
      return source === null ? [] : [{ from: source, to }];
    });
}

/** The nearest source upstream that stays; null where the feeds lead nowhere or in a circle. */
function stayingSource(
  from: string,
  sourceOf: ReadonlyMap<string, string>,
  leaving: ReadonlySet<string>,
): string | null {
  const passed = new Set<string>();
  let source: string | undefined = from;
  while (source !== undefined && leaving.has(source)) {
    if (passed.has(source)) return null;
    passed.add(source);
    source = sourceOf.get(source);
  }
  return source ?? null;
}

/** Runs pinned by hand go with the ends that they were pinned between. */
function withoutRuns(connection: Connection, leaving: Leaving): Connection {
  if (connection.runs === undefined) return connection;
  const runs = connection.runs.filter(({ from, to }) => !endLeaves(from, leaving) && !endLeaves(to, leaving));
  if (runs.length === connection.runs.length) return connection;
  if (runs.length > 0) return { ...connection, runs };
  const { runs: _gone, ...others } = connection;
  return others;
}
