import type { ExpectedAt, RingProof } from './circuit-proof.ts';
import type { ProofCircuit } from './proof-circuit.ts';
import type { Hanging, Ring, RingWalk } from './ring-walk.ts';

/** A conductor's resistances along the legs of a circuit, Ω at 20 °C by leg. */
export type LegOhms = Float64Array;

/** Where the ring's nodes are along one conductor: Ω from end A, and the whole. */
interface AlongRing {
  readonly fromA: readonly number[];
  readonly total: number;
}

function along({ nodes, legs }: RingWalk, ohm: LegOhms): AlongRing {
  let sum = 0;
  const fromA = nodes.map((_, i) => {
    sum += ohm[legs[i] ?? -1] ?? 0;
    return sum;
  });
  return { fromA, total: sum + (ohm[legs[nodes.length] ?? -1] ?? 0) };
}

/**
 * The reading between two conductors of a ring at one of its points, with the far ends crossed at the board: each
 * goes both ways round, over into the other.
 *
 * @param one Ω of the first conductor from end A; `other` alike.
 * Source: circuit theory; for evenly made rings it is [r1·r2 + x(1−x)(r1−r2)²] ÷ (r1+r2) at fraction x, as published for
 *   the continuity test of rings (https://www.scribd.com/document/72915510/Ring).
 */
export function crossedOhm(one: number, oneTotal: number, other: number, otherTotal: number): number {
  const total = oneTotal + otherTotal;
  if (total === 0) return 0;
  return ((one + otherTotal - other) * (oneTotal - one + other)) / total;
}

/** Ω of a conductor from the ring to each node. */
function outFromRing({ order, before, leg }: Hanging, ohm: LegOhms): Float64Array {
  const out = new Float64Array(before.length);
  for (const node of order) {
    const last = before[node] ?? -1;
    if (last >= 0) out[node] = (out[last] ?? 0) + (ohm[leg[node] ?? -1] ?? 0);
  }
  return out;
}

/** Ω of the line conductor and of the protective one by leg; null where some cable has none. */
export interface RingOhms {
  readonly line: LegOhms;
  readonly cpc: LegOhms | null;
}

/**
 * What a tester reads of the ring, at 20 °C: end to end, and crossed at every point that hangs from it; neutral as line.
 * Spurs from the origin read nothing in these tests and are left out.
 */
export function expectedReadings(
  circuit: ProofCircuit,
  { walk, hanging }: Ring,
  { line, cpc }: RingOhms,
): RingProof {
  const byLine = along(walk, line);
  const byCpc = cpc === null ? null : along(walk, cpc);
  const placeOf = new Map(walk.nodes.map((node, i) => [node, i]));
  const lineOut = outFromRing(hanging, line);
  const crossed = (second: AlongRing, secondOut: Float64Array): readonly ExpectedAt[] =>
    hanging.order.flatMap((node) => {
      const point = circuit.pointAt[node] ?? null;
      if (point === null) return [];
      const place = placeOf.get(hanging.root[node] ?? -1) ?? -1;
      const [one, other] = [byLine.fromA[place] ?? 0, second.fromA[place] ?? 0];
      const atRing = crossedOhm(one, byLine.total, other, second.total);
      return [{ point, ohm: atRing + (lineOut[node] ?? 0) + (secondOut[node] ?? 0) }];
    });
  return {
    lengthMm: walk.legs.reduce((sum, leg) => sum + (circuit.legs[leg]?.lengthMm ?? 0), 0),
    r1Ohm: byLine.total,
    rnOhm: byLine.total,
    r2Ohm: byCpc?.total ?? null,
    order: walk.nodes.flatMap((node, i) => {
      const point = circuit.pointAt[node] ?? null;
      const fraction = byLine.total === 0 ? 0 : (byLine.fromA[i] ?? 0) / byLine.total;
      return point === null ? [] : [{ point, fraction }];
    }),
    step2: crossed(byLine, lineOut),
    step3: byCpc === null || cpc === null ? [] : crossed(byCpc, outFromRing(hanging, cpc)),
  };
}
