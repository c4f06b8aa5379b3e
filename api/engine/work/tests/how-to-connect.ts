import { insulationLimit } from '../../proof/expected-limits.ts';
import type { TestGroup } from './sheet-test.ts';

/** What of a circuit decides how its tests are made. */
export interface TestedCircuit {
  /** Fused units, switches and fixed appliances hang from it. */
  readonly hasUnits: boolean;
  /** Socket-outlets with USB, or others with electronics in them. */
  readonly hasElectronics: boolean;
  /** Test current of its RCD, mA; null where none is known of. */
  readonly rcdMa: number | null;
  /** True where the supply is earthed by an electrode. */
  readonly isTt: boolean;
}

/**
 * How a group of tests is made: what to part, link and touch, a step a sentence.
 *
 * Sources: the three steps of a ring, https://electrical.theiet.org/wiring-matters/years/2022/89-march-2022/resistance-readings-for-step-3-of-the-ring-final-circuit-test;
 * what a wrong pairing reads by circuit theory, as in `crossedOhm`; insulation at 250 V where a surge device stays in, BS 7671 643.3.3, from memory;
 * one RCD test at its rated current, https://electrical.theiet.org/wiring-matters/years/2022/91-july-2022/changes-to-rcd-testing-in-bs-76712018plusa22022;
 * both half waves, the no-trip setting and what to keep in mind at each: common practice, no source.
 */
export function howToConnect(group: TestGroup, circuit: TestedCircuit): readonly string[] {
  return steps[group](circuit);
}

const DEAD = 'Dead, locked off and proved dead.';

const units = ({ hasUnits }: TestedCircuit): readonly string[] =>
  hasUnits
    ? ['At a fused unit: its fuse in, its switch on, the appliance parted; measure on its load side.']
    : [];

const crossing = (other: 'neutral' | 'earth'): readonly string[] => [
  DEAD,
  `At the board join the line of end A to the ${other} of end B, and the line of end B to the ${other} of end A.`,
];

const MISPAIRED =
  'If it reads next to nothing near the board and more towards the middle, the ends are joined in the wrong pairs: change them over.';

const steps: Readonly<Record<TestGroup, (circuit: TestedCircuit) => readonly string[]>> = {
  ends: () => [
    DEAD,
    'Part both ends of the ring at the board: two lines, two neutrals, two earths. Null the leads.',
    'Measure from end A to end B: line to line is r1, neutral to neutral rn, earth to earth r2.',
    'No reading is a broken ring: stop, and find where.',
  ],
  'crossed-ln': (circuit) => [
    ...crossing('neutral'),
    'At each point measure line to neutral. All points of the ring read alike; a spur reads more.',
    MISPAIRED,
    ...units(circuit),
  ],
  'crossed-le': (circuit) => [
    ...crossing('earth'),
    'At each point measure line to earth. The highest is R1 + R2 of the circuit.',
    MISPAIRED,
    ...units(circuit),
  ],
  r1r2: (circuit) => [
    DEAD,
    'At the board link the circuit’s line to its earth, parted from the rest. Null the leads.',
    'At each point measure line to earth, switches on.',
    ...units(circuit),
  ],
  insulation: ({ hasElectronics }) => {
    const { testV } = insulationLimit();
    return [
      `${DEAD} Ends back in their terminals, cross-links out. Everything unplugged; fixed appliances and lamps parted.`,
      `${hasElectronics ? 'This circuit has outlets with electronics: part them, or leave line to neutral out.' : 'Part whatever has electronics in it.'} Part surge devices; where one cannot be parted, test at 250 V and say so.`,
      `At the board, the device off: ${testV} V from line and neutral together to earth; then from line to neutral. Nobody touches the circuit meanwhile.`,
    ];
  },
  polarity: () => [
    `${DEAD} With line and earth linked at the board, or in the course of the crossed tests, at each point where something was connected.`,
    'Right is: the line at the terminal for line, fuses and single switches in the line alone.',
  ],
  zs: ({ rcdMa }) => [
    'Live, all covers on. Only with a tester and leads made for it; nobody else at the circuit.',
    `Loop tester at each point named${rcdMa === null ? '' : ', on its setting that does not trip the RCD'}. Write down what it shows.`,
    'What is measured on cool conductors is held to the lower limit for cold readings.',
  ],
  rcd: ({ rcdMa, isTt }) =>
    rcdMa === null
      ? [
          'No RCD is known of here. If there is one, test it at its rated residual current, and put it into the survey.',
        ]
      : [
          `Live, loads off. RCD tester at ${rcdMa} mA, once on each half wave; write down the longer time.`,
          ...(isTt
            ? [
                'On TT some hold this test to 200 ms, the time for disconnection: look into anything between that and the limit.',
              ]
            : []),
        ],
  'rcd-button': () => ['Live. Press the device’s own test button: it must open. Put it back on.'],
};
