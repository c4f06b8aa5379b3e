import type { NodeId } from '../circuit/network.ts';
import type { CircuitShape, NodePlace } from '../circuit/shape.ts';
import type { FusedUnit } from './things.ts';

type Before = Pick<NodePlace, 'fuseA' | 'behindUnit'>;

const NONE: Before = { fuseA: null, behindUnit: null };

/**
 * The circuits with the fuses that their units get: a new unit for which the job names none has that of its load, which
 * the wiring alone does not tell. All that judges by what is before a point reads it here.
 */
export function withChosenFuses(
  shapes: ReadonlyMap<string, CircuitShape>,
  units: readonly FusedUnit[],
): ReadonlyMap<string, CircuitShape> {
  const unitByLoad = new Map(units.map((unit) => [unit.loadNode, unit]));
  if (units.every(({ fuseSource }) => fuseSource === 'given' || fuseSource === 'unknown')) return shapes;
  return new Map([...shapes].map(([id, shape]) => [id, { ...shape, places: placesOf(shape, unitByLoad) }]));
}

function placesOf(
  { places }: CircuitShape,
  unitByLoad: ReadonlyMap<NodeId, FusedUnit>,
): readonly NodePlace[] {
  const byNode = new Map(places.map((place) => [place.nodeId, place]));
  const before = new Map<NodeId, Before>();
  const beforeOf = (place: NodePlace): Before => {
    const known = before.get(place.nodeId);
    if (known !== undefined) return known;
    const way = place.behindUnit === null ? undefined : byNode.get(place.upstreamNode ?? '');
    const answer =
      place.behindUnit === null ? NONE : smaller(way ? beforeOf(way) : NONE, unitByLoad.get(place.nodeId));
    before.set(place.nodeId, answer);
    return answer;
  };
  return places.map((place) => ({ ...place, ...beforeOf(place) }));
}

/** The smaller of the fuse passed so far and this one; one of unknown rating counts only where there is no other. */
function smaller(passed: Before, unit: FusedUnit | undefined): Before {
  if (unit === undefined) return passed;
  const { fuseA, loadNode } = unit;
  const isSmaller = fuseA !== null && (passed.fuseA === null || fuseA < passed.fuseA);
  return passed.behindUnit === null || isSmaller ? { fuseA, behindUnit: loadNode } : passed;
}
