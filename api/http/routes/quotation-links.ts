import { createRoute, z } from '@hono/zod-openapi';
import type { StoredQuotation } from '../../db/quotation-stores.ts';
import { jsonAnswer, problemAnswers, textBody } from '../answers.ts';
import type { AppParts } from '../app-parts.ts';
import { routeAt } from '../guards.ts';
import { Problem } from '../problems.ts';
import { quotationAddress, storedQuotation, wholeQuotation } from '../quotation-records.ts';
import { type FirmApp, resourceApp } from '../resource-app.ts';
import { after, DAY_MS, LINK_DAYS } from '../sign-in/life-spans.ts';
import { newRecordId, newToken } from '../sign-in/tokens.ts';
import { smallBodyOf } from '../small-body.ts';

const link = z
  .object({
    id: z.string(),
    quotationId: z.string(),
    madeAt: z.string(),
    expiresAt: z.string(),
    withdrawnAt: z.string().nullable(),
  })
  .openapi('QuotationLink');

const madeLink = link
  .extend({ token: z.string().meta({ description: 'Told this once; its hash is all that is kept.' }) })
  .openapi('MadeQuotationLink');

const linkBody = z.strictObject({
  /** How long it goes; absent: as long as the quotation says that it may be taken up, else thirty days. */
  days: z.int().min(1).max(LINK_DAYS.most).optional(),
});

const list = createRoute({
  ...routeAt('listLinks'),
  summary: 'The links by which a customer sees a quotation, without the links themselves',
  request: { params: quotationAddress },
  responses: {
    200: jsonAnswer('All of them, the newest first.', z.object({ links: z.array(link) })),
    ...problemAnswers('no-such-quotation'),
  },
});

const make = createRoute({
  ...routeAt('makeLink'),
  summary: 'Make a link by which a customer sees a quotation, and nothing else',
  request: { params: quotationAddress, body: textBody('MakeQuotationLink') },
  responses: {
    201: jsonAnswer('Made; the link is /q with the token as its fragment.', madeLink),
    ...problemAnswers('not-json', 'no-such-quotation', 'quotation-erased', 'not-now', 'body-unreadable'),
  },
});

const withdraw = createRoute({
  ...routeAt('withdrawLink'),
  summary: 'Let a link go no longer',
  request: { params: quotationAddress.extend({ link: z.string().max(64) }) },
  responses: {
    200: jsonAnswer('It goes no longer.', link),
    ...problemAnswers('no-such-quotation', 'no-such-link'),
  },
});

/** When a link ends of which nobody said so. */
function endOf({ validUntil }: StoredQuotation, now: Date): string {
  const unnamed = after(now, LINK_DAYS.unnamed * DAY_MS);
  const named = validUntil === null ? unnamed : `${validUntil}T23:59:59.999Z`;
  const most = after(now, LINK_DAYS.most * DAY_MS);
  const end = Date.parse(named) > now.getTime() ? named : unnamed;
  return [end, most].toSorted()[0] ?? most;
}

/** Links by which customers see a quotation. */
export function quotationLinkRoutes({ now }: AppParts): FirmApp {
  const app = resourceApp()
    .openapi(list, async (c) => {
      const { id, quotation } = c.req.valid('param');
      await storedQuotation(c.var.stores.quotations, { id, quotation });
      const links = (await c.var.stores.links.list(id)).filter((one) => one.quotationId === quotation);
      return c.json({ links }, 200);
    })
    .openapi(make, async (c) => {
      const { id: jobId, quotation } = c.req.valid('param');
      const { days } = await smallBodyOf(c, linkBody);
      const stored = await wholeQuotation(c.var.stores.quotations, { id: jobId, quotation });
      if (stored.lessened !== null)
        throw new Problem('not-now', 'Its customer was erased: there is nobody to send it to.');
      const { token, tokenHash } = newToken();
      const expiresAt = days === undefined ? endOf(stored, now()) : after(now(), days * DAY_MS);
      const made = { id: newRecordId(), tokenHash, jobId, quotationId: quotation, expiresAt };
      return c.json({ ...(await c.var.stores.links.make(made)), token }, 201);
    })
    .openapi(withdraw, async (c) => {
      const { id, quotation, link: linkId } = c.req.valid('param');
      await storedQuotation(c.var.stores.quotations, { id, quotation });
      const gone = await c.var.stores.links.withdraw(id, quotation, linkId);
      if (gone === null) throw new Problem('no-such-link', `The quotation has no link "${linkId}".`);
      return c.json(gone, 200);
    });
  app.openAPIRegistry.register('MakeQuotationLink', linkBody);
  return app;
}
