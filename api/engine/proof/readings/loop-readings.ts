import type { Point, Reading } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { inIdOrder } from '../../circuit/id-order.ts';
import { temperatureRatio } from '../conductor-ohms.ts';
import type { LoopName } from './inferred-circuit.ts';
import { readingsTaken } from './readings-taken.ts';

/** A resistance read, at 20 °C and without the leads. */
export interface OhmRead {
  readonly ohm: number;
  /** The instrument's last digit, Ω. */
  readonly resolutionOhm: number;
  /** How many readings of the same day it is the mean of. */
  readonly times: number;
}

/** What one loop read at one point, from where; null where it was not read or the loop is open. */
export interface ReadAt {
  readonly fromA: OhmRead | null;
  readonly fromB: OhmRead | null;
  readonly crossed: OhmRead | null;
  /** From which of the three no loop closed: a figure too large for any house. */
  readonly open: readonly ReadFrom[];
}

/** From where a point is read. */
export type ReadFrom = 'A' | 'B' | 'crossed';

/** A circuit's loop readings, taken apart. */
export interface LoopReadings {
  readonly circuitId: string;
  /** Every point there is in the circuit, and every one that was read; by id. */
  readonly points: readonly Point[];
  /** Conductors end to end; `open` where nothing closed. */
  readonly endToEnd: Readonly<Record<Conductor, OhmRead | 'open' | null>>;
  /** By loop in the order of `loopNames`, by point id. */
  readonly loops: ReadonlyMap<LoopName, ReadonlyMap<string, ReadAt>>;
  readonly leftOut: readonly { readonly reading: string; readonly words: string }[];
}

/** The conductors of a ring, in the order in which they are read from end to end. */
export const conductors = ['L', 'N', 'cpc'] as const;
export type Conductor = (typeof conductors)[number];

/** The conductors that do not close from end to end. */
export const openConductors = ({ endToEnd }: Pick<LoopReadings, 'endToEnd'>): readonly Conductor[] =>
  conductors.filter((conductor) => endToEnd[conductor] === 'open');

type LoopReading = Extract<Reading, { kind: 'loop' }>;

/** Every loop, the ones that tell most first. */
export const loopNames: readonly LoopName[] = ['L-N', 'L-cpc', 'L', 'N', 'cpc'];

/** More is no closed loop: 10 Ω is over 500 m of 1.0 mm² copper at 18.1 mΩ/m (IEC 60228, class 1). */
const OPEN_OHM = 10;

/** The last digit of the usual low-resistance tester. Common practice, no source. */
const USUAL_RESOLUTION_OHM = 0.01;

/** Readings of one thing that differ by more were taken before and after a contact was remade. Judgement, no source. */
const REMADE_OHM = 0.025;

/** Takes the readings of a circuit apart, those taken before the work. The order in which the job lists them means nothing. */
export function loopReadings(job: Job, circuitId: string): LoopReadings {
  const pointById = new Map(job.points.map((point) => [point.id, point]));
  const leftOut: { reading: string; words: string }[] = [];
  const groups = new Map<string, LoopReading[]>();
  for (const reading of readingsTaken(job)) {
    if (reading.kind !== 'loop' || !isOfCircuit(reading, circuitId, pointById, job)) continue;
    const why = whyUnusable(reading, pointById);
    if (why !== null) leftOut.push({ reading: reading.id, words: why });
    else {
      const key = [reading.loop, reading.from, placeOf(reading) ?? ''].join('|');
      groups.set(key, [...(groups.get(key) ?? []), reading]);
    }
  }
  const read = (loop: LoopName, from: LoopReading['from'], at: string): OhmRead | 'open' | null => {
    const group = groups.get([loop, from, at].join('|'));
    return group === undefined ? null : onlyLatest(group);
  };
  const ids = [...pointById.keys()].toSorted(inIdOrder);
  return {
    circuitId,
    points: job.points
      .filter(
        ({ id, circuit, status }) =>
          (circuit === circuitId && status !== 'wanted') ||
          loopNames.some((loop) => readAt(read, loop, id) !== null),
      )
      .toSorted((a, b) => inIdOrder(a.id, b.id)),
    endToEnd: {
      L: read('L', 'end-to-end', ''),
      N: read('N', 'end-to-end', ''),
      cpc: read('cpc', 'end-to-end', ''),
    },
    loops: new Map(
      loopNames.flatMap((loop) => {
        const byPoint = new Map(
          ids.flatMap((id) => {
            const at = readAt(read, loop, id);
            return at === null ? [] : [[id, at] as const];
          }),
        );
        return byPoint.size === 0 ? [] : [[loop, byPoint] as const];
      }),
    ),
    leftOut: leftOut.toSorted((a, b) => inIdOrder(a.reading, b.reading)),
  };
}

