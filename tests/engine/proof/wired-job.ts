import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { estimate } from '#engine/estimate.ts';
import type { CircuitProof, PointProof } from '#engine/proof/circuit-proof.ts';
import type { Cable } from '#model/cable.ts';
import type { Leg } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import type { Limits } from '#model/library.ts';
import { boardOf, circuitOf, jobOf, legOf, pointOf } from '../rules/facts-builder.ts';

/** A cable from one place to another: `c` is the board, everything else a point. */
export interface Wire {
  readonly from: string;
  readonly to: string;
  readonly lengthM: number;
  readonly cable?: Cable;
}

const unit = (id: string) => pointOf(id, { kind: 'fused-unit', unit: { fuseA: 3, switched: true } });

/** Points whose names begin with `u` are fused units of 3 A, with `j` joints; the others are twin outlets. */
function pointNamed(id: string) {
  if (id.startsWith('u')) return { ...unit(id), circuit: 'c' };
  const joint = { kind: 'screw', ratingA: 32, accessible: true } as const;
  return pointOf(id, { circuit: 'c', ...(id.startsWith('j') ? { kind: 'joint', joint } : {}) });
}

/** A job with one circuit of a B32 in TN-C-S, Ze 0.35 Ω, wired like this. */
export function wiredJob(wires: readonly Wire[], partial: Partial<Job> = {}): Job {
  const names = [...new Set(wires.flatMap(({ from, to }) => [from, to]))].filter((name) => name !== 'c');
  const legs = wires.map(({ from, to, lengthM, cable }, i): Leg => {
    const details = { lengthMm: lengthM * 1000, ...(cable === undefined ? {} : { cable }) };
    return legOf(`leg-${String(i).padStart(2, '0')}`, from, to, details);
  });
  return jobOf({
    supply: { earthing: 'TN-C-S', zeOhm: 0.35, nominalV: 230, bonding: [], otherSources: [] },
    boards: [boardOf('b1')],
    circuits: [circuitOf('c', { shape: 'ring' })],
    points: names.map(pointNamed),
    legs,
    ...partial,
  });
}

/** A ring of points p1, p2, … by the lengths of its legs from the board and back, m. */
export const ringOf = (lengthsM: readonly number[]): readonly Wire[] =>
  lengthsM.map((lengthM, i) => ({
    from: i === 0 ? 'c' : `p${i}`,
    to: i === lengthsM.length - 1 ? 'c' : `p${i + 1}`,
    lengthM,
  }));

/** The proof of the one circuit as found. */
export function proofOf(job: Job, limits: Limits = {}): CircuitProof {
  const library = { ...demoLibrary(), limits };
  const [proof] = estimate(job, library, { date: '2026-11-25', revision: 1 }).asFound.proof;
  if (proof === undefined) throw new Error('no circuit');
  return proof;
}

/** The figures of one point. */
export function at(proof: CircuitProof, point: string): PointProof {
  const found = proof.points.find((each) => each.point === point);
  if (found === undefined) throw new Error(`no point ${point}`);
  return found;
}
