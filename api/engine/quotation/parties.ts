import type { Job } from '#model/job.ts';
import type { Firm } from '#model/library.ts';
import type { QuotedParty } from './document.ts';

const told = (lines: readonly (string | undefined)[]): readonly string[] =>
  lines.flatMap((line) => (line === undefined || line.trim() === '' ? [] : [line.trim()]));

/** The firm as the paper names it: address, ways to reach it, its VAT number, its company and its scheme. */
export function firmParty(firm: Firm, registered: boolean): QuotedParty {
  const { vatNumber } = firm;
  const vat =
    registered && vatNumber !== undefined && vatNumber.trim() !== '' ? `VAT number ${vatNumber}` : undefined;
  return { name: firm.name, lines: told([...firm.address, firm.contact, firm.email, firm.company, vat]) };
}

/** The customer, with the address of the work: the job knows no other. */
export const customerParty = ({ site }: Pick<Job, 'site'>): QuotedParty => ({
  name: site.customer,
  lines: told(site.address),
});
