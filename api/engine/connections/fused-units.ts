import { plugFuses } from '#data/standards/plug-fuses.ts';
import type { NetworkEdge, NetworkNode, NodeId } from '../circuit/network.ts';
import type { FusedUnit } from './things.ts';
import { circuitIdOf, positionOf, type WiringIndex } from './wiring-index.ts';

/** Every fused unit with its fuse and what hangs behind it, sorted by id of the supply side, then load side. */
export function fusedUnits(index: WiringIndex): readonly FusedUnit[] {
  return index.input.proposed.edges
    .filter((edge) => edge.kind === 'fuse')
    .map((edge) => fusedUnit(index, edge))
    .toSorted((a, b) => compare(a.id, b.id) || compare(a.loadNode, b.loadNode));
}

function compare(a: string, b: string): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}

function fusedUnit(index: WiringIndex, edge: NetworkEdge): FusedUnit {
  const node = index.nodeById.get(edge.from);
  const point = node?.pointId ? index.pointById.get(node.pointId) : undefined;
  const behind = nodesBehind(index, edge);
  const load = loadBehind(index, point?.id ?? null, behind);
  const loadCables = index.cablesAt.get(edge.to) ?? [];
  // A fused module of a grid has no outlet for a flex.
  const isWholeUnit = point?.kind !== 'grid';
  return {
    id: edge.from,
    pointId: point?.id ?? null,
    connectionId: edge.connectionId ?? node?.connectionId ?? null,
    circuitId: node ? circuitIdOf(index, node) : '',
    loadNode: edge.to,
    ...fuseOf(edge, load),
    ...load,
    accessories: behind.filter((nodeId) => index.nodeById.get(nodeId)?.kind !== 'joint').toSorted(),
    // A unit that the job does not describe is taken as a switched one, with a flex outlet if no cable leaves it.
    switched: point?.unit?.switched ?? true,
    flexOutlet: point?.unit?.flexOutlet ?? (isWholeUnit && edge.state === 'new' && loadCables.length === 0),
    position: node ? positionOf(index, node) : null,
    state: edge.state,
  };
}

/** Terminals and joints that the fuse feeds, this unit's own sides left out. */
function nodesBehind(index: WiringIndex, fuse: NetworkEdge): NodeId[] {
  const seen = new Set<NodeId>([fuse.from, fuse.to]);
  const waiting = [fuse.to];
  const behind: NodeId[] = [];
  for (let nodeId = waiting.pop(); nodeId !== undefined; nodeId = waiting.pop()) {
    for (const next of neighbours(index, nodeId)) {
      const node: NetworkNode | undefined = index.nodeById.get(next);
      // A unit fed from both sides would lead on through the board: its origin is never behind a fuse.
      if (seen.has(next) || node?.kind === 'origin') continue;
      seen.add(next);
      behind.push(next);
      waiting.push(next);
    }
  }
  return behind;
}

function neighbours(index: WiringIndex, nodeId: NodeId): NodeId[] {
  const ends: NodeId[] = [];
  for (const edge of index.cablesAt.get(nodeId) ?? []) ends.push(edge.from === nodeId ? edge.to : edge.from);
  for (const edge of index.input.proposed.edges) {
    if (edge.kind === 'fuse' && edge.from === nodeId) ends.push(edge.to);
  }
  return ends;
}

interface LoadBehind {
  readonly fixedW: number | null;
  readonly plugInW: number | null;
  readonly outlets: number;
}

function loadBehind(index: WiringIndex, unitPointId: string | null, behind: readonly NodeId[]): LoadBehind {
  const pointIds = new Set(behind.map((nodeId) => index.nodeById.get(nodeId)?.pointId ?? null));
  const outlets = pointsOf(index, pointIds).filter((point) => point.kind.startsWith('socket-')).length;
  const loads = pointsOf(index, pointIds.add(unitPointId)).flatMap((point) => point.load ?? []);
  const watts = (fixed: boolean): number | null => {
    const named = loads.filter((load) => load.fixed === fixed);
    return named.length === 0 ? null : named.reduce((sumW, load) => sumW + load.watts, 0);
  };
  return { fixedW: watts(true), plugInW: watts(false), outlets };
}

function pointsOf(index: WiringIndex, ids: ReadonlySet<string | null>) {
  return [...ids].flatMap((id) => (id === null ? [] : (index.pointById.get(id) ?? [])));
}

function fuseOf(edge: NetworkEdge, load: LoadBehind): Pick<FusedUnit, 'fuseA' | 'fuseSource'> {
  if (edge.fuseA !== null) return { fuseA: edge.fuseA, fuseSource: 'given' };
  if (edge.state === 'found') return { fuseA: null, fuseSource: 'unknown' };
  // What will be plugged into an outlet is not known, so its fuse is the largest there is.
  if (load.outlets > 0) return { fuseA: 13, fuseSource: 'default' };
  if (load.fixedW === null && load.plugInW === null) return { fuseA: 13, fuseSource: 'default' };
  const watts = (load.fixedW ?? 0) + (load.plugInW ?? 0);
  // More than the largest fuse carries is for a rule to say; the unit still gets that fuse.
  const row = plugFuses.rows.find((fuse) => watts <= fuse.practiceUpToW);
  return { fuseA: row?.ratingA ?? 13, fuseSource: 'by-load' };
}
