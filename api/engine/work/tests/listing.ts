import { unitOfLoadSide } from '../../circuit/load-side.ts';
import type { Worked } from '../../connections/worked.ts';
import type { CircuitProof } from '../../proof/circuit-proof.ts';
import { hasOwnRcd } from '../../proof/rcd-cover.ts';
import type { References } from '../references.ts';
import type { SheetTest, TestGroup } from './sheet-test.ts';

/** A circuit whose tests are listed. */
export interface Listing {
  readonly worked: Worked;
  readonly proof: CircuitProof;
  readonly references: References;
  readonly isRing: boolean;
  /** The proof's points in the order of the circuit, from the board; those that no cable reaches last. */
  readonly points: readonly string[];
  /** Places at which the scheme connects something. */
  readonly workedOn: ReadonlySet<string>;
}

/** What a test is before it is judged. */
export type Wanted = Pick<
  SheetTest,
  'group' | 'subject' | 'mark' | 'unit' | 'expected' | 'limit' | 'asked' | 'at'
> & {
  /** Of several tests of one subject, which. */
  readonly which: string;
};

/** Ids of the fused units of a circuit that a connection brings along: no points of the job stand for them. */
export function unitsOf({ shapes, things }: Worked, circuitId: string): readonly string[] {
  const nodes = new Set(shapes.get(circuitId)?.places.map(({ nodeId }) => nodeId));
  return things.fusedUnits
    .filter(({ pointId, loadNode }) => pointId === null && nodes.has(loadNode))
    .map(({ id }) => id);
}

/** What all tests of a circuit as a whole have. */
export const ofCircuit = ({ proof, worked, points }: Listing, group: TestGroup) => ({
  group,
  subject: proof.circuit,
  expected: null,
  limit: null,
  // A circuit that the scheme brings is none of the job's yet: its readings go by its first point.
  at: isOfJob(worked, proof.circuit) ? null : (standIn(worked, points.map(unitOfLoadSide)) ?? null),
});

/** The first point of the job, one with an RCD of its own last: what is read of that is kept with it, too. */
function standIn(worked: Worked, ids: readonly string[]): string | undefined {
  const known = ids.filter((id) => worked.plan.pointById.has(id));
  return known.find((id) => !hasOwnRcd(worked, id)) ?? known[0];
}

/** Whether a circuit is the job's own, and not one that the scheme brings. */
export const isOfJob = ({ job }: Worked, circuitId: string): boolean =>
  job.circuits.some(({ id }) => id === circuitId);

/** What all tests at a point have. */
export const atPoint = ({ references }: Listing, group: TestGroup, point: string) => ({
  group,
  subject: point,
  which: unitOfLoadSide(point),
  mark: references.place(unitOfLoadSide(point)),
  expected: null,
  limit: null,
  at: unitOfLoadSide(point),
});
