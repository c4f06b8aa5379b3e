import type { BackBox, CableJoint, FusedUnit } from '../connections/things.ts';
import type { Worked } from '../connections/worked.ts';
import type { LabourTask } from '../labour/task.ts';
import type { PurchasePlan } from '../price/buying/purchase.ts';
import type { PriceBuildUp, PriceRange, Totals } from '../price/totals.ts';
import type { CircuitProof } from '../proof/circuit-proof.ts';
import type { Finding } from '../rules/finding.ts';
import type { TakeoffLine } from '../takeoff/line.ts';
import type { Run } from '../ways/run.ts';

/** `no`: the scheme causes a failure or a stop gate is shut. `not-proven`: a rule that could fail could not be judged. */
export type Complies = 'yes' | 'no' | 'not-proven';

/** A fact that would narrow the price, and by how much. */
export interface OpenQuestion {
  readonly question: string;
  readonly subjects: readonly string[];
  readonly words: string;
  /** What of the range it accounts for, VAT included. */
  readonly worthPence: number;
}

/** One scheme, worked, checked, counted and priced. */
export interface SchemeEstimate {
  readonly id: string;
  readonly name: string;
  readonly complies: Complies;
  readonly totals: Totals;
  readonly range: PriceRange;
  /** How much its work disturbs the house, in the points of the firm's norms; 0 where they tell none. */
  readonly messPoints: number;
  readonly openQuestions: readonly OpenQuestion[];
  readonly runs: readonly Run[];
  readonly joints: readonly CableJoint[];
  readonly boxes: readonly BackBox[];
  readonly fusedUnits: readonly FusedUnit[];
  readonly takeoff: readonly TakeoffLine[];
  readonly labour: readonly LabourTask[];
  readonly price: PriceBuildUp;
  /** What the firm buys for it; its pence are the firm's outlay, not what the job is charged. */
  readonly purchase: PurchasePlan;
  /** Of the circuits that the scheme touches, sorted by circuit. */
  readonly proof: readonly CircuitProof[];
  readonly findings: readonly Finding[];
  /** What the drawings need; left out of the JSON. */
  readonly worked: Worked;
}

/** How a scheme compares with the cheapest one that does not fail. */
export interface SchemeDifference {
  readonly id: string;
  readonly againstId: string;
  readonly grossPence: number;
  readonly hours: number;
  readonly cableMm: number;
  readonly joints: number;
  /** Rules that fail here and not there, and the other way round. */
  readonly failsHere: readonly string[];
  readonly failsThere: readonly string[];
}

/** The whole answer of the engine. */
export interface Estimate {
  readonly engine: string;
  readonly reference: string;
  readonly title: string;
  readonly date: string;
  readonly revision: number;
  readonly edition: string;
  readonly editionNote: string;
  readonly cautions: readonly string[];
  readonly asFound: {
    /** Of all circuits, sorted by circuit. */
    readonly proof: readonly CircuitProof[];
    readonly findings: readonly Finding[];
    readonly worked: Worked;
  };
  /** In the job's order. */
  readonly schemes: readonly SchemeEstimate[];
  readonly differences: readonly SchemeDifference[];
  /** The cheapest scheme that does not fail; null when all fail or there are none. */
  readonly cheapestId: string | null;
}
