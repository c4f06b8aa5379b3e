import { unitOfLoadSide } from '../circuit/load-side.ts';
import type { ExpectedAt, PointProof } from './circuit-proof.ts';
import { HOT_RATIO } from './conductor-ohms.ts';
import { plugFuseLimit } from './loop-limit.ts';
import type { ProofCase } from './proof-case.ts';
import type { SourceLoop } from './source-loop.ts';
import { PLUG_A } from './spur-load.ts';

/** What points are proved by. */
interface Measures {
  /** By node, not corrected. */
  readonly dropV: Float64Array;
  /** R1 + R2 by node in service, cold. */
  readonly loopOhm: Float64Array;
  /** Of a ring, the readings with lines and protective conductors crossed. */
  readonly step3: readonly ExpectedAt[];
  readonly correction: number;
  readonly source: SourceLoop;
  readonly maximumOhm: number | null;
  readonly isRcd: boolean;
}

/** The supply side of a unit where a node is its load side; any other node itself. */
function suppliedAt({ nodes }: ProofCase['circuit'], node: number): number {
  const id = nodes[node]?.id ?? '';
  const supplyId = unitOfLoadSide(id);
  return supplyId === id
    ? node
    : Math.max(
        0,
        nodes.findIndex((each) => each.id === supplyId),
      );
}

const known = (value: number | undefined): number | null =>
  value === undefined || Number.isNaN(value) ? null : value;
const sum = (a: number | null, b: number | null): number | null => (a === null || b === null ? null : a + b);
const times = (a: number | null, ratio: number): number | null => (a === null ? null : a * ratio);

/**
 * Volt drop and fault loop at every point of a circuit, in the order of its nodes.
 *
 * R1 + R2 at a ring's point is what the test with crossed ends shows, as it is recorded: near the board more than the
 * ring in service has. Of the two the stricter counts against the limit; the other is told beside it.
 */
export function pointProofs({ circuit }: ProofCase, measures: Measures): readonly PointProof[] {
  const { dropV, loopOhm, correction, source, maximumOhm, isRcd } = measures;
  const crossed = new Map(measures.step3.map(({ point, ohm }) => [point, ohm]));
  return circuit.nodes.flatMap((here, node): readonly PointProof[] => {
    const point = circuit.pointAt[node] ?? null;
    if (point === null) return [];
    const serviceOhm = known(loopOhm[node]);
    const coldOhm = crossed.get(point) ?? serviceOhm;
    const hotOhm = times(coldOhm, HOT_RATIO);
    // The cable up to a unit is protected by what is before its own fuse, whichever of its terminals is tested.
    const { behindUnit, fuseA } = circuit.nodes[suppliedAt(circuit, node)] ?? here;
    // Behind a plug fuse either device may do it: the more lenient limit holds.
    const byFuse = behindUnit === null || isRcd ? null : plugFuseLimit(fuseA ?? PLUG_A);
    const limits = [maximumOhm, byFuse?.maximumOhm ?? null].filter((ohm) => ohm !== null);
    return [
      {
        point,
        dropV: times(known(dropV[node]), correction),
        r1r2ColdOhm: coldOhm,
        r1r2HotOhm: hotOhm,
        zsColdOhm: sum(coldOhm, source.ohm),
        zsHotOhm: sum(hotOhm, source.ohm),
        zsServiceColdOhm: sum(serviceOhm, source.ohm),
        zsMaxOhm: limits.length === 0 ? null : Math.max(...limits),
      },
    ];
  });
}
