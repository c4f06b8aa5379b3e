import type { NetworkEdge, NetworkNode } from '#engine/circuit/network.ts';
import type { CircuitShapeName } from '#engine/circuit/shape.ts';
import type { Worked } from '#engine/connections/worked.ts';
import type { CircuitProof, LegProof } from '#engine/proof/circuit-proof.ts';
import { circuitOhms } from '#engine/proof/leg-ohms.ts';
import { type ProofCircuit, proofCircuit } from '#engine/proof/proof-circuit.ts';
import type { ScenarioName } from '#engine/proof/scenarios.ts';
import type { Cable } from '#model/cable.ts';
import { nodeLabel } from '../node-label.ts';
import { pointKindWords } from '../point-kind-words.ts';

/** A place where cables meet, as pictures of a circuit show it: a unit's two sides are one. */
export interface PictureNode {
  /** What a touch means: the point, the board, or what a connection brings along. */
  readonly subject: string;
  readonly kind: 'board' | 'point' | 'unit' | 'joint';
  /** What stands beside it: short. */
  readonly label: string;
  /** What it is, for who hears it: "twin socket-outlet", "joint in R8–R9". */
  readonly words: string;
  /** Rating of its fuse, A; null without one, or where it is not known. */
  readonly fuseA: number | null;
  readonly isNew: boolean;
  /** V below the origin; null where the point is not reached. */
  readonly dropV: number | null;
}

/** A cable, as pictures of a circuit show it. */
export interface PictureLeg {
  /** The network edge's id. */
  readonly id: string;
  /** What a touch means: the leg as surveyed, or the new cable. */
  readonly subject: string;
  /** Its ends, as indexes of nodes. */
  readonly ends: readonly [number, number];
  /** A; null where no origin reaches the cable. */
  readonly currentA: number | null;
  /** Null where nobody looked at it. */
  readonly cable: Cable | null;
  readonly izA: number | null;
  readonly share: number | null;
  readonly lengthMm: number;
  /** False where the length is only assumed. */
  readonly isMeasured: boolean;
  readonly isNew: boolean;
  /** True for the leg that this scenario opens. */
  readonly isOpen: boolean;
  /** True for the one that carries the greatest share of what it may. */
  readonly isWorst: boolean;
}

/** One circuit under one scenario, ready to be drawn. */
export interface CircuitPicture {
  readonly circuitId: string;
  readonly shape: CircuitShapeName;
  readonly scenario: ScenarioName;
  /** The origin is the first. */
  readonly nodes: readonly PictureNode[];
  /** Sorted by id. */
  readonly legs: readonly PictureLeg[];
  /** Of a ring: nodes in order from end A, and legs, one more; indexes. */
  readonly ring: { readonly nodes: readonly number[]; readonly legs: readonly number[] } | null;
  readonly dropLimitV: number;
  readonly lightingDropLimitV: number;
}

interface Seen {
  readonly worked: Worked;
  readonly nodeById: ReadonlyMap<string, NetworkNode>;
  readonly edgeById: ReadonlyMap<string, NetworkEdge>;
}

/** What is told of a scenario. */
interface Told {
  readonly scenario: ScenarioName;
  readonly legs: readonly LegProof[];
  readonly openLeg: string | null;
  readonly correction: number;
}

/** The legs and volts of a scenario; the handbook's where the circuit has no such scenario. */
function toldOf(proof: CircuitProof, scenario: ScenarioName): Told {
  const other = proof.otherScenarios.find((one) => one.scenario === scenario);
  return other === undefined
    ? { scenario: 'handbook', legs: proof.legs, openLeg: null, correction: proof.dropCorrection }
    : { scenario, legs: other.legs, openLeg: other.openLeg, correction: 1 };
}

/**
 * A circuit under a scenario, with what hangs together by a fuse made one.
 *
 * @returns null where no cable of the circuit is recorded.
 */
