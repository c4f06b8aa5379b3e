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
  readonly messPoints: number;
  readonly estimate: SchemeEstimate;
}

/** The best scheme of one kind, or why there is none. */
export interface BestOfKind {
  readonly kind: Exclude<SchemeKind, 'mixed'>;
  readonly schemeId: string | null;
  /** In plain words, where `schemeId` is null. */
  readonly reason: string | null;
}

/** What the search answers. */
export interface SearchResult {
  /** Whether `boundPence` was reached: no scheme that passes costs less to do. */
  readonly optimal: boolean;
  /** No scheme that passes has a works cost below this. */
  readonly boundPence: number;
  /** Works cost of the best less the bound, as a share of the bound; null where nothing was found. */
  readonly gap: number | null;
  /** Schemes looked at. */
  readonly examined: number;
  /** By the full price, cheapest first; none fails by what it does itself. */
  readonly schemes: readonly FoundScheme[];
  readonly bestOfKind: readonly BestOfKind[];
  /** In plain words: what was left out of the search, such as joints in legs whose way is only assumed. */
  readonly leftOut: readonly string[];
}

/** What the search knows as soon as the cheapest that passes is proved, before anything is priced in full. */
export interface FirstFound {
  readonly scheme: Scheme;
  readonly kind: SchemeKind;
  readonly worksPence: number;
  readonly messPoints: number;
  readonly optimal: boolean;
  readonly boundPence: number;
  readonly gap: number | null;
  readonly examined: number;
}

/** What one step of a search brought: the first answer, a scheme priced in full, or only progress. */
export type SearchStep =
  | { readonly step: 'first'; readonly first: FirstFound }
  | { readonly step: 'priced'; readonly found: FoundScheme }
  | { readonly step: 'looked' };
