import type { Worked } from '#engine/connections/worked.ts';
import type { Connection, Feed, Scheme } from '#model/scheme.ts';
import type { JobEdit } from '../job-events.ts';
import { newId } from '../new-id.ts';
import { spursBehind } from './fuse-before.ts';
import { hiddenJoint } from './join-point.ts';
import { type SourceLeg, sourceLegs } from './join-sources.ts';
import { handedOn } from './one-branch.ts';

/** An unfused spur that is there already, with what can be done about it. */
export interface FoundSpur {
  readonly circuitId: string;
  /** The point of the ring that it starts from; null where it starts at the board or at a joint. */
  readonly sourceId: string | null;
  /** Its points, from the ring outwards. */
  readonly pointIds: readonly string[];
  /** The leg by which it starts; null where no leg of it is recorded. */
  readonly legId: string | null;
  /** True where nothing but fused units is on it: what is beyond them has a fuse. */
  readonly isFused: boolean;
  /** Legs of the ring at its source, by which it can be closed, the one that comes nearest to its end first. */
  readonly closingLegs: readonly SourceLeg[];
}

/** What a scheme does about an existing spur. */
export type SpurMending = 'none' | 'fuse' | 'close';

/**
 * The unfused spurs of all circuits as found, by the legs, and after them those that only their plates tell of.
 *
 * @param worked the house as found.
 */
export function foundSpurs(worked: Worked): readonly FoundSpur[] {
  return [...tracedSpurs(worked), ...claimedSpurs(worked)];
}

const isUnit = ({ job }: Worked, pointId: string): boolean =>
  job.points.some(({ id, kind }) => id === pointId && kind === 'fused-unit');

function tracedSpurs(worked: Worked): readonly FoundSpur[] {
  const isPoint = (id: string): boolean => worked.job.points.some((point) => point.id === id);
  return [...worked.foundShapes.values()].flatMap(({ spurs, places, ringEdges }) =>
    spurs.map((spur): FoundSpur => {
      const depth = (id: string): number => places.find(({ nodeId }) => nodeId === id)?.depth ?? 0;
      const pointIds = spur.accessoryNodes.filter(isPoint).toSorted((a, b) => depth(a) - depth(b));
      const start = worked.found.edges.find(
        ({ id, from, to }) => spur.edgeIds.includes(id) && (from === spur.rootNode || to === spur.rootNode),
      );
      const atSource = new Set(
        ringEdges
          .filter(({ from, to }) => from === spur.rootNode || to === spur.rootNode)
          .map(({ legId }) => legId),
      );
      return {
        circuitId: spur.circuitId,
        sourceId: isPoint(spur.rootNode) ? spur.rootNode : null,
        pointIds,
        legId: start?.legId ?? null,
        isFused: pointIds.length > 0 && pointIds.every((id) => isUnit(worked, id)),
        closingLegs: sourceLegs(worked, pointIds.at(-1) ?? '').filter(({ legId }) => atSource.has(legId)),
      };
    }),
  );
}

/** A spur of which no leg is recorded: its plate says that it is one. */
function claimedSpurs(worked: Worked): readonly FoundSpur[] {
  return [...worked.foundShapes.values()].flatMap(({ circuitId, places }) =>
    places
      .filter(({ role }) => role === 'claimed-spur')
      .map(
        ({ nodeId }): FoundSpur => ({
          circuitId,
          sourceId: null,
          pointIds: [nodeId],
          legId: null,
          isFused: isUnit(worked, nodeId),
          closingLegs: [],
        }),
      ),
  );
}

/** The connection by which a scheme mends a spur; null when it leaves it alone. */
export const mendingOf = (scheme: Scheme, spur: FoundSpur): Connection | null =>
  scheme.connections.find(
    (connection) =>
      (connection.kind === 'fuse-down' && connection.leg === spur.legId) ||
      (connection.kind === 'close-spur' && spur.pointIds.includes(connection.point)),
  ) ?? null;

/** Why a spur cannot be mended so; null where it can. */
export function whyNotMend(spur: FoundSpur, how: 'fuse' | 'close'): string | null {
  if (spur.legId === null) return 'no cable of it is recorded';
  if (spur.pointIds.length === 0) return 'no point is on it';
  if (how === 'fuse') return spur.isFused ? 'it has a fuse already' : null;
  return spur.closingLegs.length === 0 ? 'no cable of the ring at its source' : null;
}

