import {
  type ChannelExcess,
  excessesByChannel,
  type Judged,
  nextStates,
  startStates,
} from './channel-states.ts';
import type { Channel } from './read-channels.ts';
import { sessionNull } from './session-null.ts';
import { type ChannelState, fitOf, fitOfSpur, type SpurLength } from './spur-evidence.ts';

const ROUNDS = 6;
/** Memberships less sure than this are tried both ways together, the least sure ones first, up to so many. */
const SURE = 0.98;
const MOST_TRIED = 6;

/** How likely each point is a spur, in the order of the points, and the channels that go with it. */
export interface Memberships {
  readonly spur: readonly number[];
  readonly states: readonly ChannelState[];
  readonly excesses: readonly (readonly ChannelExcess[])[];
}

/** What readings are judged by. */
export interface JudgedBy {
  readonly lengths: readonly SpurLength[];
  /** Square of a contact's usual spread, Ω². */
  readonly contactSquare: number;
}

/** Judges each point by itself and the null by the ring's majority, in turn. */
export function eachByItself(
  channels: readonly Channel[],
  points: readonly Judged[],
  { lengths, contactSquare }: JudgedBy,
): Memberships {
  let spur: readonly number[] = points.map(({ prior }) => prior);
  const excesses = excessesByChannel(channels, points);
  let states = startStates(channels, points, contactSquare);
  for (let round = 0; round < ROUNDS; round++) {
    spur = points.map((each) => spurOdds(each, lengths, states));
    states = nextStates(states, excesses, { spur, usual: contactSquare });
  }
  return { spur, states, excesses };
}

function spurOdds(
  { seen, prior }: Judged,
  lengths: readonly SpurLength[],
  states: readonly ChannelState[],
): number {
  if (prior === 1) return 1;
  const lead = fitOfSpur(seen, lengths, states) - fitOf(seen, 0, states) + Math.log(prior / (1 - prior));
  return 1 / (1 + Math.exp(-lead));
}

/** Tries the doubtful points both ways in every combination, each with the null that fits it best. */
export function tryTogether(
  points: readonly Judged[],
  { spur, states, excesses }: Memberships,
  { lengths, contactSquare }: JudgedBy,
): Memberships {
  const doubtful = spur
    .flatMap((odds, i) => (Math.max(odds, 1 - odds) < SURE ? [i] : []))
    .toSorted((a, b) => Math.abs((spur[a] ?? 0) - 0.5) - Math.abs((spur[b] ?? 0) - 0.5) || a - b)
    .slice(0, MOST_TRIED);
  if (doubtful.length === 0) return { spur, states, excesses };
  const sureSpurs = new Set(spur.flatMap((odds, i) => (odds > 0.5 && !doubtful.includes(i) ? [i] : [])));
  // A sure spur fits as well with one null as with another: its length is free.
  const compared = points.map((each, i) => ({ ...each, i })).filter(({ i }) => !sureSpurs.has(i));
  const fits: number[] = [];
  for (let mask = 0; mask < 1 << doubtful.length; mask++) {
    // The others count as what they nearly surely are.
    const tried = spur.map(Math.round);
    doubtful.forEach((point, bit) => {
      tried[point] = (mask >> bit) & 1;
    });
    fits.push(fitTogether(compared, tried, { states, excesses, lengths }));
  }
  const best = Math.max(...fits);
  const weights = fits.map((fit) => Math.exp(fit - best));
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  const together = spur.map((odds, i) => {
    const bit = doubtful.indexOf(i);
    if (bit < 0) return odds;
    return weights.reduce((sum, weight, mask) => sum + ((mask >> bit) & 1 ? weight : 0), 0) / all;
  });
  return {
    spur: together,
    states: nextStates(states, excesses, { spur: together, usual: contactSquare }),
    excesses,
  };
}

function fitTogether(
  compared: readonly (Judged & { readonly i: number })[],
  tried: readonly number[],
  { states, excesses, lengths }: Omit<Memberships, 'spur'> & Pick<JudgedBy, 'lengths'>,
): number {
  let fit = 0;
  const withNull = states.map((state, channel) => {
    const by = {
      spur: tried,
      contactSquare: state.contactSquare,
      usualSquare: state.nullUsualSquare,
    };
    const { ohm, square } = sessionNull(excesses[channel] ?? [], by);
    // The null is free: what it may be is weighed along with how narrowly the readings hold it (Laplace).
    fit += 0.5 * Math.log(square) - (0.5 * ohm * ohm) / state.nullUsualSquare;
    return { ...state, nullOhm: ohm };
  });
  for (const { seen, prior, i } of compared) {
    if (tried[i] === 1) fit += fitOfSpur(seen, lengths, withNull) + Math.log(prior);
    else fit += fitOf(seen, 0, withNull) + Math.log(1 - prior);
  }
  return fit;
}
