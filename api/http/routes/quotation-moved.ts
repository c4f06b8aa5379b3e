import { createRoute, z } from '@hono/zod-openapi';
import { moneyMoved } from '#engine/quotation/money-moved.ts';
import { jsonAnswer, problemAnswers } from '../answers.ts';
import type { AppParts } from '../app-parts.ts';
import { firmLibrary } from '../firm-library.ts';
import { routeAt } from '../guards.ts';
import { Problem } from '../problems.ts';
import { quotationAddress, wholeQuotation } from '../quotation-records.ts';
import { jobFromText, libraryFromText } from '../readable-job.ts';
import { type FirmApp, resourceApp } from '../resource-app.ts';
import { storedJob } from '../stored-job.ts';

const movedBody = z
  .object({
    schemeId: z.string(),
    beforePence: z.int(),
    afterPence: z.int(),
    parts: z.array(
      z.object({
        cause: z.string(),
        words: z.string(),
        detail: z.string(),
        subjects: z.array(z.string()),
        figures: z.record(z.string(), z.number()),
      }),
    ),
    idle: z.array(z.string()),
  })
  .openapi('MoneyMoved');

const readMoved = createRoute({
  ...routeAt('readMoved'),
  summary: 'What the price of an offered scheme has moved by since, and why, to the penny',
  request: {
    params: quotationAddress,
    query: z.object({
      scheme: z.string().optional().meta({ description: 'One that is offered; absent: the first.' }),
    }),
  },
  responses: {
    200: jsonAnswer('The parts’ gross pence add up to the difference.', movedBody),
    ...problemAnswers('no-such-quotation', 'quotation-erased', 'no-such-job', 'no-such-scheme'),
  },
});

/** What the price of a quotation has moved by since it was issued. */
export function quotationMovedRoutes({ demoLibrary }: AppParts): FirmApp {
  return resourceApp().openapi(readMoved, async (c) => {
    const { stores } = c.var;
    const address = c.req.valid('param');
    const stored = await wholeQuotation(stores.quotations, address);
    const schemeId = c.req.valid('query').scheme ?? stored.offers[0]?.schemeId ?? '';
    const offer = stored.offers.find((one) => one.schemeId === schemeId);
    const { job } = await storedJob(stores.jobs, address.id);
    const { library } = await firmLibrary(stores.library, demoLibrary);
    const [jobText, libraryText] = await Promise.all(
      (['job', 'library'] as const).map((which) =>
        stores.quotations.readText(address.id, address.quotation, which),
      ),
    );
    const before = { job: jobFromText(jobText ?? ''), library: libraryFromText(libraryText ?? '') };
    const moved =
      offer === undefined
        ? null
        : moneyMoved({ schemeId, before, after: { job, library }, quotedPence: offer.grossPence });
    if (moved === null)
      throw new Problem(
        'no-such-scheme',
        `"${schemeId}" is not in the quotation and in the job as it is now.`,
        {
          choices: stored.offers.map((one) => one.schemeId),
        },
      );
    const told = moved.parts.map(({ subjects, figures, ...one }) => ({
      ...one,
      subjects: [...subjects],
      figures: { ...figures },
    }));
    return c.json({ schemeId, ...moved, parts: told, idle: [...moved.idle] }, 200);
  });
}
