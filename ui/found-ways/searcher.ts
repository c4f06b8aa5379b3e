import type { Finding } from '#engine/rules/finding.ts';
import type { FoundScheme, SearchResult } from '#engine/schemes/search/found-schemes.ts';
import type { Waypoint } from '#model/cable.ts';
import type { Connection } from '#model/scheme.ts';
import { candidatesOf } from './candidate.ts';
import type {
  Found,
  HouseAsk,
  QuestionAnswer,
  QuestionAsk,
  SearchAsk,
  WhatIfAnswer,
  WhyNotAnswer,
} from './search-asks.ts';

/** The engine's search, as the screen asks it. */
export interface Searcher {
  search(house: HouseAsk): SearchResult;
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
export function foundOf({ schemes, optimal, boundPence, gap, examined, ...more }: SearchResult): Found {
  return { optimal, boundPence, gap, examined, candidates: candidatesOf(schemes), ...more };
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

/** Answers what the screen asks, with an engine's search. */
export function answerAsk(searcher: Searcher, ask: SearchAsk | QuestionAsk): Found | QuestionAnswer {
  switch (ask.what) {
    case 'search':
      return foundOf(searcher.search(ask));
    case 'why-not':
      return { what: 'why-not', ask: ask.connection, answer: whyNot(searcher, ask) };
    case 'what-if':
      return { what: 'what-if', legId: ask.legId, answer: whatIf(searcher, ask) };
  }
}
