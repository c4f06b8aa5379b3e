import type { Leg, Point } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { inIdOrder } from './id-order.ts';
import type { LegEnds } from './leg-ends.ts';
import type {
  EditProblem,
  LiftedEnd,
  Network,
  NetworkCircuit,
  NetworkEdge,
  NetworkNode,
  NodeId,
  RemovedStretch,
} from './network.ts';
import { type Links, linksOf } from './network-graph.ts';

/** What stands where a removed or replaced point was: another point, a joint of its cables, or nothing. */
type Successor = { readonly pointId: string } | { readonly jointId: NodeId } | null;

/** Where along its leg an edge lies; `toMm` is null where the leg's length is unknown. */
interface LegSpan {
  readonly fromMm: number;
  readonly toMm: number | null;
}

/** A network in the making: the found one copied into maps that the edits of a scheme may change. */
export interface NetworkDraft {
  readonly nodes: Map<NodeId, NetworkNode>;
  readonly edges: Map<string, NetworkEdge>;
  readonly circuits: Map<string, NetworkCircuit>;
  readonly removed: RemovedStretch[];
  readonly lifted: LiftedEnd[];
  readonly problems: EditProblem[];
  readonly unwired: Map<string, readonly Point[]>;
  /** By edge id, for every edge that is a leg or a part of one. */
  readonly spans: Map<string, LegSpan>;
  /** Legs that were cut: their parts get their ids at the end. */
  readonly cutLegs: Set<string>;
  /** Both ends of every leg after points were removed and replaced, before it was cut. */
  readonly legEnds: Map<string, LegEnds>;
  readonly legById: ReadonlyMap<string, Leg>;
  readonly pointById: ReadonlyMap<string, Point>;
  readonly successors: Map<string, Successor>;
  /** Nodes that a connection feeds already. */
  readonly fed: Set<NodeId>;
  /** Taps at points, looked at again when every connection is made. */
  readonly tapped: { readonly connectionId: string; readonly pointId: string; readonly nodeId: NodeId }[];
}

/** A copy of a network for a scheme's edits; the network itself is never changed. */
export function draftOf(job: Job, found: Network): NetworkDraft {
  const legEdges = found.edges.filter(({ legId }) => legId !== null);
  return {
    nodes: new Map(found.nodes.map((node) => [node.id, node])),
    edges: new Map(found.edges.map((edge) => [edge.id, edge])),
    circuits: new Map(found.circuits.map((circuit) => [circuit.id, circuit])),
    removed: [...found.removed],
    lifted: [...(found.lifted ?? [])],
    problems: [...found.problems],
    unwired: new Map(found.unwired),
    spans: new Map(legEdges.map(({ id, lengthMm }) => [id, { fromMm: 0, toMm: lengthMm }])),
    cutLegs: new Set(),
    legEnds: new Map(legEdges.map(({ legId, from, to }) => [legId ?? '', { from, to }])),
    legById: new Map(job.legs.map((leg) => [leg.id, leg])),
    pointById: new Map(job.points.map((point) => [point.id, point])),
    successors: new Map(),
    fed: new Set(),
    tapped: [],
  };
}

/** Records something that cannot be done as written, once. */
export function reportProblem(
  draft: NetworkDraft,
  connectionId: string,
  code: EditProblem['code'],
  subjectId: string,
): void {
  const isKnown = draft.problems.some(
    (each) => each.connectionId === connectionId && each.code === code && each.subjectId === subjectId,
  );
  if (!isKnown) draft.problems.push({ connectionId, code, subjectId });
}

/** The ways out of every node of the draft as it is now, by cables or by cables and fuses. */
export function draftLinks(draft: NetworkDraft, kinds: 'cables' | 'cables-and-fuses'): Links {
  const edges = [...draft.edges.values()];
  return linksOf(
    draft.nodes.keys(),
    kinds === 'cables' ? edges.filter(({ kind }) => kind === 'cable') : edges,
  );
}

/** The cables that end at a node. */
export function cablesAt(draft: NetworkDraft, nodeId: NodeId): readonly NetworkEdge[] {
  return [...draft.edges.values()].filter(
    ({ kind, from, to }) => kind === 'cable' && (from === nodeId || to === nodeId),
  );
}

/** The finished network of a draft, every list sorted. */
export function networkOf(draft: NetworkDraft): Network {
  return {
    nodes: [...draft.nodes.values()].toSorted((a, b) => inIdOrder(a.id, b.id)),
    edges: namedParts(draft).toSorted((a, b) => inIdOrder(a.id, b.id)),
    circuits: [...draft.circuits.values()].toSorted((a, b) => inIdOrder(a.id, b.id)),
    removed: draft.removed.toSorted(
      (a, b) => inIdOrder(a.legId, b.legId) || (a.fromMm ?? 0) - (b.fromMm ?? 0),
    ),
    ...(draft.lifted.length > 0 ? { lifted: draft.lifted.toSorted(inLiftedOrder) } : {}),
    problems: inProblemOrder(draft.problems),
    unwired: new Map([...draft.unwired].toSorted(([a], [b]) => inIdOrder(a, b))),
  };
}

function inLiftedOrder(a: LiftedEnd, b: LiftedEnd): number {
  return inIdOrder(a.nodeId, b.nodeId) || inIdOrder(a.connectionId, b.connectionId);
}

/** Problems by connection (those of remedies first), then code, then subject. */
export function inProblemOrder(problems: readonly EditProblem[]): readonly EditProblem[] {
  return problems.toSorted(
    (a, b) =>
      inIdOrder(a.connectionId ?? '', b.connectionId ?? '') ||
      inIdOrder(a.code, b.code) ||
      inIdOrder(a.subjectId, b.subjectId),
  );
}

/** The draft's edges, what is left of every cut leg named `<legId>/part-<n>` in order along the leg. */
function namedParts(draft: NetworkDraft): NetworkEdge[] {
  const whole = [...draft.edges.values()].filter(({ legId }) => legId === null || !draft.cutLegs.has(legId));
  const parts = [...draft.cutLegs].flatMap((legId) =>
    partsOfLeg(draft, legId).map((edge, index) => ({ ...edge, id: `${legId}/part-${index + 1}` })),
  );
  return [...whole, ...parts];
}

/** What there still is of a leg, in order from its `from`. */
export function partsOfLeg(draft: NetworkDraft, legId: string): readonly NetworkEdge[] {
  const start = ({ id }: NetworkEdge): number => draft.spans.get(id)?.fromMm ?? 0;
  const end = ({ id }: NetworkEdge): number => draft.spans.get(id)?.toMm ?? Number.MAX_VALUE;
  return [...draft.edges.values()]
    .filter((edge) => edge.legId === legId)
    .toSorted((a, b) => start(a) - start(b) || end(a) - end(b));
}
