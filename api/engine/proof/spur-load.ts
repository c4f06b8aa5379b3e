import type { NodePlace, UnfusedSpur } from '../circuit/shape.ts';
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
  /** Neither an outlet nor a fused unit: an item that is wired in without a fuse of its own. */
  readonly isFixedItem: boolean;
  /** Watts named for a fixed item, by itself or by the switch before it; null when none are, and for others. */
  readonly loadW: number | null;
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

/** What is no fixed item: it has plugs or fuses, or it is not there to draw anything. */
const noFixedItem: ReadonlySet<string> = new Set([
  'socket-single',
  'socket-twin',
  'fused-unit',
  'grid',
  'blank',
  'joint',
]);

type Places = ReadonlyMap<string, NodePlace>;

function spurLoad(worked: Worked, spur: UnfusedSpur): SpurLoad {
  const places: Places = new Map(
    worked.shapes.get(spur.circuitId)?.places.map((place) => [place.nodeId, place]),
  );
  const goesOn = new Set([...places.values()].map(({ upstreamNode }) => upstreamNode));
  const accessories = spur.accessoryNodes
    .map((nodeId) => accessoryAt(worked, nodeId, places))
    .filter(({ kind, nodeId }) => kind !== 'joint' && !(handsOn.has(kind) && goesOn.has(nodeId)))
    .sort((a, b) => a.depth - b.depth || Number(a.isNew) - Number(b.isNew) || (a.nodeId < b.nodeId ? -1 : 1));
  return { spur, accessories, possibleA: accessories.reduce((sum, { possibleA }) => sum + possibleA, 0) };
}

function accessoryAt(worked: Worked, nodeId: string, places: Places): SpurAccessory {
  const node = worked.proposed.nodes.find(({ id }) => id === nodeId);
  const point = pointAt(worked, nodeId);
  // A node that no point explains is the fused unit that a connection brings along.
  const kind = point?.kind ?? 'fused-unit';
  const isFixedItem = !noFixedItem.has(kind);
  const loadW = isFixedItem ? namedW(worked, nodeId, places) : null;
  return {
    nodeId,
    pointId: node?.pointId ?? null,
    kind,
    possibleA: loadW === null ? possibleA(worked, nodeId, kind) : loadW / NOMINAL_V,
    isFixedItem,
    loadW,
    isNew: node?.state === 'new',
    depth: places.get(nodeId)?.depth ?? 0,
  };
}

function possibleA(worked: Worked, nodeId: string, kind: string): number {
  if (kind === 'socket-twin') return 2 * PLUG_A;
  if (kind !== 'fused-unit') return PLUG_A;
  return worked.things.fusedUnits.find(({ id }) => id === nodeId)?.fuseA ?? PLUG_A;
}

/** Watts named at an item, or at the switches straight before it. */
function namedW(worked: Worked, nodeId: string, places: Places): number | null {
  let at: string | null = nodeId;
  for (let step = 0; at !== null && step <= places.size; step += 1) {
    const point = pointAt(worked, at);
    if (point?.load) return point.load.watts;
    at = places.get(at)?.upstreamNode ?? null;
    if (at === null || !handsOn.has(pointAt(worked, at)?.kind ?? '')) return null;
  }
  return null;
}

function pointAt(worked: Worked, nodeId: string) {
  const pointId = worked.proposed.nodes.find(({ id }) => id === nodeId)?.pointId ?? null;
  return pointId === null ? undefined : worked.plan.pointById.get(pointId);
}
