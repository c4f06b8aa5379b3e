import type { Network, NetworkEdge, NodeId } from '../circuit/network.ts';
import type { CircuitShape, CircuitShapeName } from '../circuit/shape.ts';
import type { Worked } from '../connections/worked.ts';
import { type CoreColours, coloursOfFound, coloursOfNew } from './core-colour.ts';
import type { References } from './references.ts';

/** A cable of a circuit as its order tells it. */
export interface OrderedCable {
  readonly edgeId: string;
  readonly mark: string;
  /** Null where neither leg nor way tells it. */
  readonly lengthMm: number | null;
  /** False where the length is only likely. */
  readonly isMeasured: boolean;
  readonly lineMm2: number | null;
  readonly cpcMm2: number | null;
  readonly colours: CoreColours;
  readonly isNew: boolean;
}

/** A place of a circuit, with what leads to it from the place before. */
export interface OrderRow {
  readonly nodeId: NodeId;
  readonly mark: string;
  /** Nought on the ring, or on the first cable from the board; one more for each branch. */
  readonly depth: number;
  readonly isNew: boolean;
  /** Null at the board where a circuit begins. */
  readonly by: OrderedCable | null;
  /** Of a side behind a fuse: its rating; null where nobody knows it; absent: no fuse. */
  readonly fuse?: { readonly ratingA: number | null };
}

/** A circuit in order: a ring from end A round to end B, its branches after the place that they hang from; else from the board outward. */
export interface CircuitOrder {
  readonly circuitId: string;
  readonly name: string;
  readonly shape: CircuitShapeName;
  readonly evidence: CircuitShape['evidence'];
  readonly rows: readonly OrderRow[];
  /** Cables of the circuit that no such order reaches, by mark: of two circuits joined together, or of loops. */
  readonly others: readonly OrderedCable[];
  /** Points that no cable reaches, by label. */
  readonly unwired: readonly string[];
}

/** Walking a circuit. */
interface Walk {
  readonly worked: Worked;
  readonly network: Network;
  readonly shape: CircuitShape;
  readonly references: References;
  readonly seen: Set<string>;
}

/**
 * The order of a circuit, as found or as proposed.
 *
 * @returns null for a circuit that was not there then.
 */
export function circuitOrder(
  worked: Worked,
  which: 'found' | 'proposed',
  circuitId: string,
  references: References,
): CircuitOrder | null {
  const network = worked[which];
  const shape = (which === 'found' ? worked.foundShapes : worked.shapes).get(circuitId);
  const circuit = network.circuits.find(({ id }) => id === circuitId);
  if (shape === undefined || circuit === undefined) return null;
  const walk: Walk = { worked, network, shape, references, seen: new Set() };
  const rows = rowsOf(walk);
  const nodes = new Set(shape.places.map(({ nodeId }) => nodeId));
  const labels = new Map(worked.job.points.map(({ id, label }) => [id, label]));
  return {
    circuitId,
    name: circuit.name,
    shape: shape.shape,
    evidence: shape.evidence,
    rows,
    others: network.edges
      .filter(
        ({ id, kind, from, to }) =>
          kind === 'cable' && !walk.seen.has(id) && (nodes.has(from) || nodes.has(to)),
      )
      .map((edge) => ordered(walk, edge))
      .toSorted((a, b) => (a.mark < b.mark ? -1 : 1)),
    unwired: shape.unwiredPointIds.map((id) => labels.get(id) ?? id).toSorted(),
  };
}

function rowsOf(walk: Walk): readonly OrderRow[] {
  const { shape } = walk;
  const { circuitId, ringNodes, ringEdges } = shape;
  const start = rowAt(walk, circuitId, { depth: 0, by: null });
  if (ringEdges.length === 0) return [start, ...branches(walk, circuitId, 0)];
  for (const { id } of ringEdges) walk.seen.add(id);
  const round = [...ringNodes, circuitId].flatMap((nodeId, i) => {
    const row = rowAt(walk, nodeId, { depth: 0, by: ringEdges[i] ?? null });
    return nodeId === circuitId ? [row] : [row, ...branches(walk, nodeId, 1)];
  });
  return [start, ...branches(walk, circuitId, 1), ...round];
}

/** What hangs from a node, each branch to its end before the next; by the cables' marks. */
function branches(walk: Walk, nodeId: NodeId, depth: number): readonly OrderRow[] {
  const { shape, network, seen } = walk;
  const edgeById = new Map(network.edges.map((edge) => [edge.id, edge]));
  return shape.places
    .filter(({ upstreamNode, upstreamEdgeId }) => upstreamNode === nodeId && !seen.has(upstreamEdgeId ?? ''))
    .map((place) => ({ place, edge: edgeById.get(place.upstreamEdgeId ?? '') }))
    .toSorted((a, b) => (nameOf(walk, a.edge) < nameOf(walk, b.edge) ? -1 : 1))
    .flatMap(({ place, edge }) => {
      if (edge === undefined || seen.has(edge.id)) return [];
      seen.add(edge.id);
      const row = rowAt(walk, place.nodeId, { depth, by: edge });
      return [row, ...branches(walk, place.nodeId, edge.kind === 'fuse' ? depth : depth + 1)];
    });
}

const nameOf = ({ references }: Walk, edge: NetworkEdge | undefined): string =>
  edge === undefined ? '' : references.cable(edge.id);

function rowAt(
  walk: Walk,
  nodeId: NodeId,
  { depth, by }: { readonly depth: number; readonly by: NetworkEdge | null },
): OrderRow {
  const { network, references, worked } = walk;
  const unit = worked.things.fusedUnits.find(({ loadNode }) => loadNode === nodeId);
  return {
    nodeId,
    mark: references.place(nodeId),
    depth,
    isNew: network.nodes.find(({ id }) => id === nodeId)?.state === 'new',
    by: by === null || by.kind === 'fuse' ? null : ordered(walk, by),
    ...(by?.kind === 'fuse' ? { fuse: { ratingA: by.fuseA ?? unit?.fuseA ?? null } } : {}),
  };
}

function ordered({ worked, references }: Walk, edge: NetworkEdge): OrderedCable {
  const { id, legId, cable, state } = edge;
  const run = worked.runs.find((each) => each.id === id);
  const likely = legId === null || edge.lengthMm !== null ? undefined : worked.foundRuns.get(legId);
  const leg = worked.job.legs.find((each) => each.id === legId);
  const circuit = worked.job.circuits.find((each) => each.id === leg?.circuit) ?? null;
  return {
    edgeId: id,
    mark: references.cable(id),
    lengthMm: run?.lengthMm ?? edge.lengthMm ?? likely?.lengthMm ?? null,
    isMeasured: state === 'found' && edge.lengthMm !== null,
    lineMm2: cable?.lineMm2 ?? null,
    cpcMm2: cable?.cpcMm2 ?? null,
    colours:
      state === 'new' && cable !== null ? coloursOfNew(cable) : coloursOfFound(cable, undefined, circuit),
    isNew: state === 'new',
  };
}
