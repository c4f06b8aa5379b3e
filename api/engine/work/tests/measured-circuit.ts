import type { SheetTest } from './sheet-test.ts';

/** How something came out with what was measured. `look`: it contradicts what is drawn, or another reading; no limit is passed. */
export type MeasuredOutcome = 'holds' | 'look' | 'fails' | 'not-told';

/** One thing said of a circuit as a whole by its readings. */
export interface MeasuredCheck {
  readonly name:
    | 'ring-closes'
    | 'ring-alike'
    | 'earth-ratio'
    | 'loop'
    | 'drop'
    | 'insulation'
    | 'rcd'
    | 'arc-fault'
    | 'polarity';
  readonly outcome: MeasuredOutcome;
  /** In the unit of its name: Ω, a ratio, V, MΩ, ms; null where nothing was read, or it is no figure. */
  readonly actual: number | null;
  /** What it is held to; null where nothing holds it. */
  readonly limit: number | null;
  /** Where, by its mark; empty for the circuit. */
  readonly where: string;
}

/** A point with what was measured put in the place of what was reckoned. */
export interface MeasuredPoint {
  readonly point: string;
  readonly mark: string;
  /** R1 + R2 as read, Ω. */
  readonly r1r2Ohm: number | null;
  /** The loop before the circuit and that, Ω. */
  readonly zsReckonedOhm: number | null;
  /** As the loop tester showed it, Ω. */
  readonly zsReadOhm: number | null;
  /** What a cold loop may be, Ω. */
  readonly zsLimitOhm: number | null;
  /** With cables as long as they read, V. */
  readonly dropV: number | null;
  readonly outcome: MeasuredOutcome;
}

/** The proof of a circuit repeated with what was measured after the work. */
export interface MeasuredCircuit {
  readonly circuitId: string;
  readonly circuitName: string;
  readonly checks: readonly MeasuredCheck[];
  /** In the order of the circuit; those of which anything was measured or follows. */
  readonly points: readonly MeasuredPoint[];
  readonly dropLimitV: number;
  /** Readings off the band of what was expected: what they contradict is what is drawn. */
  readonly contradicted: readonly SheetTest[];
  readonly notRead: number;
}
