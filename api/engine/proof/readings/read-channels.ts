import { crossedOhm } from '../expected-readings.ts';
import type { InferredLoop, LoopName } from './inferred-circuit.ts';
import { type LoopReadings, loopNames, type OhmRead, type ReadAt } from './loop-readings.ts';
import { totalOf } from './loop-totals.ts';
import { type PlaceByReadings, placeByReadings } from './place-by-readings.ts';
import { type PlacePair, probeSquare, roundingSquare } from './reading-noise.ts';
import { middleOf } from './session-null.ts';

/** One manner of reading one loop: what is nulled wrong is shared by all that was read so. */
export interface Channel {
  readonly loop: LoopName;
  readonly how: 'linked' | 'crossed';
  /** Ω of the loop from end to end; where it was not read, as the points' readings add up. */
  readonly totalOhm: number;
  readonly totalIs: 'read' | 'estimated';
}

/** A place on the loop as one loop's two readings tell it: fraction from end A, square of its spread. */
export interface PlaceSeen {
  readonly channel: number;
  readonly fraction: number;
  readonly square: number;
}

/** Ω beyond what the place on the ring accounts for: spur, contact and null together. */
export interface ExcessSeen {
  readonly channel: number;
  readonly ohm: number;
  /** Square of its spread by probes and rounding, Ω². */
  readonly square: number;
  /** The part of it that rounding has. */
  readonly roundingSquare: number;
}

/** A reading from one end alone. */
export interface HalfSeen {
  readonly channel: number;
  readonly end: 'A' | 'B';
  readonly ohm: number;
  readonly square: number;
}

/** All that was read at one point. */
export interface PointSeen {
  readonly point: string;
  readonly places: readonly PlaceSeen[];
  readonly excesses: readonly ExcessSeen[];
  readonly halves: readonly HalfSeen[];
}

/** What was read, as numbers to fit. */
export interface SeenReadings {
  readonly channels: readonly Channel[];
  /** By point id in order; points without a usable reading have empty lists. */
  readonly points: readonly PointSeen[];
}

/** Turns a circuit's readings into places, excesses and halves, each with its spread. */
export function seenReadings(
  readings: LoopReadings,
  loop: InferredLoop,
  usualProbeSquare: number,
): SeenReadings {
  const channels = readChannels(readings, loop);
  const linked = channels.flatMap((channel, i) => (channel.how === 'linked' ? [{ channel, i }] : []));
  const square = sessionProbeSquare(readings, channels, usualProbeSquare);
  return {
    channels,
    points: readings.points.map(({ id }) => {
      const ofLinked = linked.map(({ channel, i }) => {
        const at = readings.loops.get(channel.loop)?.get(id);
        return at === undefined ? nothing : linkedSeen(at, { channel, index: i, square });
      });
      const places = ofLinked.flatMap((each) => each.places);
      const crossed = channels.flatMap((channel, index) => {
        const read = channel.how === 'crossed' ? readings.loops.get(channel.loop)?.get(id)?.crossed : null;
        return read ? [crossedSeen(read, { channel, index, square }, { loop, places })] : [];
      });
      return {
        point: id,
        places,
        excesses: [...ofLinked.flatMap((each) => each.excesses), ...crossed],
        halves: ofLinked.flatMap((each) => each.halves),
      };
    }),
  };
}

const nothing = { places: [], excesses: [], halves: [] } as const;

interface OfChannel {
  readonly channel: Channel;
  readonly index: number;
  /** Square of one reading's spread by the probes, without its rounding. */
  readonly square: number;
}

const readSquare = (read: OhmRead, probe: number): number =>
  probe / read.times + roundingSquare(read.resolutionOhm);

function linkedSeen(
  { fromA, fromB }: ReadAt,
  { channel, index, square }: OfChannel,
): Omit<PointSeen, 'point'> {
  if (fromA && fromB) {
    const place = placeByReadings({ aOhm: fromA.ohm, bOhm: fromB.ohm, totalOhm: channel.totalOhm });
    if (place === null) return nothing;
    const both = (readSquare(fromA, square) + readSquare(fromB, square)) / 4;
    return {
      places: [{ channel: index, fraction: place.fraction, square: both / channel.totalOhm ** 2 }],
      excesses: [
        {
          channel: index,
          ohm: place.spurFraction * channel.totalOhm,
          square: both,
          roundingSquare: (roundingSquare(fromA.resolutionOhm) + roundingSquare(fromB.resolutionOhm)) / 4,
        },
      ],
      halves: [],
    };
  }
  const half = (read: OhmRead | null, end: 'A' | 'B'): readonly HalfSeen[] =>
    read === null ? [] : [{ channel: index, end, ohm: read.ohm, square: readSquare(read, square) }];
  return { places: [], excesses: [], halves: [...half(fromA, 'A'), ...half(fromB, 'B')] };
}

