import type { Scheme } from '#model/scheme.ts';
import type { SchemeEstimate } from '../estimate-result.ts';

/** How a scheme joins the wanted points, as a person would sort them; `mixed` where it is none of them purely. */
export type SchemeKind = 'spurs' | 'fused-branch' | 'ring-extension' | 'new-radial' | 'mend' | 'mixed';

/** A scheme that the search found, checked by all rules and priced in full. */
export interface FoundScheme {
  /** As the job file would have it; its id says what found it: `found/1`, `found/ring-extension`. */
  readonly scheme: Scheme;
  readonly kind: SchemeKind;
  /** The additive works cost that the search ranks by: before packs, shared openings, minimum charge, mark-up and VAT. */
  readonly worksPence: number;
  /**
   * The additive disturbance that the search ranks by, connection by connection: before shared openings, and without what
   * every scheme disturbs alike. As all schemes have it: `estimate.messPoints`.
   */
  readonly worksPoints: number;
  /**
   * Legs that it is jointed into though their way is only assumed, by id; locating them is priced. Whatever is proved of
   * it holds as far as they are found where they are assumed.
   */
  readonly restsOn: readonly string[];
  readonly estimate: SchemeEstimate;
}

/** What to do where the best rests on legs whose way is only assumed. */
export interface Fallback {
  /** The best that no such leg is jointed into for, among `schemes`; null where none passes without. */
  readonly schemeId: string | null;
  /** Whether it is proved to be the best of those. */
  readonly optimal: boolean;
}

/**
 * Why no scheme of a kind is there: every choice of it was tried or is barred; so many were tried that it was given up; or
 * with so many points not every set of them was searched.
 */
export type WhyNone = 'impossible' | 'given-up' | 'not-searched';

/** The best scheme of one kind, or why there is none. */
export interface BestOfKind {
  readonly kind: Exclude<SchemeKind, 'mixed'>;
  readonly schemeId: string | null;
  /** Null where there is one. */
  readonly why: WhyNone | null;
  /** In plain words, where `schemeId` is null: what bars it, or what the first that was tried fails by. */
  readonly reason: string | null;
  /** How many of it were looked at beside those of all kinds. */
  readonly examined: number;
  /** Where it was given up: no scheme of it that passes has a works cost below this; else null. */
  readonly boundPence: number | null;
}

/** How cheap the cheapest is proved to be. */
export interface PenceProof {
  /** Whether `boundPence` was reached: no scheme that passes costs less to do. */
  readonly optimal: boolean;
  /** No scheme that passes has a works cost below this. */
  readonly boundPence: number;
  /** Works cost of the best less the bound, as a share of the bound; null where nothing was found. */
  readonly gap: number | null;
}

/** How little the least disturbing is proved to disturb. */
export interface MessProof {
  /** Whether `boundPoints` was reached: no scheme that passes disturbs less. */
  readonly optimal: boolean;
  /** No scheme that passes disturbs less than this, in the additive points that the search ranks by. */
  readonly boundPoints: number;
  /** Disturbance of the best less the bound, as a share of the bound; null where nothing was found, or above a bound of 0. */
  readonly gap: number | null;
}

/** What the search by disturbance answers. */
export interface Disturbance extends MessProof {
  /** Schemes looked at for it, those in between left out. */
  readonly examined: number;
  /** The least disturbing of all that was found, by the additive points; null where nothing was found. */
  readonly schemeId: string | null;
  /** Null where the best by disturbance rests on no leg whose way is only assumed. */
  readonly fallback: Fallback | null;
}

/** What the search answers. */
export interface SearchResult extends PenceProof {
  /** Schemes looked at for the cheapest and the best of each kind. */
  readonly examined: number;
  /** Null where the cheapest to do rests on no leg whose way is only assumed. */
  readonly fallback: Fallback | null;
  /** The same of the least disturbing; null where that was not searched for. */
  readonly disturbance: Disturbance | null;
  /** The cheapest, the least disturbing and some in between, by the full price, cheapest first; none fails by what it does itself. */
  readonly schemes: readonly FoundScheme[];
  readonly bestOfKind: readonly BestOfKind[];
  /** In plain words: what was left out of the search, such as joints in legs whose way is only assumed. */
  readonly leftOut: readonly string[];
}

/** The best by one aim before it is priced in full. */
interface BestFound {
  readonly scheme: Scheme;
  readonly kind: SchemeKind;
  readonly worksPence: number;
  readonly worksPoints: number;
  readonly restsOn: readonly string[];
  readonly examined: number;
}

/** What the search knows as soon as the cheapest that passes is proved, before anything is priced in full. */
export interface FirstFound extends BestFound, PenceProof {}

/** The same of the least disturbing that passes. */
export interface LeastFound extends BestFound, MessProof {}

/** What one step of a search brought: the first answer, that by disturbance, a scheme priced in full, or only progress. */
export type SearchStep =
  | { readonly step: 'first'; readonly first: FirstFound }
  | { readonly step: 'least'; readonly least: LeastFound }
  | { readonly step: 'priced'; readonly found: FoundScheme }
  | { readonly step: 'looked' };
