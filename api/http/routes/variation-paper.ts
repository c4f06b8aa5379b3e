import { createRoute } from '@hono/zod-openapi';
import type { QuotationDocument } from '#engine/quotation/document.ts';
import { standingOf } from '#engine/quotation/standing.ts';
import { variationPaper } from '#engine/quotation/variation-paper.ts';
import { fileWord } from '#exports/file-word.ts';
import { type VariationPhoto, variationPdf } from '#exports/variation-pdf.ts';
import { id } from '#model/primitives.ts';
import { problemAnswers } from '../answers.ts';
import type { FirmParts } from '../app-parts.ts';
import { routeAt } from '../guards.ts';
import { Problem } from '../problems.ts';
import { quotationAddress, wholeQuotation } from '../quotation-records.ts';
import { type FirmApp, resourceApp } from '../resource-app.ts';

const readVariationPdf = createRoute({
  ...routeAt('readVariationPdf'),
  summary: 'A variation as a PDF for the customer: what was found, its price, its photos, room for a yes',
  description: 'Made from what was written down when it was offered; how it stands is as of now.',
  request: { params: quotationAddress.extend({ variation: id }) },
  responses: {
    200: {
      description: 'The variation, on A4.',
      content: { 'application/pdf': { schema: { type: 'string' as const, format: 'binary' } } },
    },
    ...problemAnswers('no-such-quotation', 'quotation-erased', 'no-such-variation'),
  },
});

/** The photos of a variation in their order; one that is gone stays as a place that shows nothing. */
const photosOf = (stores: FirmParts['stores'], ids: readonly string[]): Promise<readonly VariationPhoto[]> =>
  Promise.all(
    ids.map(async (one) => (await stores.assets.read(one)) ?? { mediaType: '', content: new Uint8Array() }),
  );

/** Variations of accepted work as papers. */
export function variationPaperRoutes(): FirmApp {
  return resourceApp().openapi(readVariationPdf, async (c) => {
    const { stores } = c.var;
    const address = c.req.valid('param');
    const stored = await wholeQuotation(stores.quotations, address);
    const variation = stored.variations.find((one) => one.id === address.variation);
    if (variation === undefined)
      throw new Problem('no-such-variation', `There is no variation "${address.variation}".`);
    const { acceptance, variations } = standingOf(stored);
    const { status, decision } = variations.find((one) => one.id === variation.id) ?? {
      status: 'offered' as const,
      decision: null,
    };
    const text = await stores.quotations.readText(address.id, stored.id, 'document');
    // Written by `issueQuotation` and by nothing else, as this type.
    const paper = variationPaper({
      paper: JSON.parse(text ?? '') as QuotationDocument,
      acceptance,
      variation: { ...variation, date: variation.offeredAt.slice(0, 10) },
      status,
      decision,
    });
    const bytes = await variationPdf(paper, await photosOf(stores, variation.photos));
    const name = `${fileWord(paper.reference, 'variation')}-variation-${paper.number}.pdf`;
    return c.body(new Uint8Array(bytes), 200, {
      'Content-Type': 'application/pdf',
      'Content-Disposition': `attachment; filename="${name}"`,
    });
  });
}