/** What a crossed reading is over that of a place on the ring; where the place is not known, over the middle of all places. */
function crossedSeen(
  read: OhmRead,
  { channel, index, square }: OfChannel,
  { loop, places }: { readonly loop: InferredLoop; readonly places: readonly PlaceSeen[] },
): ExcessSeen {
  const base = (fraction: number): number => crossedBase(channel, loop, fraction);
  const weight = places.reduce((sum, place) => sum + 1 / place.square, 0);
  const known =
    weight > 0 ? places.reduce((sum, place) => sum + place.fraction / place.square, 0) / weight : null;
  const [atBoard, atMiddle] = [base(0), base(0.5)];
  const baseOhm =
    known === null ? atBoard + ((atMiddle - atBoard) * 2) / 3 : base(Math.min(1, Math.max(0, known)));
  // The parabola's mean lies two thirds up, its spread is 0.3 of its height.
  const unknown = known === null ? (0.3 * (atMiddle - atBoard)) ** 2 : 0;
  return {
    channel: index,
    ohm: read.ohm - baseOhm,
    square: readSquare(read, square) + unknown,
    roundingSquare: roundingSquare(read.resolutionOhm) + unknown,
  };
}

function crossedBase(
  { loop: name, totalOhm, totalIs }: Channel,
  loop: InferredLoop,
  fraction: number,
): number {
  const one = loop.r1Ohm ?? loop.rnOhm;
  const other = name === 'L-N' ? (loop.rnOhm ?? loop.r1Ohm) : loop.r2Ohm;
  if (totalIs === 'estimated' || one === null || other === null) return totalOhm / 4;
  return crossedOhm(one * fraction, one, other * fraction, other);
}

/** The manners in which loops were read: linked before crossed, loops as they tell most. */
export function readChannels(readings: LoopReadings, loop: InferredLoop): readonly Channel[] {
  return loopNames.flatMap((name) => {
    const read = [...(readings.loops.get(name)?.values() ?? [])];
    const total = totalOf(loop, name);
    const sums = read.flatMap(({ fromA, fromB }) => (fromA && fromB ? [fromA.ohm + fromB.ohm] : []));
    const crossed = read.flatMap((each) => (each.crossed ? [each.crossed.ohm] : []));
    const isLinked = read.some(({ fromA, fromB }) => fromA ?? fromB);
    const linkedTotal = total ?? (sums.length > 0 ? middleOf(sums) : null);
    const crossedTotal = total ?? (crossed.length > 0 ? 4 * middleOf(crossed) : null);
    const totalIs = total === null ? 'estimated' : 'read';
    return [
      ...(isLinked && linkedTotal !== null && linkedTotal > 0
        ? [{ loop: name, how: 'linked', totalOhm: linkedTotal, totalIs } as const]
        : []),
      ...(crossed.length > 0 && crossedTotal !== null && crossedTotal > 0
        ? [{ loop: name, how: 'crossed', totalOhm: crossedTotal, totalIs } as const]
        : []),
    ];
  });
}

/** The probes' spread as the first two linked loops' places show it, the rounding taken out. */
function sessionProbeSquare(readings: LoopReadings, channels: readonly Channel[], usual: number): number {
  const [one, other] = channels.filter(({ how }) => how === 'linked');
  if (one === undefined || other === undefined) return usual;
  let rounding = 0;
  const pairs: PlacePair[] = [];
  for (const { id } of readings.points) {
    const first = readings.loops.get(one.loop)?.get(id);
    const second = readings.loops.get(other.loop)?.get(id);
    const place = fractionOf(first, one);
    const otherPlace = fractionOf(second, other);
    if (place === null || otherPlace === null) continue;
    rounding = Math.max(rounding, roundingSquare(first?.fromA?.resolutionOhm ?? 0));
    pairs.push({
      fraction: place.fraction,
      otherFraction: otherPlace.fraction,
      totalOhm: one.totalOhm,
      otherTotalOhm: other.totalOhm,
    });
  }
  return Math.max(0, probeSquare(pairs, usual + rounding) - rounding);
}

const fractionOf = (at: ReadAt | undefined, { totalOhm }: Channel): PlaceByReadings | null =>
  at?.fromA && at.fromB ? placeByReadings({ aOhm: at.fromA.ohm, bOhm: at.fromB.ohm, totalOhm }) : null;
