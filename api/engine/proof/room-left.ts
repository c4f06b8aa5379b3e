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
  /** What the loads named at the circuit's other points draw, found ones and those behind fuses too; 0 for a fuse's room. */
  readonly restA: number;
  /** How many of the points have no load named: what they will draw is not known. */
  readonly unnamed: number;
  /** Those of the points that are on an unfused spur of a ring: no further outlet may be joined on after them. */
  readonly onSpurs: readonly string[];
  /** limit − named − rest; negative when the named loads want more. Null where the limit is not known. */
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

/** Where each point takes its current from: a fused unit's load side, any other point's own terminals; null when not wired. */
export function placesOfPoints({ shapes }: Worked): (pointId: string) => NodePlace | null {
  const places = new Map(
    [...shapes.values()].flatMap(({ places: all }) => all.map((place) => [place.nodeId, place] as const)),
  );
  return (pointId) => places.get(loadNodeOf(pointId)) ?? places.get(pointId) ?? null;
}

/** What the loads named on each circuit come to, watts. */
function wattsByCircuit(
  { job }: Worked,
  placeOf: (pointId: string) => NodePlace | null,
): ReadonlyMap<string, number> {
  const watts = new Map<string, number>();
  for (const { id, load, status } of job.points) {
    const place = placeOf(id);
    if (load === undefined || status === 'removed' || place === null || place.role === 'unreached') continue;
    watts.set(place.circuitId, (watts.get(place.circuitId) ?? 0) + load.watts);
  }
  return watts;
}

/**
 * What room each group of new points has: those behind one fuse share it, the others share their circuit's device.
 * Plug-in loads are as named and at once, so that this is what is asked for, not what will flow.
 *
 * @returns groups in the order of their first point in the job; wanted points that are not wired are in none.
 */
export function roomLeft(worked: Worked): readonly RoomLeft[] {
  const placeOf = placesOfPoints(worked);
  const namedOn = wattsByCircuit(worked, placeOf);
  const groups = new Map<string, Group>();
  for (const point of worked.job.points) {
    if (point.status !== 'wanted') continue;
    const place = placeOf(point.id);
    if (place === null || place.role === 'unreached') continue;
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
    const allWatts = limit.limitedBy === 'device' ? (namedOn.get(limit.limitId) ?? watts) : watts;
    const restA = (allWatts - watts) / NOMINAL_V;
    return {
      ...limit,
      pointIds,
      onSpurs,
      namedA,
      restA,
      unnamed,
      leftA: limit.limitA === null ? null : limit.limitA - namedA - restA,
    };
  });
}
