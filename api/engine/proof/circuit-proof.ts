import type { CircuitShapeName } from '../circuit/shape.ts';
import type { LongestLength } from './longest-ring.ts';
import type { ScenarioName } from './scenarios.ts';
import type { SourceLoop } from './source-loop.ts';

/** The current in one cable or fuse. */
export interface LegProof {
  /** The network edge's id: leg, part of a leg, new cable, or fuse. */
  readonly leg: string;
  /** Node ids; current flows from `from` to `to`. */
  readonly from: string;
  readonly to: string;
  /** A, never negative; null where no origin reaches the cable, as of a new one from a point whose cable nobody recorded. */
  readonly currentA: number | null;
  /** What the cable may carry as installed, A; null where the survey does not tell, and for fuses. */
  readonly izA: number | null;
  /** current ÷ Iz; null without either. */
  readonly share: number | null;
}

/** Volt drop and fault loop at one point; every figure null where the point is not reached, or a fact behind it unknown. */
export interface PointProof {
  /** The point's id; of a unit that a connection brings along, its node's. */
  readonly point: string;
  /** V below the origin of the circuit. */
  readonly dropV: number | null;
  /**
   * R1 + R2 between the origin and here as it is tested and recorded: of a ring with its ends crossed at the board. Cold
   * at 20 °C, hot at 70 °C.
   */
  readonly r1r2ColdOhm: number | null;
  readonly r1r2HotOhm: number | null;
  /** The loop before the circuit and R1 + R2. */
  readonly zsColdOhm: number | null;
  readonly zsHotOhm: number | null;
  /** The loop with the circuit in service, both ways of a ring in parallel: what a loop tester shows, never above `zsColdOhm`. */
  readonly zsServiceColdOhm: number | null;
  /** The most that `zsHotOhm` may be for what disconnects here; at a fused unit what protects the cable up to it. */
  readonly zsMaxOhm: number | null;
}

/** The protective conductor of one cable in a fault at the end of it that is nearer to the origin. */
export interface ProtectiveProof {
  readonly leg: string;
  readonly cpcMm2: number;
  /** 230 V by the loop up to there, cold. */
  readonly faultA: number;
  /** √(I²t) ÷ k, for a breaker at 0.1 s; null where the device does not clear such a fault at once, or has no figure. */
  readonly neededMm2: number | null;
  readonly withstandA2s: number;
  /** The most that such a device may let through if it is of energy class 3, A²s; null where no ceiling is held. */
  readonly classCeilingA2s: number | null;
  /** By the maker's data, where the survey has it. */
  readonly letThroughA2s: number | null;
}

/** A figure expected at a point, Ω at 20 °C. */
export interface ExpectedAt {
  readonly point: string;
  readonly ohm: number;
}

/** What a tester reads of the ring with its ends out of the board, at 20 °C. */
export interface RingProof {
  readonly lengthMm: number;
  /** End to end: line, neutral, protective conductor. */
  readonly r1Ohm: number;
  readonly rnOhm: number;
  /** Null without a protective conductor. */
  readonly r2Ohm: number | null;
  /** Points of the ring in order from end A, as fractions of the loop by its line conductor. */
  readonly order: readonly { readonly point: string; readonly fraction: number }[];
  /** Lines and neutrals crossed: at every point of the ring, and at spurs. */
  readonly step2: readonly ExpectedAt[];
  /** Lines and protective conductors crossed; empty without a protective conductor. */
  readonly step3: readonly ExpectedAt[];
}

/** What a tester shows at the temperature that the conductors have when they are tested. */
export interface ExpectedTests {
  /** °C. */
  readonly conductorC: number;
  /** True where the job says so; else 20 °C is taken. */
  readonly isTold: boolean;
  /** Null where the circuit is no ring. */
  readonly ring: Pick<RingProof, 'r1Ohm' | 'rnOhm' | 'r2Ohm' | 'step2' | 'step3'> | null;
  /** By point; `zsOhm` is the loop before the circuit and R1 + R2, `zsServiceOhm` what a loop tester shows. */
  readonly points: readonly {
    readonly point: string;
    readonly r1r2Ohm: number | null;
    readonly zsOhm: number | null;
    readonly zsServiceOhm: number | null;
  }[];
}

/** What a circuit does under other loads than the handbook's. */
export interface OtherScenario {
  readonly scenario: ScenarioName;
  readonly assumptions: readonly string[];
  readonly legs: readonly LegProof[];
  /** The largest volt drop, and where; null where nothing draws. */
  readonly worstDropV: number | null;
  readonly worstPoint: string | null;
  /** `open-at-worst-leg`: the leg that is open. */
  readonly openLeg: string | null;
}

/** Where on a ring heavy appliances are plugged in or fixed. */
export interface HeavyAppliances {
  /** Points where they are likely, in the ring's order from end A. */
  readonly points: readonly string[];
  /** Points of which that cannot be told: no load named, and no room known. */
  readonly untold: readonly string[];
}

/** By what the circuit is disconnected in a fault, and the limit that this sets, before any fuse further on. */
export interface DisconnectionLimit {
  readonly by: 'overcurrent' | 'rcd' | null;
  /** Ω hot; null where the device is not known. */
  readonly maximumOhm: number | null;
  /** What a cold reading is compared with, and by which rule. */
  readonly coldOhm: number | null;
  readonly coldRule: 'eighty-percent' | 'guide-divisor';
  /** The limit by the RCD, where there is one: it may disconnect what the overcurrent device would not. */
  readonly rcdOhm: number | null;
  /** How the limit comes about, in words: "B32: 218.5 V ÷ 160 A". */
  readonly words: string;
}

/** What a tester has to show besides resistances. */
export interface TesterLimits {
  readonly insulation: { readonly testV: number; readonly minimumMegohm: number };
  /** Null where no RCD is known of. */
  readonly rcd: {
    readonly testMa: number;
    /** Of a delayed one (type S); else nought. */
    readonly minimumMs: number;
    readonly maximumMs: number;
  } | null;
  /** Longest time to disconnect a fault to earth; null where earthing or device are not known. */
  readonly disconnectWithinS: number | null;
}

/** One circuit, proved as far as the survey allows. */
export interface CircuitProof {
  readonly circuit: string;
  readonly shape: CircuitShapeName;
  /** What the figures below are worked out for. */
  readonly scenario: 'handbook';
  /** Everything that was taken for granted, in words. */
  readonly assumptions: readonly string[];
  /** True where no length, cable or device had to be assumed. */
  readonly isWhole: boolean;
  readonly legs: readonly LegProof[];
  readonly points: readonly PointProof[];
  /** Cables that the circuit's own device protects; empty while the device or the loop before it is not known. */
  readonly protective: readonly ProtectiveProof[];
  readonly source: SourceLoop;
  readonly limit: DisconnectionLimit;
  /** What the volt drop may be, V: other uses than lighting, and lighting. */
  readonly dropLimitV: number;
  readonly lightingDropLimitV: number;
  /** Factor by which tabulated volt drops were corrected for the conductor's temperature; 1 where they were not. */
  readonly dropCorrection: number;
  readonly ring?: RingProof;
  readonly expected: ExpectedTests;
  readonly tests: TesterLimits;
  /** How long the circuit could be in its one cable; null where that cannot be told. */
  readonly longest: LongestLength | null;
  readonly otherScenarios: readonly OtherScenario[];
  /** Absent where the circuit is no ring. */
  readonly heavyAppliances?: HeavyAppliances;
}
