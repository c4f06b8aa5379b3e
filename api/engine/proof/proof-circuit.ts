import type { Cable } from '#model/cable.ts';
import type { Device } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { territories } from '../circuit/circuit-territory.ts';
import { inIdOrder } from '../circuit/id-order.ts';
import type { NetworkEdge, NetworkNode } from '../circuit/network.ts';
import type { CircuitShape, NodePlace } from '../circuit/shape.ts';
import { USUAL_CABLE } from '../circuit/usual-cable.ts';
import type { Worked } from '../connections/worked.ts';
import { isGuess } from '../plan/is-guess.ts';
import { remembered } from '../plan/remembered.ts';
import { UNTOLD_LENGTH_MM } from '../ways/length-allowances.ts';
import type { Run } from '../ways/run.ts';

/** Where conductors meet, as the proof counts it. */
export interface ProofNode {
  readonly id: string;
  readonly pointId: string | null;
  /** True for accessories that draw current: outlets, units and fixed items, not joints, switches or plates. */
  readonly draws: boolean;
  /** Behind which unit's fuse it is (the unit's load side), and that fuse's rating; null where there is none. */
  readonly behindUnit: string | null;
  readonly fuseA: number | null;
}

/** A cable or a fuse of the circuit, as the proof counts it. */
export interface ProofLeg {
  /** The network edge's id: leg, part of a leg, new cable, or fuse. */
  readonly id: string;
  readonly kind: 'cable' | 'fuse';
  /** Indexes into the nodes; every origin is node 0. */
  readonly from: number;
  readonly to: number;
  readonly cable: Cable;
  readonly lengthMm: number;
}

/** One circuit, with what is joined to it, reduced to what current sees. */
export interface ProofCircuit {
  readonly circuitId: string;
  readonly shape: CircuitShape;
  readonly device: Device | null;
  /** Node 0 is the origin. */
  readonly nodes: readonly ProofNode[];
  /**
   * By node, the point that it is told as; null for nodes that are told by another. A point is told once, at the side
   * where it draws; a unit that a connection brings along by its node.
   */
  readonly pointAt: readonly (string | null)[];
  /** Sorted by id. */
  readonly legs: readonly ProofLeg[];
  /** Ids of legs whose length nobody knows, counted with the typical one, and of those whose cable nobody looked at. */
  readonly withoutLength: readonly string[];
  readonly withoutCable: readonly string[];
  /** Ids of legs whose length is only assumed: worked out along a guessed way, or said so by the survey. */
  readonly assumedLength: readonly string[];
}

/** What hands on to what it feeds; where it feeds nothing that is recorded, something is wired to it all the same. */
const handsOn: ReadonlySet<string> = new Set(['fused-unit', 'dp-switch', 'cooker-control', 'grid']);
const idle: ReadonlySet<string> = new Set(['joint', 'blank']);

interface Known {
  readonly worked: Worked;
  readonly runs: ReadonlyMap<string, Run>;
  readonly places: ReadonlyMap<string, NodePlace>;
  /** Nodes from which a cable or a fuse goes on, away from the origin. */
  readonly goesOn: ReadonlySet<string>;
}

/**
 * The circuit as the proof counts it, origins merged into node 0; cable that no origin reaches is left in, so that
 * its points are told as unreached.
 *
 * @returns null where no cable of the circuit is recorded: a quoting visit without legs.
 */
export function proofCircuit(worked: Worked, circuitId: string): ProofCircuit | null {
  const shape = worked.shapes.get(circuitId);
  if (shape === undefined) return null;
  const group = new Set([circuitId, ...shape.joinedTo]);
  const parts = territories(worked.job, worked.proposed).filter((part) => group.has(part.circuitId));
  const own = parts.flatMap(({ nodes }) => nodes).toSorted((a, b) => inIdOrder(a.id, b.id));
  const origins = own.filter(({ kind }) => kind === 'origin');
  const others = own.filter(({ kind }) => kind !== 'origin');
  const index = new Map<string, number>(others.map(({ id }, i) => [id, i + 1]));
  for (const { id } of origins) index.set(id, 0);
  const edges = worked.proposed.edges.filter(({ from, to }) => index.has(from) && index.has(to));
  if (origins.length === 0 || !edges.some(({ kind }) => kind === 'cable')) return null;
  const places = [...group].flatMap((id) => worked.shapes.get(id)?.places ?? []);
  const known: Known = {
    worked,
    runs: new Map(worked.runs.map((run) => [run.id, run])),
    places: new Map(places.map((place) => [place.nodeId, place])),
    goesOn: new Set(places.flatMap(({ upstreamNode }) => upstreamNode ?? [])),
  };
  const legs = edges.map((edge) => measuredLeg(known, edge, index));
  const nodes = [originNode(circuitId), ...others.map((node) => proofNode(known, node))];
  return {
    circuitId,
    shape,
    device: worked.proposed.circuits.find(({ id }) => id === circuitId)?.device ?? null,
    nodes,
    pointAt: pointsTold(nodes),
    legs: legs.map(({ leg }) => leg),
    withoutLength: idsOf(legs, ({ length }) => length === 'unknown'),
    assumedLength: idsOf(legs, ({ length }) => length === 'assumed'),
    withoutCable: idsOf(legs, ({ isCableSeen }) => !isCableSeen),
  };
}

