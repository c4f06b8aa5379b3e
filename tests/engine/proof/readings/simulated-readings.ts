import type { Cable } from '#model/cable.ts';
import type { Point, Reading } from '#model/installation.ts';
import type { Job } from '#model/job.ts';

/** How far readings go wrong, Ω: one spread at the probes and at the link, the most that the null is off either way. */
export interface ReadingNoise {
  readonly probeOhm: number;
  readonly linkOhm: number;
  readonly nullOhm: number;
  readonly resolutionOhm: number;
}

const noiseOf = (probe: number, link: number, offNull: number): ReadingNoise => ({
  probeOhm: probe / 1e3,
  linkOhm: link / 1e3,
  nullOhm: offNull / 1e3,
  resolutionOhm: 0.01,
});

/** Manners of reading: mΩ at the probes, at the link, of the null. Judgement, no source. */
export const noises = {
  'rounding only': noiseOf(0, 0, 0),
  'good practice': noiseOf(3, 4, 5),
  ordinary: noiseOf(7, 10, 10),
  poor: noiseOf(15, 25, 20),
} as const;

/** A generator of numbers from 0 to 1, the same for the same seed on every machine (mulberry32). */
export function seededRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

type Random = () => number;
const between = (random: Random, low: number, high: number): number => low + (high - low) * random();
const whole = (random: Random, low: number, high: number): number =>
  low + Math.floor(random() * (high - low + 1));
/** Box and Muller's normal numbers. */
const normal = (random: Random): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

function shuffled<T>(random: Random, list: readonly T[]): readonly T[] {
  const mixed = [...list];
  for (let i = mixed.length - 1; i > 0; i--) {
    const j = whole(random, 0, i);
    const [a, b] = [mixed[i], mixed[j]];
    if (a !== undefined && b !== undefined) [mixed[i], mixed[j]] = [b, a];
  }
  return mixed;
}

/** What really is. Metres along the cable from end A. */
export interface TrueCircuit {
  /** The ring's points in order from end A. */
  readonly ring: readonly { readonly point: string; readonly alongM: number }[];
  /** Spurs: from which point, null from a joint in a leg. */
  readonly spurs: readonly {
    readonly point: string;
    readonly parent: string | null;
    readonly alongM: number;
    readonly spurM: number;
  }[];
  readonly loopM: number;
}

/** How circuits are drawn at random. */
export interface CircuitDraw {
  readonly ringPoints: number;
  /** Shortest and longest leg between points, m. */
  readonly legM: readonly [number, number];
  readonly boardLegM: readonly [number, number];
  readonly spurs: readonly [number, number];
  readonly spurM: readonly [number, number];
  /** The share of spurs that leave the ring by a joint in a leg. */
  readonly jointShare: number;
}

/** Draws a circuit: ring points in order with legs and board legs in range, spurs each from a point of its own. */
export function drawCircuit(random: Random, draw: CircuitDraw): TrueCircuit {
  const spurCount = whole(random, ...draw.spurs);
  // Ids in random order, so that nothing can be had from sorting by them.
  const ids = shuffled(
    random,
    Array.from({ length: draw.ringPoints + spurCount }, (_, i) => `point-${String(i).padStart(4, '0')}`),
  );
  let alongM = 0;
  const ring = ids.slice(0, draw.ringPoints).map((point, i) => {
    alongM += between(random, ...(i === 0 ? draw.boardLegM : draw.legM));
    return { point, alongM };
  });
  const loopM = alongM + between(random, ...draw.boardLegM);
  const parents = shuffled(random, ring);
  const spurs = ids.slice(draw.ringPoints).map((point, i) => {
    const parent = parents[i % parents.length];
    const spurM = between(random, ...draw.spurM);
    const byJoint = random() < draw.jointShare || parent === undefined;
    return byJoint
      ? { point, parent: null, alongM: between(random, 0, loopM), spurM }
      : { point, parent: parent.point, alongM: parent.alongM, spurM };
  });
  return { ring, spurs, loopM };
}

