import type { Point } from '#model/installation.ts';
import { handRatio } from './channel-states.ts';
import type { Placed } from './confidence.ts';
import type { InferredLoop } from './inferred-circuit.ts';
import { leastSquaresPlace, type PlaceEquation, type SolvedPlace } from './least-squares-place.ts';
import type { LoopReadings } from './loop-readings.ts';
import { eachByItself, tryTogether } from './memberships.ts';
import { type Channel, type PointSeen, type SeenReadings, seenReadings } from './read-channels.ts';
import { CONTACT_OHM, PROBE_OHM } from './reading-noise.ts';
import { type ChannelState, spurLengths } from './spur-evidence.ts';

/** One point as fitted. */
export interface FittedPoint {
  readonly point: Point;
  readonly seen: PointSeen;
  /** How likely it is a spur, 0 to 1; null where neither readings nor cables counted tell. */
  readonly spurConfidence: number | null;
  /** Whether readings speak of a spur at all. */
  readonly isRead: boolean;
  /** Where it is on the loop, of a spur where it leaves it; null where the readings do not decide. */
  readonly placed: Placed | null;
  /** The spur's length as a share of the loop, as if it were one; null where the readings do not tell. */
  readonly spur: Placed | null;
}

/** A circuit as fitted to its readings. */
export interface FittedCircuit {
  readonly channels: readonly Channel[];
  /** What all readings of a channel share, Ω, in the order of the channels. */
  readonly nullOhm: readonly number[];
  /** Spread of a contact, Ω, in the order of the channels. */
  readonly contactOhm: readonly number[];
  readonly points: readonly FittedPoint[];
}

/** One point in six is a spur before anything is known of it. Judgement, no source. */
const SPUR_PRIOR = 0.16;
/** A point with two cables may yet be on a spur that goes on. Judgement, no source. */
const SPUR_BY_TWO_CABLES = 0.003;
const SPUR_BY_MORE_CABLES = 0.001;

/** How likely a point is a spur by the cables counted with its plate open, or usually. */
function spurPrior({ asFound }: Point): number {
  const cables = asFound?.cablesSeen ?? 0;
  if (cables === 1) return 1;
  if (cables === 2) return SPUR_BY_TWO_CABLES;
  return cables > 2 ? SPUR_BY_MORE_CABLES : SPUR_PRIOR;
}

/**
 * Fits places, spurs and what was nulled wrong to a circuit's readings.
 *
 * The places come in closed form, or by least squares where a point was read from one end only. Whether a point is
 * on the ring or a spur hangs together by the null that all share: first each is judged by itself and the null by
 * the ring's majority, in turn; then the points left in doubt are tried both ways in every combination. All of it
 * once as a usual hand would read, and then as steadily as this one is seen to.
 *
 * @param loopM length of the loop, m, for the usual lengths of spurs.
 */
export function fitCircuit(readings: LoopReadings, loop: InferredLoop, loopM: number): FittedCircuit {
  const lengths = spurLengths(loopM);
  const usual = seenReadings(readings, loop, PROBE_OHM ** 2);
  const usualPoints = judged(readings.points, usual);
  const first = eachByItself(usual.channels, usualPoints, { lengths, contactSquare: CONTACT_OHM ** 2 });
  const ratio = handRatio(first.excesses, first.spur, first.states);
  const seen = seenReadings(readings, loop, PROBE_OHM ** 2 * ratio);
  const points = judged(readings.points, seen);
  const by = { lengths, contactSquare: CONTACT_OHM ** 2 * ratio };
  const { spur, states } = tryTogether(points, eachByItself(seen.channels, points, by), by);
  return {
    channels: seen.channels,
    nullOhm: states.map(({ nullOhm }) => nullOhm),
    contactOhm: states.map(({ contactSquare }) => Math.sqrt(contactSquare)),
    points: readings.points.flatMap((point, i) => {
      const each = points[i];
      return each === undefined ? [] : [fittedPoint({ point, ...each }, spur[i] ?? 0, states)];
    }),
  };
}

/** Both lists are in the same order. */
function judged(
  points: readonly Point[],
  { points: seen }: SeenReadings,
): readonly Omit<JudgedPoint, 'point'>[] {
  return seen.map((each, i) => {
    const point = points[i];
    return { seen: each, prior: point === undefined ? SPUR_PRIOR : spurPrior(point) };
  });
}

interface JudgedPoint {
  readonly point: Point;
  readonly seen: PointSeen;
  readonly prior: number;
}

function fittedPoint(
  { point, seen, prior }: JudgedPoint,
  odds: number,
  states: readonly ChannelState[],
): FittedPoint {
  const equations = equationsOf(seen, states);
  const asSpur = leastSquaresPlace(equations, true);
  const isRead = asSpur !== null || seen.excesses.length > 0;
  const isCounted = (point.asFound?.cablesSeen ?? 0) > 0;
  // From one end alone a spur and a longer way round read the same: only a plate opened tells them apart.
  const isRing = odds <= 0.5 && (isRead || prior <= SPUR_BY_TWO_CABLES);
  const place = isRing ? leastSquaresPlace(equations, false) : asSpur;
  return {
    point,
    seen,
    spurConfidence: isRead || isCounted ? odds : null,
    isRead,
    placed: place === null ? null : { fraction: place.fraction, spread: Math.sqrt(place.fractionSquare) },
    spur: spurOf(asSpur, seen, states),
  };
}

function spurOf(
  asSpur: SolvedPlace | null,
  { excesses }: PointSeen,
  states: readonly ChannelState[],
): Placed | null {
  if (asSpur !== null) return { fraction: asSpur.spurFraction, spread: Math.sqrt(asSpur.spurSquare) };
  let weight = 0;
  let sum = 0;
  for (const { channel, ohm, square } of excesses) {
    const state = states[channel];
    if (state === undefined) continue;
    const each = state.totalOhm ** 2 / (square + state.contactSquare);
    weight += each;
    sum += (each * (ohm - state.nullOhm)) / state.totalOhm;
  }
  return weight === 0 ? null : { fraction: Math.max(0, sum / weight), spread: Math.sqrt(1 / weight) };
}

function equationsOf(
  { places, excesses, halves }: PointSeen,
  states: readonly ChannelState[],
): readonly PlaceEquation[] {
  const state = (channel: number): ChannelState =>
    states[channel] ?? { totalOhm: 1, nullOhm: 0, nullUsualSquare: 1, contactSquare: 0 };
  return [
    ...places.map(({ fraction, square }) => ({ along: 1, off: 0, value: fraction, square })),
    ...excesses.map(({ channel, ohm, square }) => {
      const { totalOhm, nullOhm, contactSquare } = state(channel);
      return {
        along: 0,
        off: 1,
        value: (ohm - nullOhm) / totalOhm,
        square: (square + contactSquare) / totalOhm ** 2,
      };
    }),
    ...halves.map(({ channel, end, ohm, square }) => {
      const { totalOhm, nullOhm, contactSquare } = state(channel);
      const reach = (ohm - nullOhm) / totalOhm;
      return {
        along: end === 'A' ? 1 : -1,
        off: 1,
        value: end === 'A' ? reach : reach - 1,
        square: (square + contactSquare) / totalOhm ** 2,
      };
    }),
  ];
}
