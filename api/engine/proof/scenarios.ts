import type { ProofCircuit } from './proof-circuit.ts';
import { NOMINAL_V, PLUG_A } from './spur-load.ts';

/**
 * What the points of a circuit are taken to draw.
 * `handbook`: 20 A at the electrically furthest point, the rest of the device's rating in equal shares at all points.
 * `named-loads`: what the survey names, with diversity. `all-named-loads`: the same, all at once. `near-one-end`: 20 A and the rest at the two points nearest one
 * end of the ring. `heavy-appliances`: the same at the two points nearest one end of those where heavy appliances are
 * likely. `open-at-worst-leg`: as `handbook`, with the ring open where that is worst: information, since a
 * broken ring is a defect and no case to design for.
 */
export type ScenarioName =
  | 'handbook'
  | 'named-loads'
  | 'all-named-loads'
  | 'near-one-end'
  | 'heavy-appliances'
  | 'open-at-worst-leg';

/**
 * Current taken to flow at the furthest point, before the rest is spread.
 * Source: IET On-Site Guide 7.2.2, as quoted in public (from memory).
 */
export const FURTHEST_A = 20;
/** Points this close in volt drop are equally far, and the first by id counts: rounding must not choose. */
const EQUAL_RATIO = 1e-9;
/** What a circuit is taken to be behind where nobody named its device: the usual ones. Common practice, no source. */
const USUAL_A = { ring: 32, radial: 20 } as const;
/** Share of all but the largest plugged-in load. Source: IET On-Site Guide Table A2, sockets of a household (from memory). */
const OTHERS_RATIO = 0.4;

/** The rating that a scenario is made for, and whether somebody named it. */
export function designCurrent({ device, shape }: ProofCircuit): {
  readonly ratingA: number;
  readonly isTold: boolean;
} {
  if (device !== null) return { ratingA: device.ratingA, isTold: true };
  return { ratingA: shape.shape === 'radial' ? USUAL_A.radial : USUAL_A.ring, isTold: false };
}

/** The points that draw and are reached, as indexes of nodes. */
function drawingNodes({ nodes }: ProofCircuit, resistanceOhm: Float64Array): readonly number[] {
  return nodes.flatMap(({ draws }, i) => (draws && !Number.isNaN(resistanceOhm[i]) ? [i] : []));
}

/** What may flow at a node at most, through the fuse before it. */
function throughFuse({ nodes }: ProofCircuit, node: number, currentA: number): number {
  const at = nodes[node];
  return at === undefined || at.behindUnit === null ? currentA : Math.min(currentA, at.fuseA ?? PLUG_A);
}

/** Lets no more flow behind a fuse than it carries: what hangs there is scaled down together. */
function withinFuses(circuit: ProofCircuit, loadA: Float64Array): Float64Array {
  const sums = new Map<string, number>();
  circuit.nodes.forEach(({ behindUnit }, i) => {
    if (behindUnit !== null) sums.set(behindUnit, (sums.get(behindUnit) ?? 0) + (loadA[i] ?? 0));
  });
  circuit.nodes.forEach(({ behindUnit, fuseA }, i) => {
    const sumA = behindUnit === null ? 0 : (sums.get(behindUnit) ?? 0);
    const mostA = fuseA ?? PLUG_A;
    if (sumA > mostA) loadA[i] = ((loadA[i] ?? 0) * mostA) / sumA;
  });
  return loadA;
}

/**
 * 20 A at the electrically furthest point, the rest of the rating in equal shares at all points; behind a fuse no more
 * than it carries.
 *
 * @param resistanceOhm between the origin and each node; NaN where a node is not reached.
 * @returns A by node; all nought where no point draws.
 */
export function handbookLoads(circuit: ProofCircuit, resistanceOhm: Float64Array): Float64Array {
  const loadA = new Float64Array(circuit.nodes.length);
  const drawing = drawingNodes(circuit, resistanceOhm);
  const { ratingA } = designCurrent(circuit);
  const oneA = Math.min(FURTHEST_A, ratingA);
  let furthest = -1;
  let worstV = -1;
  for (const node of drawing) {
    const dropV = throughFuse(circuit, node, oneA) * (resistanceOhm[node] ?? 0);
    if (dropV > worstV + Math.abs(worstV) * EQUAL_RATIO) [furthest, worstV] = [node, dropV];
    loadA[node] = (ratingA - oneA) / drawing.length;
  }
  if (furthest >= 0) loadA[furthest] = (loadA[furthest] ?? 0) + throughFuse(circuit, furthest, oneA);
  return withinFuses(circuit, loadA);
}

/** Loads that the survey names at the points of a circuit, W. */
export interface NamedLoad {
  readonly node: number;
  readonly watts: number;
  readonly isFixed: boolean;
}

/** What the survey names of a circuit. */
export interface SurveyLoads {
  readonly named: readonly NamedLoad[];
  /** W of the circuit that no point stands for; spread over all points. */
  readonly spreadW: number;
}

/** What the survey names: fixed loads in full, of those on plugs the largest in full and 40 % of each other. A by node. */
export function namedLoads(
  circuit: ProofCircuit,
  resistanceOhm: Float64Array,
  loads: SurveyLoads,
): Float64Array {
  const [largest] = loads.named.filter(({ isFixed }) => !isFixed).toSorted((a, b) => b.watts - a.watts);
  const ratio = (load: NamedLoad): number => (load.isFixed || load === largest ? 1 : OTHERS_RATIO);
  return surveyLoads(circuit, resistanceOhm, loads, ratio);
}

/** Everything that the survey names, all of it running at once. A by node. */
export const allNamedLoads = (
  circuit: ProofCircuit,
  resistanceOhm: Float64Array,
  loads: SurveyLoads,
): Float64Array => surveyLoads(circuit, resistanceOhm, loads, () => 1);

function surveyLoads(
  circuit: ProofCircuit,
  resistanceOhm: Float64Array,
  { named, spreadW }: SurveyLoads,
  ratio: (load: NamedLoad) => number,
): Float64Array {
  const loadA = new Float64Array(circuit.nodes.length);
  const drawing = drawingNodes(circuit, resistanceOhm);
  for (const node of drawing) loadA[node] = spreadW / NOMINAL_V / drawing.length;
  for (const load of named)
    loadA[load.node] = (loadA[load.node] ?? 0) + (load.watts * ratio(load)) / NOMINAL_V;
  return withinFuses(circuit, loadA);
}

/**
 * Heavy loads near one end: 20 A at the first of these nodes that draws, the rest of the rating at the second; where
 * there is no second, in equal shares at all points. Behind a fuse no more than it carries.
 *
 * @param order nodes in order from that end of the ring.
 */
export function nearEndLoads(circuit: ProofCircuit, order: readonly number[]): Float64Array {
  const loadA = new Float64Array(circuit.nodes.length);
  const { ratingA } = designCurrent(circuit);
  const oneA = Math.min(FURTHEST_A, ratingA);
  const [first, second] = order.filter((node) => circuit.nodes[node]?.draws === true);
  if (first === undefined) return loadA;
  loadA[first] = oneA;
  const others = second === undefined ? drawing(circuit) : [second];
  for (const node of others) loadA[node] = (loadA[node] ?? 0) + (ratingA - oneA) / others.length;
  return withinFuses(circuit, loadA);
}

const drawing = ({ nodes }: ProofCircuit): readonly number[] =>
  nodes.flatMap(({ draws }, i) => (draws ? [i] : []));
