import type { Firm, Library } from '#model/library.ts';

/** What tells the demo library from a firm's own: its firm's details, and what its lists say of themselves. */
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
  /** The price list says of itself that it is invented. */
  readonly prices: boolean;
  /** The minutes and the rate by the hour say of themselves that they are from memory. */
  readonly norms: boolean;
}

const isDemoFirm = ({ name, address, vatNumber, contact }: Firm): boolean =>
  name === DEMO_FIRM.name ||
  address.join('\n') === DEMO_FIRM.address ||
  vatNumber === DEMO_FIRM.vatNumber ||
  contact === DEMO_FIRM.contact;

/** Looks what of the demo library is left in a firm's: any detail of its firm, and the lists by what they say they are from. */
export const demoMarks = ({
  firm,
  prices,
  norms,
}: Pick<Library, 'firm' | 'prices' | 'norms'>): DemoMarks => ({
  firm: isDemoFirm(firm),
  prices: prices.source === DEMO_PRICES,
  norms: norms.source === DEMO_NORMS,
});

/** What papers say of it, in one short line; null when nothing of the demo is left. */
export function demoNotice({ firm, prices, norms }: DemoMarks): string | null {
  const parts = [
    ...(firm ? ['firm'] : []),
    ...(prices ? ['prices'] : []),
    ...(norms ? ['minutes and hourly rate'] : []),
  ];
  return parts.length === 0 ? null : `Demonstration ${parts.join(', ')}: invented, not an offer.`;
}