export function circuitPicture(
  worked: Worked,
  proof: CircuitProof,
  scenario: ScenarioName = 'handbook',
): CircuitPicture | null {
  const circuit = proofCircuit(worked, proof.circuit);
  if (circuit === null) return null;
  const told = toldOf(proof, scenario);
  const seen: Seen = {
    worked,
    nodeById: new Map(worked.proposed.nodes.map((node) => [node.id, node])),
    edgeById: new Map(worked.proposed.edges.map((edge) => [edge.id, edge])),
  };
  const placeOf = placesWithoutFuses(circuit);
  const dropV = dropsOf(circuit, told);
  const legs = legsOf(circuit, told, { seen, placeOf });
  const legAt = new Map(legs.map(({ id }, i) => [id, i]));
  const nodeAt = new Map(circuit.nodes.map(({ id }, i) => [id, placeOf[i] ?? 0]));
  const { ringNodes, ringEdges, shape } = circuit.shape;
  const ring = {
    nodes: ringNodes.map((id) => nodeAt.get(id) ?? -1),
    legs: ringEdges.map(({ id }) => legAt.get(id) ?? -1),
  };
  const isRing = shape === 'ring' && ring.legs.length > 1 && ![...ring.nodes, ...ring.legs].includes(-1);
  return {
    circuitId: proof.circuit,
    shape,
    scenario: told.scenario,
    nodes: nodesOf(circuit, dropV, { seen, placeOf }),
    legs,
    ring: isRing ? ring : null,
    dropLimitV: proof.dropLimitV,
    lightingDropLimitV: proof.lightingDropLimitV,
  };
}

/** By node of the circuit, its place in the picture: both sides of a fuse have one. */
function placesWithoutFuses({ nodes, legs }: ProofCircuit): readonly number[] {
  const same = nodes.map((_, i) => i);
  const rootOf = (i: number): number => {
    const next = same[i] ?? i;
    return next === i ? i : rootOf(next);
  };
  for (const { kind, from, to } of legs)
    if (kind === 'fuse') {
      const [low, high] = [rootOf(from), rootOf(to)].toSorted((a, b) => a - b);
      if (low !== undefined && high !== undefined) same[high] = low;
    }
  const placed = new Map<number, number>();
  return nodes.map((_, i) => {
    const root = rootOf(i);
    const place = placed.get(root) ?? placed.size;
    placed.set(root, place);
    return place;
  });
}

/** Volts by node of the circuit, from the currents of the scenario; null where no cable comes. */
function dropsOf(circuit: ProofCircuit, { legs, openLeg, correction }: Told): readonly (number | null)[] {
  const ohm = circuitOhms(circuit).drop;
  const toldOfLeg = new Map(legs.map((leg) => [leg.leg, leg]));
  const dropV: (number | null)[] = circuit.nodes.map((_, i) => (i === 0 ? 0 : null));
  const links = new Map<number, { to: number; volts: number }[]>();
  circuit.legs.forEach(({ id, from, to }, i) => {
    if (id === openLeg) return;
    const leg = toldOfLeg.get(id);
    const along = leg?.from === circuit.nodes[from]?.id ? 1 : -1;
    const volts = along * (leg?.currentA ?? 0) * (ohm[i] ?? 0) * correction;
    links.set(from, [...(links.get(from) ?? []), { to, volts }]);
    links.set(to, [...(links.get(to) ?? []), { to: from, volts: -volts }]);
  });
  const queue = [0];
  for (const node of queue)
    for (const { to, volts } of links.get(node) ?? [])
      if (dropV[to] === null) {
        dropV[to] = (dropV[node] ?? 0) + volts;
        queue.push(to);
      }
  return dropV;
}

interface Placing {
  readonly seen: Seen;
  readonly placeOf: readonly number[];
}

