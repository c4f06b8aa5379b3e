/** A letter that a customer names an offered way of doing the work by: `A`, `B` or `C`, in the order offered. */
export type OptionLetter = 'A' | 'B' | 'C';

/** A sentence of the paper, and the options that it is of in words (`Option A`, `Options A and B`); null: of all. */
export interface QuotedLine {
  readonly words: string;
  readonly forOptions: string | null;
}

/** A sum of money with its words. */
export interface QuotedSum {
  readonly words: string;
  readonly pence: number;
}

/** What a scheme costs, whole pence: net and VAT add up to gross, deposit and balance too. */
export interface QuotedPrice {
  readonly netPence: number;
  readonly vatPercent: number;
  readonly vatPence: number;
  readonly grossPence: number;
  /** True where no VAT is charged at all, be it at nought; papers frozen before this was told lack it. */
  readonly withoutVat: boolean;
  /** What the net sum is made of, adding up to it; only an estimate says it, since its sums are what is charged by. */
  readonly parts: readonly QuotedSum[];
  /** The rate of VAT and its condition, and what the price is if the condition does not hold. */
  readonly vatWords: string;
  /** Asked for before the work, of the gross sum; null: none. */
  readonly depositPence: number | null;
  readonly balancePence: number;
  /** Where the price of an estimate may end, VAT included; null for a quotation. */
  readonly range: { readonly lowPence: number; readonly highPence: number } | null;
}

/** What is done in one room, in the customer's words. */
export interface FeltInRoom {
  readonly room: string;
  readonly words: readonly string[];
}

/** One way of doing the work as it is offered. */
export interface QuotedScheme {
  readonly schemeId: string;
  readonly letter: OptionLetter;
  /** `Option A`, or `The work` where one is offered alone. */
  readonly heading: string;
  /** What it is known by, in few words: `branch cables`. */
  readonly nickname: string;
  /** How the new points are joined to what is there, a sentence or two each. */
  readonly how: readonly string[];
  /** What is changed beside the new points. */
  readonly youGet: readonly string[];
  /** Where the work is felt, room by room in the job's order. */
  readonly felt: readonly FeltInRoom[];
  /** Hours, days and visits, and for how long the power is off. */
  readonly time: readonly string[];
  readonly hours: number;
  /** Days of work, and each time that plaster is come back for. */
  readonly visits: number;
  readonly price: QuotedPrice;
  /** Why it cannot be offered as it stands; null where it can. */
  readonly withheld: string | null;
}

/** A row of the table that sets the options side by side: a cell for each, in their order. */
export interface ComparedRow {
  readonly what: string;
  readonly cells: readonly string[];
}

/** A sum of one option, whole pence. */
export interface OptionSum {
  readonly letter: OptionLetter;
  readonly grossPence: number;
}

/** What the price takes for granted, and what happens to it otherwise. */
export interface QuotedAssumption extends QuotedLine {
  readonly otherwise: string;
  /** By how much it can move the price of an option, VAT included; only options and sums that the engine knows. */
  readonly sums: readonly OptionSum[];
  /** The same as printed; empty where nothing is to pay. */
  readonly sumWords: string;
}

/** Something found beside what was asked for, and what putting it right adds. */
export interface QuotedExtra extends QuotedLine {
  readonly remedy: string;
  /** Added to an option, VAT included; empty: priced when the customer asks. */
  readonly sums: readonly OptionSum[];
  readonly sumWords: string;
}

/** A heading with its paragraphs. */
export interface QuotedPassage {
  readonly heading: string;
  readonly paragraphs: readonly string[];
}

/** A form with lines to fill in: `label` and what stands there already; empty: a line to write on. */
export interface QuotedForm {
  readonly heading: string;
  readonly intro: readonly string[];
  readonly lines: readonly { readonly label: string; readonly value: string }[];
}

/** The right to cancel, with its form and the request to begin early: only where the law gives it. */
export interface CancellationNotice {
  readonly notice: QuotedPassage;
  readonly form: QuotedForm;
  readonly earlyStart: QuotedForm;
}

/** What the electrician has yet to see to; never printed. `must`: without it the paper is a draft. */
export interface BeforeSending {
  readonly weight: 'must' | 'should';
  readonly words: string;
  /** Where it is put right. */
  readonly where: 'as-found' | 'wanted' | 'ways' | 'price' | 'papers' | 'firm';
}

/** Somebody that the paper names: each line as printed, none empty. */
export interface QuotedParty {
  readonly name: string;
  readonly lines: readonly string[];
}

/**
 * A quotation or an estimate as the customer reads it: plain data, every word as printed, every sum in whole pence. The PDF
 * and the page show the same one, and it is what an issued quotation freezes. Its drawings are scenes made apart
 * (`api/drawing/quotation/`), and are kept with it as SVG.
 */
export interface QuotationDocument {
  /** A quotation is a price to hold to; an estimate is a best reckoning. */
  readonly kind: 'quotation' | 'estimate';
  readonly title: 'Quotation' | 'Estimate';
  /** What that name means for the customer, and why it is the one. */
  readonly kindWords: string;
  /** Printed over a paper that must not go out yet; null: it may. */
  readonly draft: string | null;
  /** Printed over a paper that may go out and has not: nothing is frozen yet. Absent once it is issued. */
  readonly notIssued?: string;
  /** What is said of an invented firm and its prices; null: nothing is invented. */
  readonly demoNote: string | null;
  readonly reference: string;
  readonly jobTitle: string;
  /** Of the paper: 1 for the first, one more each time that it is issued again. */
  readonly revision: number;
  /** The job's state, as on workbook and plan. */
  readonly state: string;
  /** ISO. */
  readonly date: string;
  readonly dateWords: string;
  /** The last day that the offer can be taken up, ISO; null: nobody has said. */
  readonly validUntil: string | null;
  readonly validWords: string;
  readonly engine: string;
  readonly edition: string;
  /** By which rules the work is designed, and how far they were looked at, in the customer's words. */
  readonly rulesWords: string;
  readonly firm: QuotedParty;
  readonly customer: QuotedParty;
  /** Where the work is. */
  readonly place: readonly string[];
  /** What was asked for, a point a line, then when the work can begin and the firm's own words. */
  readonly asked: readonly string[];
  /** One to three, in the order offered; none for a job without a scheme. */
  readonly schemes: readonly QuotedScheme[];
  /** The options side by side; empty for fewer than two. */
  readonly compared: readonly ComparedRow[];
  /** What speaks for one option and what for another: a fuse or none, a branch or the loop; empty where they differ in neither. */
  readonly weighed: readonly QuotedPassage[];
  readonly included: readonly QuotedLine[];
  readonly excluded: readonly QuotedLine[];
  readonly assumed: readonly QuotedAssumption[];
  readonly extras: readonly QuotedExtra[];
  /** What happens if something unexpected is found. */
  readonly unexpected: QuotedPassage;
  readonly payment: QuotedPassage;
  /** The certificate, and whether the work is notified, by whom and why. */
  readonly papers: readonly QuotedLine[];
  readonly about: QuotedPassage;
  readonly cautions: readonly string[];
  /** Null where the law gives none; where nobody has said where the agreement is made it may, and the notice is there. */
  readonly cancellation: CancellationNotice | null;
  readonly acceptance: QuotedForm;
  /** Trade words used, each explained: in the order of the alphabet. */
  readonly glossary: readonly { readonly word: string; readonly meaning: string }[];
  /** For the electrician alone, gravest first. */
  readonly beforeSending: readonly BeforeSending[];
}
