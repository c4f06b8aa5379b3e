import { produce } from 'immer';
import type { Worked } from '#engine/connections/worked.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { workHouse, workScheme } from '#engine/schemes/work-scheme.ts';
import { defaultLengthAllowances } from '#engine/ways/length-allowances.ts';
import type { Run } from '#engine/ways/run.ts';
import type { Connection, Scheme } from '#model/scheme.ts';
import type { JobEdit } from '../job-events.ts';
import { changeConnection } from './connections.ts';
import { maySpurFrom, sourcePoints } from './join-sources.ts';
import { connectionOf, joinedBy } from './joined-by.ts';

/** Less new cable than this is not worth another source, mm. Common practice, no source. */
const WORTH_MM = 500;

/** A place to join on at that is nearer than the one that a scheme has. */
export interface NearerSource {
  /** The point to join on at. */
  readonly sourceId: string;
  /** By how much less new cable, ends and slack included, mm. */
  readonly savedMm: number;
  /** Joins on there: what hangs on the point itself stays as it is. */
  readonly edit: JobEdit;
}

type Tapped = Extract<Connection, { readonly kind: 'spur' | 'fused-spur' }>;

/** The connection that brings the cable from a point of the house to this one first; null where there is none. */
function tappedFor(scheme: Scheme, pointId: string): (Tapped & { readonly from: { point: string } }) | null {
  const connection = connectionOf(scheme, pointId);
  if (connection?.kind !== 'spur' && connection?.kind !== 'fused-spur') return null;
  if (!('point' in connection.from) || joinedBy(connection)[0] !== pointId) return null;
  return scheme.locks.includes(connection.id) ? null : { ...connection, from: connection.from };
}

/** New cable of a connection, mm; null where a length is not known. */
function cableMm(runs: readonly Run[], connectionId: string): number | null {
  const own = runs.filter((run) => run.connectionId === connectionId);
  return own.reduce<number | null>(
    (sum, { lengthMm }) => (sum === null || lengthMm === null ? null : sum + lengthMm),
    own.length === 0 ? null : 0,
  );
}

/** The nearest other point of the same circuit at which the rules let a spur begin; null for none. */
function bestOf(
  found: Worked,
  scheme: Scheme,
  { id, from }: Tapped & { from: { point: string } },
  pointId: string,
) {
  const others = { ...scheme, connections: scheme.connections.filter((one) => one.id !== id) };
  const sources = sourcePoints(found, others, pointId);
  const now = sources.find((source) => source.pointId === from.point);
  if (now === undefined) return null;
  const best = sources.find(
    (source) => maySpurFrom(source) && source.circuitId === now.circuitId && source.awayMm !== null,
  );
  return best === undefined || best === now ? null : best;
}

/**
 * Whether a wanted point that was moved would be joined on with less new cable at another point of the same circuit.
 *
 * @param found the house as found.
 * @returns null where it is not joined on at a point, where that was locked, where a length is not known, or where
 * hardly any cable would be saved.
 */
export function nearerSource(found: Worked, shown: SchemeEstimate, pointId: string): NearerSource | null {
  const { job } = shown.worked;
  const scheme = job.schemes.find(({ id }) => id === shown.id);
  const connection = scheme === undefined ? null : tappedFor(scheme, pointId);
  if (scheme === undefined || connection === null) return null;
  const best = bestOf(found, scheme, connection, pointId);
  const nowMm = cableMm(shown.runs, connection.id);
  if (best === null || nowMm === null) return null;
  const label = (id: string): string => job.points.find((point) => point.id === id)?.label ?? 'a point';
  const edit = changeConnection(
    { schemeId: scheme.id, connectionId: connection.id },
    connection.kind,
    { label: `Join ${label(pointId)} on at ${label(best.pointId)}`, ends: true },
    (draft) => {
      draft.from = { point: best.pointId };
    },
  );
  const joined = produce(job, edit.change).schemes.find(({ id }) => id === scheme.id) ?? scheme;
  const house = workHouse(job, shown.worked.tariff, defaultLengthAllowances);
  const thenMm = cableMm(workScheme(house, joined).runs, connection.id);
  if (thenMm === null || nowMm - thenMm < WORTH_MM) return null;
  return { sourceId: best.pointId, savedMm: nowMm - thenMm, edit };
}
