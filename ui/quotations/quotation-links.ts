/** A link by which a customer sees a quotation, without the link. */
export interface QuotationLink {
  readonly id: string;
  readonly quotationId: string;
  readonly madeAt: string;
  readonly expiresAt: string;
  readonly withdrawnAt: string | null;
}

/** What is known of a quotation's links at this moment. */
export interface LinksSeen {
  /** False where nobody else reaches the server, so that a link would lead nowhere. */
  readonly isReached: boolean;
  readonly links: readonly QuotationLink[];
  /** The link that was just made, whole; null: none. */
  readonly made: { readonly href: string; readonly expiresAt: string } | null;
  /** Why the last thing asked for was not done; empty: it was. */
  readonly trouble: string;
}

/** What is asked for of a quotation's links; how they stand then is given by `show`. */
export interface LinksAsk {
  readonly jobId: string;
  readonly quotationId: string;
  readonly ask:
    | { readonly do: 'list' }
    | { readonly do: 'make' }
    | { readonly do: 'withdraw'; readonly linkId: string };
  readonly show: (seen: LinksSeen) => void;
}

declare global {
  interface HTMLElementEventMap {
    'quotation-links-asked': CustomEvent<LinksAsk>;
  }
}
