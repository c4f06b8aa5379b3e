import type { Connection, Scheme } from '#model/scheme.ts';
import type { Finding } from '../../rules/finding.ts';
import { mayCut } from './attachments.ts';
import { cutLegs } from './cut-legs.ts';
import type { FoundScheme } from './found-schemes.ts';
import { judge, judgesOfParts } from './gate.ts';
import { type SearchOptions, searchSchemes, type ToSearch } from './search.ts';
import { searchGround } from './search-ground.ts';
import { waysInHouse } from './ways-in-house.ts';

/** Why a connection is not in the best scheme. */
export type WhyNot =
  /** What it breaks. */
  | { readonly answer: 'rule'; readonly findings: readonly Finding[] }
  /** By how much the best scheme with it is dearer, VAT included; nought and less: it is as good. */
  | { readonly answer: 'money'; readonly morePence: number; readonly with: FoundScheme }
  /** In plain words. */
  | { readonly answer: 'left-out'; readonly words: string };

/** Forces a connection, searches the rest, and says what that breaks or costs. */
export function whyNot(toSearch: ToSearch, connection: Connection, options: SearchOptions = {}): WhyNot {
  const { house, library, rules, proofsFound } = toSearch;
  const ways = options.ways ?? waysInHouse(house, library);
  const locked = [...(options.locked ?? []), connection];
  const ground = searchGround(house, library, { ...options, ways });
  const assumed = cutLegs(connection).filter((legId) => !mayCut(ground, legId));
  if (assumed.length > 0)
    return {
      answer: 'left-out',
      words:
        'The way of that leg is only assumed, and a cable is not cut by guess. Allow it, and locating it is priced.',
    };
  const alone: Scheme = { id: 'why-not', name: '', connections: locked, remedies: [], locks: [] };
  const judged = judge(ground, alone, judgesOfParts({ rules, proofsFound }));
  if (!judged.passes) return { answer: 'rule', findings: judged.fails };
  const fewer = { ...options, ways, aim: 'pence' as const, most: 1, kinds: false };
  const forced = searchSchemes(toSearch, { ...fewer, locked }).schemes[0];
  if (forced === undefined)
    return {
      answer: 'left-out',
      words: 'It breaks no rule by itself, but nothing that is searched for connects the rest beside it.',
    };
  const best = searchSchemes(toSearch, fewer).schemes[0];
  const morePence = forced.estimate.totals.grossPence - (best?.estimate.totals.grossPence ?? 0);
  return { answer: 'money', morePence, with: forced };
}
