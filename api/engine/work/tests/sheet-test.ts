import type { Reading } from '#model/installation.ts';
import type { ExpectedBand } from '../../proof/reading-band.ts';

/**
 * The tests in working order, dead before live (BS 7671 643.1). `ends` is a ring's conductors from end to end, `crossed-ln` and
 * `crossed-le` are read at its points with the ends crossed at the board, `r1r2` where line and earth are linked there. `supply` is the
 * loop, the fault current and the polarity at a board once more, `spd-indicator` what its surge device shows; all others are of a circuit.
 */
export const testGroups = [
  'ends',
  'crossed-ln',
  'crossed-le',
  'r1r2',
  'insulation',
  'polarity',
  'supply',
  'zs',
  'rcd',
  'rcd-button',
  'afdd-button',
  'spd-indicator',
] as const;
export type TestGroup = (typeof testGroups)[number];

/** The groups that are tested live. */
const liveGroups: ReadonlySet<TestGroup> = new Set([
  'supply',
  'zs',
  'rcd',
  'rcd-button',
  'afdd-button',
  'spd-indicator',
]);

/** The groups that are tested once a board, and not once a circuit. */
export const boardGroups = ['supply', 'spd-indicator'] as const satisfies readonly TestGroup[];
export type BoardGroup = (typeof boardGroups)[number];
export type CircuitGroup = Exclude<TestGroup, BoardGroup>;

export const isBoardGroup = (group: TestGroup): group is BoardGroup =>
  group === 'supply' || group === 'spd-indicator';

/** Whether a group is tested live. */
export const isLiveTest = (group: TestGroup): boolean => liveGroups.has(group);

/** What a reading must show, whatever was expected. `between`: no less than one and no more than the other. `right`: it is either so, or it is not. */
export type TestLimit =
  | { readonly bound: 'between'; readonly least: number; readonly value: number; readonly words: string }
  | { readonly bound: 'most' | 'least'; readonly value: number; readonly words: string }
  | { readonly bound: 'right'; readonly words: string };

/** What reading answers a test, and how it is kept. */
export type ReadingAsked =
  | {
      readonly kind: 'loop';
      readonly loop: 'L' | 'N' | 'cpc' | 'L-N' | 'L-cpc';
      readonly from: 'end-to-end' | 'crossed' | 'A';
    }
  | { readonly kind: 'insulation'; readonly between: 'LN-cpc' | 'L-N' }
  | { readonly kind: 'polarity' | 'zs' | 'ze' | 'pfc' | 'rcd-button' | 'afdd-button' | 'spd-indicator' }
  | { readonly kind: 'rcd'; readonly mA: number };

/**
 * How a test came out. `fails`: beyond the standard's limit, or wrong. `look`: off the band, which is ours and no limit. `fits`: within all that it
 * is held to. `read`: there is nothing to hold it to.
 */
export type TestVerdict = 'not-read' | 'fits' | 'look' | 'fails' | 'read';

/** One thing to test once the work is done, with what was read. */
export interface SheetTest {
  /** `<circuit or board>/<group>/<point, conductor, pair or what is tested of the board>`; its own within a sheet. */
  readonly id: string;
  readonly group: TestGroup;
  /** The point or unit, of tests of a whole circuit the circuit, of a board's the board. */
  readonly subject: string;
  /** What it is called on all papers: "R8", "r1", "line and neutral to earth". */
  readonly mark: string;
  /** The room, where the plan tells it. */
  readonly room: string | null;
  /** Null for what is right or wrong. */
  readonly unit: 'Ω' | 'MΩ' | 'kA' | 'ms' | null;
  /** Ω at the temperature of the test, of a fault current the loop that lets it flow; null where nothing can be expected. */
  readonly expected: ExpectedBand | null;
  /** Null where no standard sets one. */
  readonly limit: TestLimit | null;
  readonly asked: ReadingAsked;
  /** The job's circuit and place that the reading is kept with; a circuit that the scheme brings is no circuit of the job yet. */
  readonly circuit: string | null;
  readonly at: string | null;
  /** False where no point of the job stands for what is tested: there is room on paper alone. */
  readonly isKept: boolean;
  /** The reading after the work that answers it, of several the last of the job's list; null: not read. */
  readonly reading: Reading | null;
  /** How far it is from what is expected, Ω as that is; null without either. */
  readonly offOhm: number | null;
  /** Against the band, which is ours. */
  readonly fitsBand: boolean | null;
  /** Against the standard's limit, as read. */
  readonly keepsLimit: boolean | null;
  readonly verdict: TestVerdict;
}

/** The tests of one group of one circuit, or of one board, with how they are made. */
export interface TestPart {
  /** Null for tests of a board. */
  readonly circuitId: string | null;
  /** The circuit's name, or the board's. */
  readonly circuitName: string;
  readonly group: TestGroup;
  readonly isLive: boolean;
  /** What to part, link and touch, in order. */
  readonly connect: readonly string[];
  /** In the order of the circuit, from the board; of a board in working order. */
  readonly tests: readonly SheetTest[];
}

/** All tests of a scheme in working order: dead tests of every circuit, then live ones; within a group by circuit or board. */
export interface TestSheet {
  readonly parts: readonly TestPart[];
  /** What the conductors are taken to be at, °C, and whether the job says so. */
  readonly conductorC: number;
  readonly isTold: boolean;
}
