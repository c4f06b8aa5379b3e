import { inferCircuit } from '#engine/proof/readings/infer-circuit.ts';
import type { InferredCircuit } from '#engine/proof/readings/inferred-circuit.ts';
import {
  type CircuitDraw,
  drawCircuit,
  noises,
  type ReadLoops,
  readCircuit,
  seededRandom,
  type TrueCircuit,
} from './simulated-readings.ts';

/** One row of the trial: what is read, how well, and what share of whole circuits an earlier trial placed rightly. */
export interface TrialRow {
  readonly name: string;
  readonly loops: ReadLoops;
  readonly noise: keyof typeof noises;
  /** Percentages by legs of 1, 2, 3 and 5 m: order of the ring, parents of the spurs. */
  readonly expected: readonly (readonly [order: number, parents: number])[];
  /** Spread of a leg's error, m. */
  readonly legErrorM: number;
}

/** Lengths of legs that are tried, m. */
export const trialLegsM = [1, 2, 3, 5] as const;

/** What a first prototype reached, one thousand circuits a cell; its own measurement, no published source. */
export const trialRows: readonly TrialRow[] = [
  {
    name: 'L alone, ordinary',
    loops: ['L'],
    noise: 'ordinary',
    expected: [
      [3, 23],
      [50, 55],
      [88, 78],
      [100, 96],
    ],
    legErrorM: 1,
  },
  {
    name: 'L-N, ordinary',
    loops: ['L-N'],
    noise: 'ordinary',
    expected: [
      [50, 52],
      [98, 90],
      [100, 98],
      [100, 100],
    ],
    legErrorM: 0.5,
  },
  {
    name: 'L-cpc, ordinary',
    loops: ['L-cpc'],
    noise: 'ordinary',
    expected: [
      [80, 70],
      [100, 97],
      [100, 100],
      [100, 100],
    ],
    legErrorM: 0.4,
  },
  {
    name: 'both, ordinary',
    loops: ['L-N', 'L-cpc'],
    noise: 'ordinary',
    expected: [
      [97, 82],
      [100, 99],
      [100, 100],
      [100, 100],
    ],
    legErrorM: 0.3,
  },
  {
    name: 'both, poor',
    loops: ['L-N', 'L-cpc'],
    noise: 'poor',
    expected: [
      [52, 44],
      [98, 83],
      [100, 96],
      [100, 100],
    ],
    legErrorM: 0.6,
  },
];

/** How well one cell went, percentages of whole circuits. */
export interface CellResult {
  readonly orderPercent: number;
  readonly parentsPercent: number;
  readonly membersPercent: number;
  readonly legErrorM: number;
}

/** Ten sockets on the ring, one to three spurs of 1 to 6 m, legs within a tenth of the same length, longer ones to the board. */
const drawOf = (legM: number): CircuitDraw => ({
  ringPoints: 10,
  legM: [legM * 0.9, legM * 1.1],
  boardLegM: [4, 9],
  spurs: [1, 3],
  spurM: [1, 6],
  jointShare: 0,
});

/** Tries one cell on so many circuits of a fixed seed. */
export function trialCell({ loops, noise }: TrialRow, legM: number, circuits: number): CellResult {
  const random = seededRandom(Math.round(legM * 1000) + circuits);
  let [order, parents, members, square, legs] = [0, 0, 0, 0, 0];
  for (let i = 0; i < circuits; i++) {
    const truth = drawCircuit(random, drawOf(legM));
    const inferred = inferCircuit(readCircuit(random, truth, { loops, noise: noises[noise] }), 'ring-one');
    if (isOrderRight(truth, inferred)) order++;
    if (areParentsRight(truth, inferred)) parents++;
    if (areMembersRight(truth, inferred)) members++;
    for (const errorM of legErrorsM(truth, inferred)) {
      square += errorM * errorM;
      legs++;
    }
  }
  const percent = (count: number): number => (100 * count) / circuits;
  return {
    orderPercent: percent(order),
    parentsPercent: percent(parents),
    membersPercent: percent(members),
    legErrorM: Math.sqrt(square / legs),
  };
}

const fractionOf = (inferred: InferredCircuit, id: string): number =>
  inferred.points.find(({ point }) => point === id)?.fraction ?? Number.NaN;

/** Whether the ring's points stand in their true order, whichever of them are taken for spurs. */
function isOrderRight({ ring }: TrueCircuit, inferred: InferredCircuit): boolean {
  const at = ring.map(({ point }) => fractionOf(inferred, point));
  return at.every((fraction, i) => i === 0 || fraction > (at[i - 1] ?? Number.NaN));
}

/** Whether each spur is given the point that it comes from; one that is taken for the ring's, by the nearest place. */
function areParentsRight({ ring, spurs }: TrueCircuit, inferred: InferredCircuit): boolean {
  return spurs.every(({ point, parent }) => {
    const told = inferred.points
      .find((each) => each.point === point)
      ?.parents.find((each) => each.point !== null);
    if (told !== undefined) return told.point === parent;
    const at = fractionOf(inferred, point);
    const off = (id: string): number => Math.abs(fractionOf(inferred, id) - at);
    return ring.map((each) => each.point).toSorted((a, b) => off(a) - off(b))[0] === parent;
  });
}

function areMembersRight({ spurs }: TrueCircuit, inferred: InferredCircuit): boolean {
  const isSpur = new Set(spurs.map(({ point }) => point));
  return inferred.points.every(
    ({ point, spurConfidence }) => spurConfidence !== null && spurConfidence > 0.5 === isSpur.has(point),
  );
}

function legErrorsM({ ring }: TrueCircuit, inferred: InferredCircuit): readonly number[] {
  const loopM = (inferred.loop.lengthMm ?? 0) / 1e3;
  return ring.slice(1).map(({ point, alongM }, i) => {
    const before = ring[i];
    if (before === undefined) return Number.NaN;
    const readM = (fractionOf(inferred, point) - fractionOf(inferred, before.point)) * loopM;
    return readM - (alongM - before.alongM);
  });
}
