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

/** Where the channels start: the null by the middle of what was read, since most points are on the ring. */
export function startStates(
  channels: readonly Channel[],
  points: readonly Judged[],
  contactSquare: number,
): readonly ChannelState[] {
  return channels.map(({ totalOhm }, i) => ({
    totalOhm,
    nullOhm: middleOf(
      points.flatMap(({ seen, prior }) =>
        prior === 1 ? [] : seen.excesses.flatMap(({ channel, ohm }) => (channel === i ? [ohm] : [])),
      ),
    ),
    contactSquare,
  }));
}

/** What each point read of a channel beyond its place on the ring, weighted by how likely it is on the ring. */
export function excessesOf(
  channel: number,
  points: readonly Judged[],
  spur: readonly number[],
): readonly (Excess & ExcessSeen)[] {
  return points.flatMap(({ seen }, i) =>
    seen.excesses.flatMap((each) =>
      each.channel === channel ? [{ ...each, ringWeight: 1 - (spur[i] ?? 0) }] : [],
    ),
  );
}

/** The null by those that are likely on the ring, and from what is left the spread of contacts. */
export function nextStates(
  states: readonly ChannelState[],
  points: readonly Judged[],
  { spur, usual }: { readonly spur: readonly number[]; readonly usual: number },
): readonly ChannelState[] {
  return states.map((state, channel) => {
    const seen = excessesOf(channel, points, spur);
    const { ohm: nullOhm } = sessionNull(
      seen.map((each) => ({ ...each, square: each.square + state.contactSquare })),
      NULL_OHM ** 2,
    );
    let sum = 0;
    let count = -1;
    for (const { ohm, square, ringWeight } of seen) {
      // One contact that stands out says nothing of the others.
      const off = Math.min((ohm - nullOhm) ** 2, 9 * (square + state.contactSquare));
      sum += ringWeight * (off - square);
      count += ringWeight;
    }
    const contactSquare = leaningSquare(usual, sum, count);
    return { ...state, nullOhm, contactSquare: Math.max(contactSquare, LEAST_CONTACT_SQUARE) };
  });
}

/** By what the ring's points read apart, as a multiple of what is usual at probes and links. */
export function handRatio(
  points: readonly Judged[],
  spur: readonly number[],
  states: readonly ChannelState[],
): number {
  let sum = 0;
  let count = 0;
  states.forEach(({ nullOhm, contactSquare }, channel) => {
    // The null was drawn from the same readings: it takes one of them.
    let of = -1;
    for (const { ohm, square, roundingSquare, ringWeight } of excessesOf(channel, points, spur)) {
      const off = Math.min((ohm - nullOhm) ** 2, 9 * (square + contactSquare));
      sum += (ringWeight * (off - roundingSquare)) / (PROBE_OHM ** 2 / 2 + CONTACT_OHM ** 2);
      of += ringWeight;
    }
    count += Math.max(0, of);
  });
  return Math.max(LEAST_HAND, leaningSquare(1, sum, count));
}
