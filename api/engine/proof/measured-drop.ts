import { dropCorrection } from './drop-limits.ts';
import { flowUnder } from './flow-under.ts';
import { type ProofCase, type ProofInput, proofCase } from './proof-case.ts';
import { type ProofCircuit, proofCircuit } from './proof-circuit.ts';
import type { Hanging } from './ring-walk.ts';

/** What was read of a circuit's cables, Ω at 20 °C. */
export interface OhmsRead {
  /** Line and neutral of a ring, end to end, added up; null where either was not read. */
  readonly endsOhm: number | null;
  /** By point: line to neutral with the ends crossed. */
  readonly crossedOhm: ReadonlyMap<string, number>;
  /** By point: line to earth with both linked at the board. */
  readonly linkedOhm: ReadonlyMap<string, number>;
}

/**
 * The volt drop at every point under the handbook's load, V, worked out anew with cables as long as their resistances say: a ring's legs
 * all by the same factor, a spur's by what it reads beyond the ring, a radial's by what R1 + R2 grows by from point to point. Cable behind the last
 * point that was read counts as the ring does, or as drawn.
 *
 * @returns null where nothing that this needs was read, and for circuits that are neither ring nor radial.
 */
export function measuredDrop(
  input: ProofInput,
  circuitId: string,
  read: OhmsRead,
): ReadonlyMap<string, number> | null {
  const circuit = proofCircuit(input.worked, circuitId);
  if (circuit === null) return null;
  const drawn = proofCase(input, circuit);
  const ratios = lengthRatios(drawn, read);
  return ratios === null ? null : dropOf(input, lengthened(circuit, ratios));
}

/** A circuit with each leg as many times as long. */
const lengthened = (circuit: ProofCircuit, ratios: Float64Array): ProofCircuit => ({
  ...circuit,
  legs: circuit.legs.map((leg, i) => ({ ...leg, lengthMm: leg.lengthMm * (ratios[i] ?? 1) })),
});

function dropOf(input: ProofInput, circuit: ProofCircuit): ReadonlyMap<string, number> {
  const one = proofCase(input, circuit);
  const { legs, dropV } = flowUnder(one, one.handbookA);
  const correction = dropCorrection(one, legs);
  return new Map(
    circuit.pointAt.flatMap((point, node) => {
      const volts = (dropV[node] ?? Number.NaN) * correction;
      return point === null || Number.isNaN(volts) ? [] : [[point, volts] as const];
    }),
  );
}

/** By leg, how many times its drawn length what was read makes it; null where nothing was read to tell it by. */
function lengthRatios(one: ProofCase, read: OhmsRead): Float64Array | null {
  const { circuit, ring, ohms } = one;
  const { cpc, line } = ohms;
  const ratios = new Float64Array(circuit.legs.length).fill(1);
  const linked = (): void => {
    if (cpc === null) return;
    const loop = line.map((ohm, i) => ohm + (cpc[i] ?? 0));
    stretch(ratios, fromOrigin(circuit, ring?.walk.legs ?? []), {
      drawnOhm: loop,
      readOhm: (node) => read.linkedOhm.get(circuit.pointAt[node] ?? '') ?? null,
    });
  };
  if (ring === null) {
    const { shape } = circuit.shape;
    if (shape !== 'radial' || read.linkedOhm.size === 0 || cpc === null) return null;
    linked();
    return ratios;
  }
  const lineOhm = ring.walk.legs.reduce((sum, leg) => sum + (line[leg] ?? 0), 0);
  if (read.endsOhm === null || lineOhm === 0) return null;
  const ratio = read.endsOhm / (2 * lineOhm);
  ratios.fill(ratio);
  // All round a ring whose line and neutral are alike the crossed test reads a quarter of both.
  const onRing = read.endsOhm / 4;
  stretch(ratios, ring.hanging, {
    drawnOhm: line.map((ohm) => 2 * ohm),
    readOhm: (node) => {
      const ohm = read.crossedOhm.get(circuit.pointAt[node] ?? '');
      return ohm === undefined ? null : Math.max(0, ohm - onRing);
    },
  });
  linked();
  return ratios;
}

/** A tree of cable by what was read at its nodes, beyond where it begins. */
interface Stretching {
  /** By leg, as drawn. */
  readonly drawnOhm: Float64Array;
  /** By node; null where it was not read. */
  readonly readOhm: (node: number) => number | null;
}

/** Sets the ratios of the legs between each node that was read and the one before it that was read. */
function stretch(
  ratios: Float64Array,
  { order, before, leg }: Pick<Hanging, 'order' | 'before' | 'leg'>,
  { drawnOhm, readOhm }: Stretching,
): void {
  const known = new Map<number, number>();
  for (const node of order) {
    const isStart = (before[node] ?? -1) < 0;
    const ohm = isStart ? 0 : readOhm(node);
    if (ohm === null) continue;
    known.set(node, ohm);
    const between: number[] = [];
    let at = node;
    while ((before[at] ?? -1) >= 0 && (at === node || !known.has(at))) {
      between.push(leg[at] ?? -1);
      at = before[at] ?? -1;
    }
    const drawn = between.reduce((sum, each) => sum + (drawnOhm[each] ?? 0), 0);
    if (drawn === 0) continue;
    const ratio = Math.max(0, ohm - (known.get(at) ?? 0)) / drawn;
    for (const each of between) ratios[each] = ratio;
  }
}

/** What leaves the origin beside a ring's legs, from it outwards. */
function fromOrigin(
  { nodes, legs }: ProofCircuit,
  without: readonly number[],
): Pick<Hanging, 'order' | 'before' | 'leg'> {
  const [before, leg] = [new Int32Array(nodes.length).fill(-1), new Int32Array(nodes.length).fill(-1)];
  const left = new Set(legs.keys());
  for (const each of without) left.delete(each);
  const order = [0];
  for (const node of order)
    for (const each of left) {
      const { from, to } = legs[each] ?? { from: -1, to: -1 };
      if (from !== node && to !== node) continue;
      left.delete(each);
      const next = from === node ? to : from;
      if (next === 0 || before[next] !== -1) continue;
      before[next] = node;
      leg[next] = each;
      order.push(next);
    }
  return { order, before, leg };
}