/** The spur as found that a point is on; null for any other point. */
export const spurWith = (spurs: readonly FoundSpur[], pointId: string): FoundSpur | null =>
  spurs.find(({ pointIds }) => pointIds.includes(pointId)) ?? null;

/** New spurs of the scheme that hang on the spur's points, as feeds behind its unit, each after what it hangs on. */
function hangingOn(scheme: Scheme, spur: FoundSpur): readonly (Feed & { readonly connectionId: string })[] {
  return spur.pointIds.flatMap((pointId) => spursBehind(scheme, pointId));
}

/** What a fused-down spur keeps of the cables and ways of the spurs that it takes along. */
function handedBy(scheme: Scheme, spur: FoundSpur) {
  const taken = hangingOn(scheme, spur);
  const spurs = taken.flatMap(({ connectionId }) =>
    scheme.connections.filter((one) => one.kind === 'spur').filter(({ id }) => id === connectionId),
  );
  return handedOn(spurs, new Set([...spur.pointIds, ...taken.map(({ to }) => to)]));
}

function fusedDown(scheme: Scheme, spur: FoundSpur, id: string): Connection | null {
  if (spur.legId === null) return null;
  const feeds = hangingOn(scheme, spur).map(({ from, to }) => ({ from, to }));
  const { kept } = handedBy(scheme, spur);
  return { id, kind: 'fuse-down', leg: spur.legId, unit: { fuseA: 13 }, feeds, ...kept };
}

function closed(spur: FoundSpur, id: string): Connection | null {
  const [leg] = spur.closingLegs;
  const point = spur.pointIds.at(-1);
  if (leg === undefined || point === undefined) return null;
  const back = { how: 'joint', alongMm: leg.alongMm, joint: hiddenJoint } as const;
  return { id, kind: 'close-spur', point, leg: leg.legId, back };
}

/** What hung behind the unit of a fused-down spur hangs on as spurs again: it stays joined, and the checks tell. */
function asSpurs(connection: Connection, spur: FoundSpur): readonly Connection[] {
  if (connection.kind !== 'fuse-down') return [];
  const end = spur.pointIds.at(-1) ?? '';
  const { cable, feeds, unit } = connection;
  return feeds.map(({ from, to }): Connection => {
    const point = from === 'unit' || from === unit ? end : from;
    const runs = connection.runs?.filter(
      (run) => 'point' in run.from && run.from.point === point && 'point' in run.to && run.to.point === to,
    );
    return {
      id: newId(),
      kind: 'spur',
      from: { point },
      to,
      ...(cable === undefined ? {} : { cable }),
      ...(runs === undefined || runs.length === 0 ? {} : { runs }),
    };
  });
}

const doneWords: Readonly<Record<SpurMending, string>> = {
  none: 'Leave the spur to {name} as it is',
  fuse: 'Put a fused unit before {name}',
  close: 'Close the spur to {name} into the ring',
};

/**
 * Mends an existing spur in another way than now. Fused down it takes along what the scheme hangs on it; left alone
 * again, that hangs on it as spurs. The label says what of the cables and ways chosen by hand cannot stay.
 *
 * @param name what people call the spur's points.
 */
export function mendSpur(scheme: Scheme, spur: FoundSpur, how: SpurMending, name: string): JobEdit {
  const id = newId();
  return {
    label: doneWords[how].replace('{name}', name) + (how === 'fuse' ? handedBy(scheme, spur).lostWords : ''),
    change: (job) => {
      const changed = job.schemes.find((one) => one.id === scheme.id);
      if (changed === undefined) return;
      const before = mendingOf(changed, spur);
      const back = before === null ? [] : asSpurs(before, spur);
      const rest = [...changed.connections.filter((one) => one.id !== before?.id), ...back];
      const now: Scheme = { ...changed, connections: rest };
      const made = how === 'fuse' ? fusedDown(now, spur, id) : how === 'close' ? closed(spur, id) : null;
      const taken = new Set(how === 'fuse' ? hangingOn(now, spur).map((one) => one.connectionId) : []);
      const kept = rest.filter((one) => !taken.has(one.id));
      // Mended first: what is joined on behind finds the spur as it then is.
      changed.connections = made === null ? kept : [made, ...kept];
      changed.locks = changed.locks.filter((lock) => changed.connections.some((one) => one.id === lock));
    },
  };
}
