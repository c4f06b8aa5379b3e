import type { UnfusedSpur } from '../circuit/shape.ts';
import type { Worked } from '../connections/worked.ts';

/** What a plug's largest fuse lets through. Source: BS 1363, BS 1362. */
export const PLUG_A = 13;

/** Nominal voltage at which watts become amperes. */
export const NOMINAL_V = 230;

/** An accessory that an unfused spur feeds. */
export interface SpurAccessory {
  readonly nodeId: string;
  readonly pointId: string | null;
  readonly kind: string;
  /** The most that can be drawn through it: 13 A a plug, the fuse of a unit, a fixed item's own current. */
  readonly possibleA: number;
  readonly isNew: boolean;
  /** Cables between it and the ring. */
  readonly depth: number;
}

/** What an unfused spur feeds. */
export interface SpurLoad {
  readonly spur: UnfusedSpur;
  /** From the ring outwards, found before new, ties by id. Switches and plates that only pass on are left out. */
  readonly accessories: readonly SpurAccessory[];
  readonly possibleA: number;
}

/** A switch or a plate that hands on to what it feeds is no accessory of its own. */
const handsOn: ReadonlySet<string> = new Set(['dp-switch', 'cooker-control', 'grid', 'blank', 'joint']);

/** What each unfused spur of a circuit feeds, in the order of the shape's spurs; none for an unknown circuit. */
export function spurLoads(worked: Worked, circuitId: string): readonly SpurLoad[] {
  return (worked.shapes.get(circuitId)?.spurs ?? []).map((spur) => spurLoad(worked, spur));
}

function spurLoad(worked: Worked, spur: UnfusedSpur): SpurLoad {
  const places = new Map(worked.shapes.get(spur.circuitId)?.places.map((place) => [place.nodeId, place]));
  const goesOn = new Set([...places.values()].map(({ upstreamNode }) => upstreamNode));
  const accessories = spur.accessoryNodes
    .map((nodeId) => accessoryAt(worked, nodeId, places.get(nodeId)?.depth ?? 0))
    .filter(({ kind, nodeId }) => kind !== 'joint' && !(handsOn.has(kind) && goesOn.has(nodeId)))
    .sort((a, b) => a.depth - b.depth || Number(a.isNew) - Number(b.isNew) || (a.nodeId < b.nodeId ? -1 : 1));
  return { spur, accessories, possibleA: accessories.reduce((sum, { possibleA }) => sum + possibleA, 0) };
}

function accessoryAt(worked: Worked, nodeId: string, depth: number): SpurAccessory {
  const node = worked.proposed.nodes.find(({ id }) => id === nodeId);
  const pointId = node?.pointId ?? null;
  const point = pointId === null ? undefined : worked.plan.pointById.get(pointId);
  // A node that no point explains is the fused unit that a connection brings along.
  const kind = point?.kind ?? 'fused-unit';
  const fuseA = worked.things.fusedUnits.find(({ id }) => id === nodeId)?.fuseA;
  const common = { nodeId, pointId, kind, isNew: node?.state === 'new', depth };
  if (kind === 'socket-twin') return { ...common, possibleA: 2 * PLUG_A };
  if (kind === 'fused-unit') return { ...common, possibleA: fuseA ?? PLUG_A };
  if (kind !== 'socket-single' && point?.load) return { ...common, possibleA: point.load.watts / NOMINAL_V };
  return { ...common, possibleA: PLUG_A };
}
