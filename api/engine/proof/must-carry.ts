import type { Device } from '#model/installation.ts';
import { bindsAsRadial, bindsAsRing } from '../circuit/binds-as.ts';
import type { Network, NetworkEdge } from '../circuit/network.ts';
import { RING_CABLE_A } from '../circuit/ring-cable-limits.ts';
import type { CircuitShape, NodePlace } from '../circuit/shape.ts';
import { PLUG_A } from './spur-load.ts';

/** A rewireable fuse needs a cable of its rating over this. Source: BS 7671 433.1.202, from memory. */
const REWIREABLE_RATIO = 0.725;

/**
 * What a cable of a radial must carry before the first fuse, A, to a hundredth; null where nobody looked at the device: a
 * rewireable fuse asks more of the cable than the figure on it. Source: BS 7671 433.1.1, 433.1.202.
 */
export function deviceNeedsA(device: Device | null): number | null {
  if (device?.standard === undefined) return null;
  if (device.standard !== 'BS-3036') return device.ratingA;
  return Math.round((device.ratingA / REWIREABLE_RATIO) * 100) / 100;
}

/** What a new cable of a circuit must carry up to the first fuse, A; null where nobody can say by which rules it goes. */
export function circuitNeedsA(network: Pick<Network, 'circuits'>, shape: CircuitShape): number | null {
  if (bindsAsRing(shape)) return RING_CABLE_A;
  if (!bindsAsRadial(shape)) return null;
  return deviceNeedsA(network.circuits.find(({ id }) => id === shape.circuitId)?.device ?? null);
}

/** What a fuse lets through, A: where nobody looked the largest there is. */
export const fuseNeedsA = (fuseA: number | null | undefined): number => fuseA ?? PLUG_A;

/**
 * What every new cable must carry at the least, A, by the id of its edge; those that nobody can say it of are left out. Source: BS 7671
 * 433.1.204 for rings and their unfused spurs, 433.1.1 for what is behind a fuse and for radials.
 */
export function mustCarry(
  network: Network,
  shapes: ReadonlyMap<string, CircuitShape>,
): ReadonlyMap<string, number> {
  const placesByNode = new Map<string, PlaceIn[]>();
  for (const shape of shapes.values())
    for (const place of shape.places)
      placesByNode.set(place.nodeId, [...(placesByNode.get(place.nodeId) ?? []), { place, shape }]);
  return new Map(
    network.edges.flatMap((edge) => {
      if (edge.kind !== 'cable' || edge.state !== 'new') return [];
      const neededA = neededBy(network, edge, placesByNode);
      return neededA === null ? [] : [[edge.id, neededA] as const];
    }),
  );
}

interface PlaceIn {
  readonly place: NodePlace;
  readonly shape: CircuitShape;
}

function neededBy(
  network: Network,
  { from, to }: NetworkEdge,
  placesByNode: ReadonlyMap<string, readonly PlaceIn[]>,
): number | null {
  const ends = [from, to].flatMap((id) => placesByNode.get(id) ?? []);
  if (ends.length === 0) return null;
  if (ends.every(({ place }) => place.role === 'behind-fuse'))
    return Math.max(...ends.map(({ place }) => fuseNeedsA(place.fuseA)));
  const needs = [...new Set(ends.map(({ shape }) => shape))].map((shape) => circuitNeedsA(network, shape));
  return needs.reduce((most, each) => (most === null || each === null ? null : Math.max(most, each)), 0);
}
