import type { Remedy } from '#model/scheme.ts';

/** One outcome per rule and subject; `decide` means that a designer must. */
export type Outcome = 'fails' | 'decide' | 'not-proven' | 'advice' | 'passes';

/** Whether it comes from what was found, or from what the scheme does. */
export type Origin = 'found' | 'scheme';

/** What one rule says of one subject. */
export interface Finding {
  readonly rule: string;
  readonly title: string;
  readonly outcome: Outcome;
  /** Id of the point, joint, run, circuit, board, room … it speaks of. */
  readonly subject: string;
  readonly messageId: string;
  readonly actual: number | string | null;
  readonly limit: number | string | null;
  /** Unit of `actual` and `limit` where they are numbers. */
  readonly unit: string | null;
  readonly edition: string;
  readonly source: string;
  readonly message: string;
  /** What would put it right, in words; null for passes. */
  readonly remedy: string | null;
  /** The remedy as the job file can carry it, where it can: priced at the front door. */
  readonly fix: Remedy | null;
  /** What the remedy adds to the price; null where it is not priced. */
  readonly consequencePence: number | null;
  readonly origin: Origin;
  /** A shut stop gate: work must not go on before it is put right. */
  readonly stopGate: boolean;
  /** True when a failure of this rule for this subject would make the scheme not comply. */
  readonly gates: boolean;
}
