import type { Firm, Library, Norms, Prices } from '#model/library.ts';
import { normOf } from './labour/norm-of.ts';

/** The demo firm's details, and what the demo's lists say of themselves; its figures are marked in the library, each. */
const DEMO_FIRM = {
  name: 'Tin Kettle Electrical (an invented firm)',
  address: '4 Nowhere Yard\nSaltglass',
  vatNumber: 'GB 000 0000 00',
  contact: '01632 960123 (a number kept for fiction)',
} as const;
const DEMO_PRICES = 'Invented demo price list: no merchant asks these prices; put your own in their place';
const DEMO_NORMS =
  'Common practice, no source: minutes from memory for one competent electrician in a furnished house. Put your own in their place';

/** Which parts of a library are the demo's still. */
export interface DemoMarks {
  /** Name, address, number or contact of the firm. */
  readonly firm: boolean;
  /** Prices of the list, or what the list says of itself. */
  readonly prices: boolean;
  /** Minutes, sums or the rate by the hour, or what the norms say of themselves. */
  readonly norms: boolean;
}

/** How much of the demo a scheme's price is made with. */
export interface DemoShare {
  readonly billLines: number;
  readonly demoBillLines: number;
  readonly tasks: number;
  readonly demoTasks: number;
  readonly demoRate: boolean;
  /** Sums beside materials and labour. */
  readonly demoSums: number;
}

/** Of a priced scheme, what tells with which figures it was priced. */
export interface PricedWith {
  readonly price: {
    readonly bill: readonly { readonly item: string; readonly priced: boolean }[];
    readonly other: readonly { readonly sum: string }[];
  };
  readonly labour: readonly { readonly task: string }[];
}

type Marked = Pick<Library, 'firm' | 'prices' | 'norms'>;

/** Which of a firm's details are the demo firm's still, in words. */
export function demoFirmDetails({ name, address, vatNumber, contact }: Firm): readonly string[] {
  return [
    ...(name === DEMO_FIRM.name ? ['name'] : []),
    ...(address.join('\n') === DEMO_FIRM.address ? ['address'] : []),
    ...(contact === DEMO_FIRM.contact ? ['contact'] : []),
    ...(vatNumber === DEMO_FIRM.vatNumber ? ['VAT number'] : []),
  ];
}

const isDemoFirm = (firm: Firm): boolean => demoFirmDetails(firm).length > 0;

/** A figure of a library, which may be the demo's still. */
type Figure = { readonly origin?: 'demo' | undefined };

/** True for a figure that is the demo's still. */
export const isDemo = ({ origin }: Figure): boolean => origin === 'demo';

/** How many of some figures are the demo's still. */
export const demoCount = (figures: readonly Figure[]): number => figures.filter(isDemo).length;

/** True while a price list, or norms, say of themselves that they are the demo's. */
export const saysDemo = {
  prices: ({ source }: Pick<Prices, 'source'>): boolean => source === DEMO_PRICES,
  norms: ({ source }: Pick<Norms, 'source'>): boolean => source === DEMO_NORMS,
} as const;

/** Looks what of the demo library is left in a firm's: any detail of its firm, any figure that nobody has set. */
export const demoMarks = ({ firm, prices, norms }: Marked): DemoMarks => ({
  firm: isDemoFirm(firm),
  prices: saysDemo.prices(prices) || prices.items.some(isDemo),
  norms:
    saysDemo.norms(norms) ||
    norms.rateOrigin === 'demo' ||
    norms.tasks.some(isDemo) ||
    norms.sums.some(isDemo),
});

/** Counts what of a scheme's price comes from figures of the demo that nobody has set. */
export function demoShare({ price, labour }: PricedWith, { prices, norms }: Marked): DemoShare {
  const items = new Set(prices.items.filter(isDemo).map(({ item }) => item));
  const sums = new Set(norms.sums.filter(isDemo).map(({ sum }) => sum));
  return {
    billLines: price.bill.length,
    demoBillLines: price.bill.filter(({ item, priced }) => priced && items.has(item)).length,
    tasks: labour.length,
    demoTasks: labour.filter(({ task }) => isDemo(normOf(task, norms) ?? {})).length,
    demoRate: norms.rateOrigin === 'demo',
    demoSums: price.other.filter(({ sum }) => sums.has(sum)).length,
  };
}

/** What of the demo is in the papers of these schemes: figures that none of them uses do not count. */
export function demoMarksOf(schemes: readonly PricedWith[], library: Marked): DemoMarks {
  const shares = schemes.map((scheme) => demoShare(scheme, library));
  return {
    firm: isDemoFirm(library.firm),
    prices: saysDemo.prices(library.prices) || shares.some(({ demoBillLines }) => demoBillLines > 0),
    norms:
      saysDemo.norms(library.norms) ||
      shares.some(({ demoTasks, demoSums, demoRate }) => demoTasks > 0 || demoSums > 0 || demoRate),
  };
}

/** What papers say of it, in one short line; null when nothing of the demo is left. */
export function demoNotice({ firm, prices, norms }: DemoMarks): string | null {
  const parts = [
    ...(firm ? ['firm'] : []),
    ...(prices ? ['prices'] : []),
    ...(norms ? ['minutes and hourly rate'] : []),
  ];
  return parts.length === 0 ? null : `Demonstration ${parts.join(', ')}: invented, not an offer.`;
}

/** How much of a price is the demo's, in words, a sentence each; none when nothing is. */
export function demoShareWords(share: DemoShare): readonly string[] {
  const { billLines, demoBillLines, tasks, demoTasks, demoRate, demoSums } = share;
  const labour = [
    ...(demoTasks > 0 ? [`${demoTasks} of ${tasks} tasks are reckoned by its minutes`] : []),
    ...(demoRate ? ['the hourly rate is its'] : []),
    ...(demoSums > 0 ? [`${demoSums} ${demoSums === 1 ? 'sum is' : 'sums are'} its`] : []),
  ];
  return [
    ...(demoBillLines > 0
      ? [`${demoBillLines} of ${billLines} lines of this bill carry the demo’s invented prices.`]
      : []),
    ...(labour.length > 0 ? [`Of the demo’s labour: ${labour.join('; ')}.`] : []),
  ];
}
