import { loadNodeOf } from '../circuit/load-side.ts';
import type { NodePlace } from '../circuit/shape.ts';
import type { Worked } from '../connections/worked.ts';
import { NOMINAL_V } from './spur-load.ts';

/** What limits the current of a group of new points, and what of it their named loads take. */
export interface RoomLeft {
  /** The new points that share the limit, in the job's order. */
  readonly pointIds: readonly string[];
  /** `fuse`: a fused unit before them. `device`: the circuit's own, shared with all else on it. */
  readonly limitedBy: 'fuse' | 'device';
  /** The unit's node or the circuit's id. */
  readonly limitId: string;
  /** Null where the rating is not known. */
  readonly limitA: number | null;
  /** What the loads named at these points draw at 230 V, as if all ran at once. */
  readonly namedA: number;
  /** How many of the points have no load named: what they will draw is not known. */
  readonly unnamed: number;
  /** Those of the points that are on an unfused spur of a ring: no further outlet may be joined on after them. */
  readonly onSpurs: readonly string[];
  /** limit − named; negative when the named loads want more. Null where the limit is not known. */
  readonly leftA: number | null;
}

interface Limit {
  readonly limitedBy: RoomLeft['limitedBy'];
  readonly limitId: string;
  readonly limitA: number | null;
}

interface Group {
  readonly limit: Limit;
  readonly pointIds: string[];
  readonly onSpurs: string[];
  watts: number;
  unnamed: number;
}

function limitOf(worked: Worked, place: NodePlace): Limit {
  if (place.behindUnit !== null) return { limitedBy: 'fuse', limitId: place.behindUnit, limitA: place.fuseA };
  const circuit = worked.proposed.circuits.find(({ id }) => id === place.circuitId);
  return { limitedBy: 'device', limitId: place.circuitId, limitA: circuit?.device?.ratingA ?? null };
}

/**
 * What room each group of new points has: those behind one fuse share it, the others share their circuit's device.
 * Plug-in loads are as named and at once, so that this is what is asked for, not what will flow.
 *
 * @returns groups in the order of their first point in the job; wanted points that are not wired are in none.
 */
export function roomLeft(worked: Worked): readonly RoomLeft[] {
  const places = new Map(
    [...worked.shapes.values()].flatMap(({ places: all }) =>
      all.map((place) => [place.nodeId, place] as const),
    ),
  );
  const groups = new Map<string, Group>();
  for (const point of worked.job.points) {
    if (point.status !== 'wanted') continue;
    const place = places.get(loadNodeOf(point.id)) ?? places.get(point.id);
    if (place === undefined || place.role === 'unreached') continue;
    const limit = limitOf(worked, place);
    const key = `${limit.limitedBy} ${limit.limitId}`;
    const group = groups.get(key) ?? { limit, pointIds: [], onSpurs: [], watts: 0, unnamed: 0 };
    group.pointIds.push(point.id);
    if (place.role === 'unfused-spur' || place.role === 'claimed-spur') group.onSpurs.push(point.id);
    if (point.load === undefined) group.unnamed++;
    else group.watts += point.load.watts;
    groups.set(key, group);
  }
  return [...groups.values()].map(({ limit, pointIds, onSpurs, watts, unnamed }) => {
    const namedA = watts / NOMINAL_V;
    return {
      ...limit,
      pointIds,
      onSpurs,
      namedA,
      unnamed,
      leftA: limit.limitA === null ? null : limit.limitA - namedA,
    };
  });
}
