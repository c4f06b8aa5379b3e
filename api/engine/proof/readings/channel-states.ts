import type { Channel, ExcessSeen, PointSeen } from './read-channels.ts';
import { CONTACT_OHM, leaningSquare, NULL_OHM, PROBE_OHM } from './reading-noise.ts';
import { type Excess, middleOf, sessionNull } from './session-null.ts';
import type { ChannelState } from './spur-evidence.ts';

/** What was read at a point, with how likely it is a spur (1: beyond doubt) before its readings are looked at. */
export interface Judged {
  readonly seen: PointSeen;
  readonly prior: number;
}

/** No hand is so steady that its readings are only rounded. Judgement, no source. */
const LEAST_HAND = 0.02;
/** The least spread of a contact that is reckoned with, Ω². */
const LEAST_CONTACT_SQUARE = 1e-6;

/** Leads that were not nulled at all, or a second way round for all: so far off a null may be, Ω. Judgement, no source. */
const LEADS_OHM = 0.15;
const FEWEST_TO_TELL = 4;

/** More than two spreads off, a contact stands out, and counts as if it were two. */
const STANDS_OUT = 4;

/** Where the channels start: the null by the middle of what was read, since most points are on the ring. */
export function startStates(
  channels: readonly Channel[],
  points: readonly Judged[],
  contactSquare: number,
): readonly ChannelState[] {
  return channels.map(({ totalOhm }, i) => {
    const read = points
      .flatMap(({ seen, prior }) =>
        prior === 1 ? [] : seen.excesses.flatMap(({ channel, ohm }) => (channel === i ? [ohm] : [])),
      )
      .toSorted((a, b) => a - b);
    const usualSquare = isNullLeftIn(read) ? LEADS_OHM ** 2 : NULL_OHM ** 2;
    return { totalOhm, nullOhm: middleOf(read), nullUsualSquare: usualSquare, contactSquare };
  });
}

/** Whether nearly all points read too much, or too little: no house has so many spurs. */
function isNullLeftIn(sorted: readonly number[]): boolean {
  if (sorted.length < FEWEST_TO_TELL) return false;
  const quarter = Math.floor(sorted.length / 4);
  const low = sorted[quarter] ?? 0;
  const high = sorted[sorted.length - 1 - quarter] ?? 0;
  return low > 3 * NULL_OHM || high < -3 * NULL_OHM;
}

/** What was read of one channel at a point beyond its place on the ring. */
export type ChannelExcess = Excess & Pick<ExcessSeen, 'roundingSquare'>;

/** The excesses by channel, in the order of the channels and of the points. */
export const excessesByChannel = (
  channels: readonly Channel[],
  points: readonly Judged[],
): readonly (readonly ChannelExcess[])[] =>
  channels.map((_, channel) =>
    points.flatMap(({ seen }, point) =>
      seen.excesses.flatMap((each) => (each.channel === channel ? [{ ...each, point }] : [])),
    ),
  );

/** The null by those that are likely on the ring, and from what is left the spread of contacts. */
export function nextStates(
  states: readonly ChannelState[],
  excesses: readonly (readonly ChannelExcess[])[],
  { spur, usual }: { readonly spur: readonly number[]; readonly usual: number },
): readonly ChannelState[] {
  return states.map((state, channel) => {
    const seen = excesses[channel] ?? [];
    const { ohm: nullOhm } = sessionNull(seen, {
      spur,
      contactSquare: state.contactSquare,
      usualSquare: state.nullUsualSquare,
    });
    let sum = 0;
    let count = -1;
    for (const { point, ohm, square } of seen) {
      const ringWeight = 1 - (spur[point] ?? 0);
      // One contact that stands out says nothing of the others.
      const off = Math.min((ohm - nullOhm) ** 2, STANDS_OUT * (square + state.contactSquare));
      sum += ringWeight * (off - square);
      count += ringWeight;
    }
    const contactSquare = leaningSquare(usual, sum, count);
    return { ...state, nullOhm, contactSquare: Math.max(contactSquare, LEAST_CONTACT_SQUARE) };
  });
}

/** By what the ring's points read apart, as a multiple of what is usual at probes and links. */
export function handRatio(
  excesses: readonly (readonly ChannelExcess[])[],
  spur: readonly number[],
  states: readonly ChannelState[],
): number {
  let sum = 0;
  let count = 0;
  states.forEach(({ nullOhm, contactSquare }, channel) => {
    // The null was drawn from the same readings: it takes one of them.
    let of = -1;
    for (const { point, ohm, square, roundingSquare } of excesses[channel] ?? []) {
      const ringWeight = 1 - (spur[point] ?? 0);
      const off = Math.min((ohm - nullOhm) ** 2, STANDS_OUT * (square + contactSquare));
      sum += (ringWeight * (off - roundingSquare)) / (PROBE_OHM ** 2 / 2 + CONTACT_OHM ** 2);
      of += ringWeight;
    }
    count += Math.max(0, of);
  });
  return Math.max(LEAST_HAND, leaningSquare(1, sum, count));
}