/** Of several nodes of one point the one that draws is told, else the first. */
function pointsTold(nodes: readonly ProofNode[]): readonly (string | null)[] {
  const toldBy = new Map<string, ProofNode>();
  for (const node of nodes) {
    if (node.pointId === null) continue;
    const before = toldBy.get(node.pointId);
    if (before === undefined || (node.draws && !before.draws)) toldBy.set(node.pointId, node);
  }
  return nodes.map((node) => {
    if (node.pointId === null) return node.draws ? node.id : null;
    return toldBy.get(node.pointId) === node ? node.pointId : null;
  });
}

interface MeasuredLeg {
  readonly leg: ProofLeg;
  readonly length: 'known' | 'assumed' | 'unknown';
  readonly isCableSeen: boolean;
}

const idsOf = (legs: readonly MeasuredLeg[], is: (leg: MeasuredLeg) => boolean): readonly string[] =>
  legs.filter(is).map(({ leg }) => leg.id);

const originNode = (id: string): ProofNode => ({
  id,
  pointId: null,
  draws: false,
  behindUnit: null,
  fuseA: null,
});

function proofNode({ worked, places, goesOn }: Known, node: NetworkNode): ProofNode {
  const place = places.get(node.id);
  const kind = node.pointId === null ? null : (worked.plan.pointById.get(node.pointId)?.kind ?? null);
  return {
    id: node.id,
    pointId: node.pointId,
    draws: drawsCurrent(node, kind, goesOn.has(node.id)),
    behindUnit: place?.behindUnit ?? null,
    fuseA: place?.fuseA ?? null,
  };
}

/** A unit draws at its load side, where nothing goes on from there; its supply side only passes on. */
function drawsCurrent(node: NetworkNode, kind: string | null, goesOn: boolean): boolean {
  if (node.kind === 'joint') return false;
  // A connection may bring a unit along that is no point of the job.
  if (kind === null || kind === 'fused-unit') return node.kind === 'load-terminals' && !goesOn;
  return node.kind === 'terminals' && !idle.has(kind) && !(handsOn.has(kind) && goesOn);
}

function measuredLeg(known: Known, edge: NetworkEdge, index: ReadonlyMap<string, number>): MeasuredLeg {
  const [from, to] = [index.get(edge.from) ?? 0, index.get(edge.to) ?? 0];
  const { id, kind } = edge;
  if (kind === 'fuse') {
    const leg = { id, kind, from, to, cable: USUAL_CABLE, lengthMm: 0 };
    return { leg, length: 'known', isCableSeen: true };
  }
  const { lengthMm, isAssumed } = lengthOf(known, edge);
  const run = known.runs.get(id);
  const cable = edge.cable ?? run?.cable ?? null;
  return {
    leg: { id, kind, from, to, cable: cable ?? USUAL_CABLE, lengthMm: lengthMm ?? UNTOLD_LENGTH_MM },
    length: lengthMm === null ? 'unknown' : isAssumed ? 'assumed' : 'known',
    isCableSeen: cable !== null,
  };
}

/** The legs whose length the survey only assumes. */
const guessedLegs = remembered((job: Job): ReadonlySet<string> => {
  const guessed = job.legs.filter(({ certainty }) => isGuess(certainty?.length ?? certainty?.lengthMm));
  return new Set(guessed.map(({ id }) => id));
});

/** Measured where it was measured, else along the way that the cable takes, or is likeliest to take. */
function lengthOf(
  { worked, runs }: Known,
  edge: NetworkEdge,
): { readonly lengthMm: number | null; readonly isAssumed: boolean } {
  if (edge.lengthMm !== null) {
    return { lengthMm: edge.lengthMm, isAssumed: guessedLegs(worked.job).has(edge.legId ?? '') };
  }
  const run = runs.get(edge.id);
  if (run !== undefined) return { lengthMm: run.lengthMm, isAssumed: false };
  const whole = edge.legId === null ? undefined : worked.foundRuns.get(edge.legId);
  // Of a cut leg of unknown length nobody knows where along the way it was cut.
  return edge.partMm === null && edge.id === edge.legId
    ? { lengthMm: whole?.lengthMm ?? null, isAssumed: true }
    : { lengthMm: null, isAssumed: true };
}