/** The loops that are read with a link at every point. */
export type ReadLoops = readonly ('L-N' | 'L-cpc' | 'L')[];

const CABLE: Cable = { type: 'flat-twin', lineMm2: 2.5, cpcMm2: 1.5 };
/** IEC 60228, class 1 and 2, copper at 20 °C, mΩ/m. */
const OHM_PER_M = { L: 7.41e-3, 'L-N': 14.82e-3, 'L-cpc': 19.51e-3, cpc: 12.1e-3 } as const;

export const simulatedPoint = (id: string, cablesSeen?: number): Point => ({
  id,
  label: id,
  status: 'existing',
  circuit: 'ring-one',
  kind: 'socket-twin',
  features: [],
  photos: [],
  ...(cablesSeen === undefined ? {} : { asFound: { cablesSeen } }),
});

/** A job that holds nothing but one ring, its points and their readings. */
export function jobOfReadings(points: readonly Point[], readings: readonly Reading[]): Job {
  return {
    format: 'ringwright-job',
    version: 1,
    id: 'readings-1',
    reference: 'R1',
    title: 'Readings',
    edition: 'BS 7671:2018+A4:2026',
    site: { customer: '', address: [], nation: 'england', premises: 'house' },
    storeys: [],
    supply: { nominalV: 230, bonding: [], otherSources: [] },
    boards: [{ id: 'board-one', label: 'Board', rcds: [] }],
    circuits: [{ id: 'ring-one', name: 'Ring', board: 'board-one', use: 'sockets', shape: 'ring' }],
    points: [...points],
    legs: [
      {
        id: 'one-leg',
        circuit: 'ring-one',
        from: { origin: 'ring-one', end: 'A' },
        to: { point: points[0]?.id ?? '' },
        cable: CABLE,
      },
    ],
    readings: [...readings],
    answers: [],
    schemes: [],
    terms: { labour: 'typical', vat: 'standard' },
    stock: [],
    assets: [],
  };
}

/** Reads a circuit as a person with a tester would, end to end and linked at every point from both ends. */
export function readCircuit(
  random: Random,
  truth: TrueCircuit,
  { loops, noise }: { readonly loops: ReadLoops; readonly noise: ReadingNoise },
): Job {
  const readings: Reading[] = [];
  const put = (
    reading: Pick<Extract<Reading, { kind: 'loop' }>, 'loop' | 'from' | 'linkedAt'>,
    ohm: number,
  ): void => {
    const probed = ohm + noise.probeOhm * normal(random);
    readings.push({
      id: `reading-${String(readings.length).padStart(4, '0')}`,
      circuit: 'ring-one',
      kind: 'loop',
      phase: 'before',
      resolutionOhm: noise.resolutionOhm,
      ...reading,
      ohm: Math.max(0, Math.round(probed / noise.resolutionOhm) * noise.resolutionOhm),
    });
  };
  for (const loop of ['L', 'N', 'cpc'] as const)
    put({ loop, from: 'end-to-end' }, truth.loopM * (loop === 'cpc' ? OHM_PER_M.cpc : OHM_PER_M.L));
  const points = [
    ...truth.ring.map(({ point, alongM }) => ({ point, alongM, spurM: 0 })),
    ...truth.spurs.map(({ point, alongM, spurM }) => ({ point, alongM, spurM })),
  ];
  for (const loop of loops) {
    const nullOhm = between(random, -noise.nullOhm, noise.nullOhm);
    for (const { point, alongM, spurM } of points) {
      const contactOhm = nullOhm + noise.linkOhm * normal(random);
      put({ loop, from: 'A', linkedAt: point }, OHM_PER_M[loop] * (alongM + spurM) + contactOhm);
      put(
        { loop, from: 'B', linkedAt: point },
        OHM_PER_M[loop] * (truth.loopM - alongM + spurM) + contactOhm,
      );
    }
  }
  return jobOfReadings(
    points.map(({ point }) => simulatedPoint(point)),
    readings,
  );
}
