import type { Finding } from '#engine/rules/finding.ts';
import type {
  BestOfKind,
  FirstFound,
  FoundScheme,
  SearchResult,
  SearchStep,
} from '#engine/schemes/search/found-schemes.ts';
import type { Waypoint } from '#model/cable.ts';
import type { Connection } from '#model/scheme.ts';
import { plainSchemeName } from '../edits/scheme-names.ts';
import { candidatesOf } from './candidate.ts';
import type {
  FirstAnswer,
  Found,
  HouseAsk,
  QuestionAnswer,
  QuestionAsk,
  WhatIfAnswer,
  WhyNotAnswer,
} from './search-asks.ts';

/** The engine's search, as the screen asks it. */
export interface Searcher {
  /** A step at a time; what was found out of the same house before is kept. */
  search(house: HouseAsk): Generator<SearchStep, SearchResult>;
  /** The cheapest, found ahead of all others in the house that was searched last, priced in full. */
  priced(house: HouseAsk, first: FirstFound): FoundScheme;
  /** What stands against every way, where none was found. */
  against(house: HouseAsk): readonly Finding[];
  whyNot(
    house: HouseAsk,
    connection: Connection,
  ):
    | { readonly answer: 'rule'; readonly findings: readonly Finding[] }
    | { readonly answer: 'money'; readonly morePence: number; readonly with: FoundScheme }
    | { readonly answer: 'left-out'; readonly words: string };
  whatIf(
    house: HouseAsk,
    legId: string,
    via: readonly Waypoint[],
  ): { readonly before: SearchResult; readonly after: SearchResult };
}

/** What was found, as plain data that can go from one thread to another. */
export function foundOf(
  { schemes, optimal, boundPence, gap, examined, ...more }: SearchResult,
  against: readonly Finding[] = [],
): Found {
  const candidates = candidatesOf(schemes);
  const bestOfKind = more.bestOfKind.map((best) => ofItsKind(best, candidates));
  return { optimal, boundPence, gap, examined, candidates, ...more, bestOfKind, against };
}

/**
 * The best of a kind only where it is of that kind: with every outlet held fast, or none wanted, the search takes what
 * is left for the best of each.
 */
function ofItsKind(best: BestOfKind, candidates: Found['candidates']): BestOfKind {
  const found = candidates.find(({ scheme }) => scheme.id === best.schemeId);
  if (found === undefined || found.kind === best.kind) return best;
  const reason = 'No outlet is left to be joined so.';
  return { ...best, schemeId: null, why: 'impossible', reason, boundPence: null };
}

/** What no remedy cures: the search takes remedies along, so that what they cure forbids nothing. */
function decisive(findings: readonly Finding[]): readonly Finding[] {
  const incurable = findings.filter(({ fix }) => fix === null);
  return incurable.length > 0 ? incurable : findings;
}

function whyNot(searcher: Searcher, ask: Extract<QuestionAsk, { what: 'why-not' }>): WhyNotAnswer {
  const told = searcher.whyNot(ask, ask.connection);
  if (told.answer === 'left-out') return told;
  if (told.answer === 'rule') return { answer: 'rule', findings: decisive(told.findings) };
  const [candidate] = candidatesOf([told.with]);
  if (candidate === undefined) throw new Error('A found scheme gave no candidate.');
  return { answer: 'money', morePence: told.morePence, with: candidate };
}

function whatIf(searcher: Searcher, ask: Extract<QuestionAsk, { what: 'what-if' }>): WhatIfAnswer {
  const { before, after } = searcher.whatIf(ask, ask.legId, ask.via);
  const best = ({ schemes }: SearchResult): WhatIfAnswer['before'] => candidatesOf(schemes)[0] ?? null;
  return { before: best(before), after: best(after) };
}

/** The cheapest as plain data, ahead of all others. */
export function firstOf(searcher: Searcher, house: HouseAsk, first: FirstFound): FirstAnswer {
  const { scheme, estimate } = searcher.priced(house, first);
  const { optimal, restsOn } = first;
  const { grossPence } = estimate.totals;
  return { name: plainSchemeName(scheme), grossPence, rests: restsOn.length > 0, optimal };
}

/** Answers a question about the search, with an engine's search. */
export function answerQuestion(searcher: Searcher, ask: QuestionAsk): QuestionAnswer {
  switch (ask.what) {
    case 'why-not':
      return { what: 'why-not', ask: ask.connection, answer: whyNot(searcher, ask) };
    case 'what-if':
      return { what: 'what-if', legId: ask.legId, answer: whatIf(searcher, ask) };
  }
}
