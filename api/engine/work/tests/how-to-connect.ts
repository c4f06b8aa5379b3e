import type { Supply } from '#model/installation.ts';
import { declaredImpedance } from '../../proof/declared-impedance.ts';
import { insulationLimit } from '../../proof/expected-limits.ts';
import type { SourceLoop } from '../../proof/source-loop.ts';
import type { BoardGroup, CircuitGroup } from './sheet-test.ts';

/** What of a circuit decides how its tests are made. */
export interface TestedCircuit {
  /** Fused units, switches and fixed appliances hang from it. */
  readonly hasUnits: boolean;
  /** Socket-outlets with USB, or others with electronics in them. */
  readonly hasElectronics: boolean;
  /** Test current of its RCD, mA; null where none is known of. */
  readonly rcdMa: number | null;
  /** It waits before it opens (type S). */
  readonly isRcdDelayed: boolean;
  /** Outlets or units of it have RCDs of their own. */
  readonly hasOwnRcds: boolean;
  /** True where the supply is earthed by an electrode. */
  readonly isTt: boolean;
}

/**
 * How a group of tests is made: what to part, link and touch, a step a sentence.
 *
 * Sources: the three steps of a ring, https://electrical.theiet.org/wiring-matters/years/2022/89-march-2022/resistance-readings-for-step-3-of-the-ring-final-circuit-test;
 * what a wrong pairing reads by circuit theory, as in `crossedOhm`; insulation at 250 V where a surge device stays in, BS 7671 643.3.3, from memory;
 * what a sound ring reads from end to end and crossed, https://knowt.com/note/af2c6be5-74e1-4c91-a556-c185fb84c4a1/pg-11-15-Electrical-Inspection-Testing-, the
 * 0.05 Ω from memory, the ratios of earth to line from the resistances of BS EN 60228;
 * one RCD test at its rated current, https://electrical.theiet.org/wiring-matters/years/2022/91-july-2022/changes-to-rcd-testing-in-bs-76712018plusa22022;
 * both half waves, the no-trip setting and what to keep in mind at each: common practice, no source.
 */
export function howToConnect(group: CircuitGroup, circuit: TestedCircuit): readonly string[] {
  return steps[group](circuit);
}

const DEAD = 'Dead, locked off and proved dead.';
/** The instrument of BS EN 61557-4 (from memory). */
const DEAD_OHMS = `${DEAD} With a low-resistance ohmmeter.`;

const units = ({ hasUnits }: TestedCircuit): readonly string[] =>
  hasUnits
    ? ['At a fused unit: its fuse in, its switch on, the appliance parted; measure on its load side.']
    : [];

const crossing = (other: 'neutral' | 'earth'): readonly string[] => [
  DEAD_OHMS,
  `At the board join the line of end A to the ${other} of end B, and the line of end B to the ${other} of end A.`,
];

const MISPAIRED =
  'If it reads next to nothing near the board and more towards the middle, the ends are joined in the wrong pairs: change them over.';

