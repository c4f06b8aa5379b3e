import { type Standing, standingOf } from '#engine/quotation/standing.ts';
import type { Contract } from '#engine/quotation/variation.ts';
import type { QuotationStore, StoredQuotation } from '../db/quotation-stores.ts';
import { Problem } from './problems.ts';
import { jobFromText, libraryFromText } from './readable-job.ts';

const must = (text: string | null, what: string): string => {
  if (text === null) throw new Error(`A stored quotation has no ${what}.`);
  return text;
};

/** The work that a quotation's customer has agreed to; a quotation that is not accepted is a problem. */
export async function contractOf(
  store: QuotationStore,
  stored: StoredQuotation,
  standing: Standing = standingOf(stored),
): Promise<Contract> {
  const { jobId, id } = stored;
  const { acceptance, contractPence, restsOn } = standing;
  if (acceptance === null || contractPence === null)
    throw new Problem('not-now', 'Nothing is agreed: the quotation is not accepted.');
  const quoted = must(await store.readText(jobId, id, 'job'), 'job');
  const library = must(await store.readText(jobId, id, 'library'), 'library');
  const agreed =
    restsOn === null ? quoted : must(await store.readVariationJob(jobId, id, restsOn), 'variation');
  return {
    schemeId: acceptance.schemeId,
    quotedJob: jobFromText(quoted),
    library: libraryFromText(library),
    agreedJob: jobFromText(agreed),
    contractPence,
  };
}
