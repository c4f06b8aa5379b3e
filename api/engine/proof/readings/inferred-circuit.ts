/** A loop that an instrument reads: two conductors linked at the far place, or one alone. */
export type LoopName = 'L-N' | 'L-cpc' | 'L' | 'N' | 'cpc';

/** Something that the readings say, and how likely it is right. */
export interface Statement {
  /** 0 to 1, calibrated: of statements given 0.9, nine in ten are right, where instrument and hand are as assumed. */
  readonly confidence: number;
  readonly words: string;
}

/** What kinds of readings there were; only those of this circuit, taken before the work. */
export interface ReadingsTaken {
  /** Conductors read from end to end, in the order L, N, cpc. */
  readonly endToEnd: readonly ('L' | 'N' | 'cpc')[];
  /** Loops with linked readings, how many points were read from each end; in the order of `LoopName`. */
  readonly linked: readonly { readonly loop: LoopName; readonly fromA: number; readonly fromB: number }[];
  /** Loops read with their far ends crossed, and at how many points. */
  readonly crossed: readonly { readonly loop: LoopName; readonly points: number }[];
  /** Points at which cables were counted with the plate open. */
  readonly plates: number;
  /** Readings that could not be used, by id in order, and why. */
  readonly leftOut: readonly { readonly reading: string; readonly words: string }[];
}

/** The loop as a whole, at 20 °C. */
export interface InferredLoop {
  /** End to end: line, neutral, protective conductor; null where not read. */
  readonly r1Ohm: number | null;
  readonly rnOhm: number | null;
  readonly r2Ohm: number | null;
  /** r2 ÷ r1; null where either is missing. */
  readonly ratio: number | null;
  /** By the line conductor (by the neutral where that alone was read); null where neither is known. */
  readonly lengthMm: number | null;
  readonly plusMinusMm: number | null;
  /** The line conductor's area by which metres are worked out, and whether the survey tells it. */
  readonly lineMm2: number;
  readonly lineMm2By: 'survey' | 'assumed';
  /** The area of protective conductor that fits r2 ÷ r1; null where none does, or a reading is missing. */
  readonly cpc: (Statement & { readonly areaMm2: number }) | null;
}

/** From where a spur may come. */
export interface InferredParent extends Statement {
  /** The ring's point, or null for a joint in the cable between the two points told. */
  readonly point: string | null;
  /** The neighbours of a joint, end A first; null for the board's end. Null where `point` is told. */
  readonly between: { readonly before: string | null; readonly after: string | null } | null;
}

/** A point as its readings place it. */
export interface InferredPoint extends Statement {
  readonly point: string;
  /** Where on the loop from end A, 0 to 1, a spur's where it leaves it; null where the readings do not tell. */
  readonly fraction: number | null;
  /** Half the span that holds it nineteen times in twenty. */
  readonly fractionPlusMinus: number | null;
  /** The same along the cable from end A, mm; null without a length of the loop. */
  readonly alongMm: number | null;
  readonly alongPlusMinusMm: number | null;
  readonly role: 'ring' | 'spur' | 'cannot-say';
  /** What tells the role: readings, cables counted with the plate open, or both; null where nothing does. */
  readonly by: 'readings' | 'cables' | 'both' | null;
  /** How likely it is a spur, 0 to 1; null where nothing tells. */
  readonly spurConfidence: number | null;
  /** Length of the spur, if it is one; null on the ring beyond doubt, or untold. */
  readonly spurMm: number | null;
  readonly spurPlusMinusMm: number | null;
  /** Poor contact that would read the same as such a spur, mΩ, rounded; null where there is none to speak of. */
  readonly contactMilliohm: number | null;
  /** A spur's possible parents, the likeliest first; empty on the ring. */
  readonly parents: readonly InferredParent[];
}

/** A leg of the ring between neighbours in the order that the readings give. The confidence is that of this order of the two. */
export interface InferredLeg extends Statement {
  /** Null for end A. */
  readonly from: string | null;
  /** Null for end B. */
  readonly to: string | null;
  /** Share of the loop. */
  readonly fraction: number;
  readonly fractionPlusMinus: number;
  /** Null without a length of the loop. */
  readonly lengthMm: number | null;
  readonly plusMinusMm: number | null;
}

/** Where the readings and what is recorded differ. */
export interface Contradiction extends Statement {
  readonly kind:
    | 'ends-swapped'
    | 'order'
    | 'role'
    | 'parent'
    | 'leg-length'
    | 'cable-count'
    | 'cpc-size'
    | 'not-a-ring';
  /** Points, legs or the circuit concerned, in order of the ring. */
  readonly subjects: readonly string[];
}

/** A usual cause of readings that do not fit together. */
export interface MisfitCause {
  readonly kind:
    | 'poor-contact'
    | 'broken-conductor'
    | 'wrong-pairing'
    | 'interconnected-rings'
    | 'other-cpc-size'
    | 'parallel-earth-paths'
    | 'load-left-connected'
    | 'leads-not-taken-off'
    | 'line-neutral-differ';
  /** Points or the circuit concerned. */
  readonly subjects: readonly string[];
  readonly words: string;
}

/** Something to measure or look at next, the most settling first. */
export interface NextReading {
  readonly kind: 'end-to-end' | 'linked' | 'count-cables' | 'remake-and-read-again' | 'trace-cable';
  readonly points: readonly string[];
  readonly loop: LoopName | null;
  readonly end: 'A' | 'B' | null;
  /** What to do, and what it settles. */
  readonly words: string;
}

/** Something that these readings cannot tell, whatever their precision. */
export interface Undecidable {
  readonly kind: 'tap-or-joint' | 'chained-or-separate' | 'hidden-point';
  readonly points: readonly string[];
  readonly words: string;
}

/** What the readings of one circuit say of its wiring. All lists are sorted as told; no readings give empty ones. */
export interface InferredCircuit {
  readonly circuit: string;
  readonly taken: ReadingsTaken;
  readonly loop: InferredLoop;
  readonly order: Statement & {
    /** `told`: all points of the circuit are placed; `partly`: some are; `cannot-say`: the readings do not decide. */
    readonly answer: 'told' | 'partly' | 'cannot-say';
    /** The ring's points from end A; empty where the answer is `cannot-say`. */
    readonly points: readonly string[];
  };
  /** By fraction from end A, then by spur length, then by id; those without a fraction last. */
  readonly points: readonly InferredPoint[];
  /** From end A to end B; empty where the order is not told. */
  readonly legs: readonly InferredLeg[];
  readonly contradictions: readonly Contradiction[];
  readonly causes: readonly MisfitCause[];
  readonly next: readonly NextReading[];
  readonly undecidable: readonly Undecidable[];
}