const steps: Readonly<Record<CircuitGroup, (circuit: TestedCircuit) => readonly string[]>> = {
  ends: () => [
    DEAD_OHMS,
    'Part both ends of the ring at the board: two lines, two neutrals, two earths. Null the leads.',
    'Measure from end A to end B: line to line is r1, neutral to neutral rn, earth to earth r2.',
    'Right is: rn within 0.05 Ω of r1; r2 about 1.6 times r1 with an earth of 1.5 mm² beside 2.5 mm², about 2.4 times with 1.0 mm².',
    'No reading is a broken ring, and one far off these a loose or wrong connection: stop, and find where.',
  ],
  'crossed-ln': (circuit) => [
    ...crossing('neutral'),
    'At each point measure line to neutral. All points of the ring read alike, about a quarter of r1 + rn; a spur reads more.',
    MISPAIRED,
    ...units(circuit),
  ],
  'crossed-le': (circuit) => [
    ...crossing('earth'),
    'At each point measure line to earth. Points of the ring read about a quarter of r1 + r2, a little less towards the board; a spur reads more. The highest is R1 + R2 of the circuit.',
    MISPAIRED,
    ...units(circuit),
  ],
  r1r2: (circuit) => [
    DEAD_OHMS,
    'At the board link the circuit’s line to its earth, parted from the rest. Null the leads.',
    'At each point measure line to earth, switches on. It grows with the way from the board; no reading is an open line or earth: stop, and find where.',
    ...units(circuit),
  ],
  insulation: ({ hasElectronics }) => {
    const { testV } = insulationLimit();
    return [
      `${DEAD} With an insulation tester. Cross-links out; lines, neutrals and earths of the circuit out of an RCBO or any other device with electronics. Everything unplugged; fixed appliances and lamps parted.`,
      `${hasElectronics ? 'This circuit has outlets with electronics: part them, or leave line to neutral out.' : 'Part whatever has electronics in it.'} Part surge devices; where one cannot be parted, test at 250 V and say so.`,
      `At the board, the device off: ${testV} V from line and neutral together to earth; then from line to neutral. Nobody touches the circuit meanwhile.`,
    ];
  },
  polarity: () => [
    `${DEAD_OHMS} Line and earth linked at the board, or in the course of the crossed tests: look and measure at each point where something was connected.`,
    'Right is: the line at the terminal for line, fuses and single switches in the line alone.',
  ],
  zs: ({ rcdMa }) => [
    'Live, all covers on. Only with a tester and leads made for it; nobody else at the circuit.',
    `Loop tester at each point named${rcdMa === null ? '' : ', on its setting that does not trip the RCD'}. Write down what it shows.`,
    'What is measured on cool conductors is held to the lower limit for cold readings. Less than expected is usual, through other ways to earth; more is a loose or wrong connection: off again, and find it.',
  ],
  rcd: (circuit) => [...rcdAtBoard(circuit), ...(circuit.hasOwnRcds ? OWN_RCDS : [])],
  'rcd-button': ({ hasOwnRcds }) => [
    `Live. Press the ${hasOwnRcds ? 'test button of each RCD' : 'device’s own test button'}: it must open. Put it back on.`,
  ],
  'afdd-button': () => [
    'Live. Press the arc fault device’s own test button, as its maker says: it must open. Put it back on. Its maker’s sheet says what its lamp tells.',
  ],
};

const OWN_RCDS = [
  'An outlet or a unit with an RCD of its own: plug the tester into it, or measure on its load side, at the residual current that is marked on it. Where the RCD at the board opens first, its own time cannot be told: say so.',
];

function rcdAtBoard({ rcdMa, isTt, isRcdDelayed }: TestedCircuit): readonly string[] {
  if (rcdMa === null)
    return [
      'No RCD is known of at the board. If there is one, test it at its rated residual current, and put it into the survey.',
    ];
  return [
    `Live, loads off. RCD tester at ${rcdMa} mA${isRcdDelayed ? ', set to type S' : ''}, once on each half wave; write down the longer time.`,
    ...(isTt && !isRcdDelayed
      ? [
          'On TT some hold this test to 200 ms, the time for disconnection: look into anything between that and the limit.',
        ]
      : []),
  ];
}

/** What decides how the tests of a board are made. */
interface BoardSupply {
  readonly source: SourceLoop;
  readonly supply: Pick<Supply, 'earthing'>;
}

/**
 * How the tests of a board are made. Ze with the earthing conductor parted and everything isolated, the fault current as the greater of two:
 * BS 7671 643.7.3, GN3, from memory; what distributors declare as in `declaredImpedance`.
 */
export const howToTestBoard = (group: BoardGroup, board: BoardSupply): readonly string[] =>
  group === 'spd-indicator'
    ? [
        'Look at the window or the lamp of the surge device, as its maker’s sheet says; its own back-up device on. A spent one is exchanged.',
      ]
    : supplySteps(board);

function supplySteps({ source, supply: { earthing } }: BoardSupply): readonly string[] {
  const declared = earthing === undefined ? null : declaredImpedance(earthing);
  return [
    'Live, with fused leads and finger guards, covers on as far as the test allows; nobody else near the open board. Polarity at the supply’s own terminals, line to neutral, line to earth.',
    source.from === 'board'
      ? 'Loop tester at the board’s incoming line, neutral and earth, everything connected: the loop of line and earth.'
      : 'For Ze: main switch off and locked, the earthing conductor parted from the rest; loop tester from the incoming line to it. It goes back on before anything else is made live.',
    'Fault current: line to neutral and line to earth, all earths connected; write down the greater.',
    ...(declared === null
      ? []
      : [`Distributors declare up to ${declared.ohm} Ω for ${earthing}; ask them about more.`]),
  ];
}
