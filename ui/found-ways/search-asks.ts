import type { Finding } from '#engine/rules/finding.ts';
import type { BestOfKind, Disturbance, Fallback } from '#engine/schemes/search/found-schemes.ts';
import type { Waypoint } from '#model/cable.ts';
import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import type { Connection } from '#model/scheme.ts';
import type { Candidate } from './candidate.ts';

/** The house that is searched, and what of the search is settled beforehand. */
export interface HouseAsk {
  readonly job: Job;
  readonly library: Library;
  /** Connections that are kept as they are: part of every scheme. */
  readonly locked: readonly Connection[];
  /** Whether legs may be cut though their way is only assumed: locating them is then priced. */
  readonly cutsAssumed: boolean;
}

/** The best schemes. */
export interface SearchAsk extends HouseAsk {
  readonly what: 'search';
  /** True while something moves: no more is searched for than the cheapest, which is sent ahead; no answer follows. */
  readonly firstOnly: boolean;
}

/** Something about the search: why a connection is not in its best, or what another way of a leg would change. */
export type QuestionAsk =
  | (HouseAsk & { readonly what: 'why-not'; readonly connection: Connection })
  | (HouseAsk & { readonly what: 'what-if'; readonly legId: string; readonly via: readonly Waypoint[] });

/** What a search found, as plain data. */
export interface Found {
  readonly optimal: boolean;
  readonly boundPence: number;
  /** As a share of the bound; null where nothing was found. */
  readonly gap: number | null;
  readonly examined: number;
  /** The best without joints in legs whose way is only assumed, where the cheapest to do has some; else null. */
  readonly fallback: Fallback | null;
  /** How little can be disturbed; null where that was not searched for. */
  readonly disturbance: Disturbance | null;
  /** By full price, cheapest first. */
  readonly candidates: readonly Candidate[];
  readonly bestOfKind: readonly BestOfKind[];
  readonly leftOut: readonly string[];
  /** Where nothing was found: what stands against every way; empty where that is not one thing. */
  readonly against: readonly Finding[];
}

/** Why a connection is not in the best scheme: a rule, the money, or that it was not looked at. */
export type WhyNotAnswer =
  | { readonly answer: 'rule'; readonly findings: readonly Finding[] }
  /** `morePence`: the best scheme with it against the best of all, in full; negative where it is even cheaper. */
  | { readonly answer: 'money'; readonly morePence: number; readonly with: Candidate }
  | { readonly answer: 'left-out'; readonly words: string };

/** The best as the leg is taken to run now, and as it would be if the leg ran otherwise; null where none passes. */
export interface WhatIfAnswer {
  readonly before: Candidate | null;
  readonly after: Candidate | null;
}

export type QuestionAnswer =
  | { readonly what: 'why-not'; readonly ask: Connection; readonly answer: WhyNotAnswer }
  | { readonly what: 'what-if'; readonly legId: string; readonly answer: WhatIfAnswer };

/** The cheapest that passes, ahead of all others: no more than is said of it. */
export interface FirstAnswer {
  /** Called by what it does. */
  readonly name: string;
  /** As its card will have it, pence. */
  readonly grossPence: number;
  /** Whether it is jointed into a leg whose way is only assumed. */
  readonly rests: boolean;
  readonly optimal: boolean;
}

/** A question with its number: one thread is asked many, and answers to the last alone. */
export interface Turn<Ask> {
  readonly turn: number;
  readonly ask: Ask;
}

/** What the other thread sends back to a question, by its number: perhaps something ahead, then an answer or why there is none. */
export type Reply<A, First = never> = { readonly turn: number } /** Null: nothing passes. */ & (
  | { readonly is: 'first'; readonly first: First | null }
  | { readonly is: 'answer'; readonly answer: A }
  | { readonly is: 'trouble'; readonly message: string }
);