function isOfCircuit(
  reading: LoopReading,
  circuitId: string,
  pointById: ReadonlyMap<string, Point>,
  job: Job,
): boolean {
  if (reading.circuit !== undefined) return reading.circuit === circuitId;
  const at = placeOf(reading);
  if (at === null) return job.circuits.length === 1 && job.circuits[0]?.id === circuitId;
  return pointById.get(at)?.circuit === circuitId;
}

/** The point of a linked or crossed reading; null from end to end. */
function placeOf({ from, at, linkedAt }: LoopReading): string | null {
  if (from === 'end-to-end') return null;
  return (from === 'crossed' ? (at ?? linkedAt) : (linkedAt ?? at)) ?? null;
}

function whyUnusable(reading: LoopReading, pointById: ReadonlyMap<string, Point>): string | null {
  const { loop, from, phase } = reading;
  const isPair = loop === 'L-N' || loop === 'L-cpc';
  if (phase === 'after') return 'Taken after the work: it says nothing of the circuit as found.';
  if (from === 'end-to-end') return isPair ? 'End to end is read of one conductor at a time.' : null;
  if (from === 'crossed' && !isPair) return 'A crossed reading is taken between two conductors.';
  const place = placeOf(reading);
  if (place === null) return 'It does not tell at which point it was taken.';
  return pointById.has(place) ? null : 'It was taken at the board, where every ring reads alike.';
}

function readAt(
  read: (loop: LoopName, from: LoopReading['from'], at: string) => OhmRead | 'open' | null,
  loop: LoopName,
  id: string,
): ReadAt | null {
  const each = { A: read(loop, 'A', id), B: read(loop, 'B', id), crossed: read(loop, 'crossed', id) };
  const sides: readonly ReadFrom[] = ['A', 'B', 'crossed'];
  if (sides.every((side) => each[side] === null)) return null;
  const closed = (one: OhmRead | 'open' | null): OhmRead | null => (one === 'open' ? null : one);
  return {
    fromA: closed(each.A),
    fromB: closed(each.B),
    crossed: closed(each.crossed),
    open: sides.filter((side) => each[side] === 'open'),
  };
}

/** Of readings of one thing the last day's count, its mean; far apart, the lowest, since a poor contact only ever adds. */
function onlyLatest(group: readonly LoopReading[]): OhmRead | 'open' {
  const day = group
    .map(({ takenOn }) => takenOn ?? '')
    .toSorted(inIdOrder)
    .at(-1);
  const latest = group.filter(({ takenOn }) => (takenOn ?? '') === day);
  const closed = latest.filter(({ ohm }) => ohm <= OPEN_OHM);
  if (closed.length === 0) return 'open';
  const ohms = closed.map(atTwenty).toSorted((a, b) => a - b);
  const lowest = ohms[0] ?? 0;
  const alike = ohms.filter((ohm) => ohm - lowest <= REMADE_OHM);
  return {
    ohm: alike.reduce((sum, ohm) => sum + ohm, 0) / alike.length,
    resolutionOhm: Math.max(...closed.map(({ resolutionOhm }) => resolutionOhm ?? USUAL_RESOLUTION_OHM)),
    times: alike.length,
  };
}

/** A resistance as the instrument showed it, brought to 20 °C and without the leads, Ω; never below nought. */
export const atTwenty = ({ ohm, nullOhm, conductorC }: LoopReading): number =>
  Math.max(0, ohm - (nullOhm ?? 0)) / temperatureRatio(conductorC ?? 20);
