import type { BackBox, CableJoint, FusedUnit } from '../connections/things.ts';
import type { Worked } from '../connections/worked.ts';
import type { LabourTask } from '../labour/task.ts';
import type { PurchasePlan } from '../price/buying/purchase.ts';
import type { PriceBuildUp, PriceRange, Totals } from '../price/totals.ts';
import type { CircuitProof } from '../proof/circuit-proof.ts';
import type { Finding } from '../rules/finding.ts';
import type { Ask } from '../survey/ask.ts';
import type { TakeoffLine } from '../takeoff/line.ts';
import type { Run } from '../ways/run.ts';

/** `no`: the scheme causes a failure or a stop gate is shut. `not-proven`: a rule that could fail could not be judged. */
export type Complies = 'yes' | 'no' | 'not-proven';

/**
 * How an ask of the survey stands. `open`: something of it nobody has said. `put-off`: nor can it be told for now, as somebody
 * said. `assumed`: something of it is only assumed. Else all of it is seen or measured.
 */
export type AskState = 'open' | 'put-off' | 'assumed' | 'seen' | 'measured';

/** What of a price's range hangs on one ask, VAT included: the range is that much narrower with it settled. */
export interface AskWorth {
  /** By how much the low end rises; below nought where settling it sets something else aside. */
  readonly lowPence: number;
  /** By how much the high end falls. */
  readonly highPence: number;
  /** Both together, more than nought. */
  readonly rangePence: number;
}

/** One line of the survey: what is asked, how it stands, what the price hangs on it. */
export interface SurveyAsk extends Omit<Ask, 'closing'> {
  readonly state: AskState;
  /** Null: no money hangs on it by itself. */
  readonly worth: AskWorth | null;
}

/** A fact that would narrow the price, and by how much: a line of the survey whose worth is not null. */
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
  /** All that the survey asks for this scheme, answered or not, in the order of the walk through the house; empty while live. */
  readonly survey: readonly SurveyAsk[];
  /** What of it makes the price wider, dearest first. */
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
    /** What the survey asks of any house, without prices. */
    readonly survey: readonly SurveyAsk[];
    readonly worked: Worked;
  };
  /** In the job's order. */
  readonly schemes: readonly SchemeEstimate[];
  readonly differences: readonly SchemeDifference[];
  /** The cheapest scheme that does not fail; null when all fail or there are none. */
  readonly cheapestId: string | null;
}