function nodesOf(
  circuit: ProofCircuit,
  dropV: readonly (number | null)[],
  { seen, placeOf }: Placing,
): readonly PictureNode[] {
  const nodes: PictureNode[] = [];
  circuit.nodes.forEach(({ id }, i) => {
    const place = placeOf[i] ?? 0;
    // Of the two sides of a fuse the one that comes first in the list is the supply side, which has the name.
    if (nodes[place] === undefined) nodes[place] = pictureNode(seen, id, dropV[i] ?? null);
  });
  const fuses = circuit.legs.filter(({ kind }) => kind === 'fuse');
  return nodes.map((node, place) => {
    const fuse = fuses.find(({ from }) => placeOf[from] === place);
    return fuse === undefined ? node : { ...node, fuseA: fuseOf(seen, fuse.id) };
  });
}

/** What fuse a unit has, or gets. */
function fuseOf({ worked, edgeById }: Seen, edgeId: string): number | null {
  const loadNode = edgeById.get(edgeId)?.to;
  return worked.things.fusedUnits.find((unit) => unit.loadNode === loadNode)?.fuseA ?? null;
}

function pictureNode({ worked, nodeById }: Seen, id: string, dropV: number | null): PictureNode {
  const node = nodeById.get(id);
  const whole = nodeLabel(worked, id);
  const common = { fuseA: null, dropV, isNew: node?.state === 'new' };
  if (node?.kind === 'origin' || node === undefined) {
    const board = worked.proposed.circuits.find((one) => one.id === id)?.board ?? null;
    const label = board?.label ?? 'Board';
    return { ...common, subject: board?.id ?? id, kind: 'board', label, words: label };
  }
  if (node.pointId !== null) {
    const kind = worked.plan.pointById.get(node.pointId)?.kind;
    return {
      ...common,
      subject: node.pointId,
      kind: kind === 'joint' ? 'joint' : 'point',
      label: whole,
      words: kind === undefined ? 'accessory' : pointKindWords[kind].toLowerCase(),
    };
  }
  const kind = node.kind === 'joint' ? 'joint' : 'unit';
  return { ...common, subject: id, kind, label: kind === 'joint' ? 'joint' : 'unit', words: whole };
}

function legsOf(circuit: ProofCircuit, told: Told, { seen, placeOf }: Placing): readonly PictureLeg[] {
  const toldOfLeg = new Map(told.legs.map((leg) => [leg.leg, leg]));
  const unseen = new Set(circuit.withoutCable);
  const guessed = new Set([...circuit.withoutLength, ...circuit.assumedLength]);
  const cables = circuit.legs.filter(({ kind }) => kind === 'cable');
  const worst = worstOf(cables.flatMap(({ id }) => toldOfLeg.get(id) ?? []));
  return cables.map(({ id, from, to, cable, lengthMm }) => {
    const leg = toldOfLeg.get(id);
    const edge = seen.edgeById.get(id);
    return {
      id,
      subject: edge?.legId ?? id,
      ends: [placeOf[from] ?? 0, placeOf[to] ?? 0],
      cable: unseen.has(id) ? null : cable,
      currentA: leg?.currentA ?? null,
      izA: leg?.izA ?? null,
      share: leg?.share ?? null,
      lengthMm,
      isMeasured: !guessed.has(id),
      isNew: edge?.state === 'new',
      isOpen: id === told.openLeg,
      isWorst: id === worst,
    };
  });
}

/** The leg with the greatest share of its capacity, else with the most current; null where nothing flows. */
function worstOf(legs: readonly LegProof[]): string | null {
  const isShared = legs.some(({ share }) => share !== null);
  let worst: string | null = null;
  let most = 0;
  for (const { leg, share, currentA } of legs) {
    const load = isShared ? (share ?? 0) : (currentA ?? 0);
    if (load > most) [worst, most] = [leg, load];
  }
  return worst;
}

/** A place in a sentence, for who hears it; begins with the lettering beside it. */
export const nodeTitle = ({ words }: PictureNode, lettering: string): string =>
  words.startsWith(lettering) ? words : `${lettering}, ${words}`;
