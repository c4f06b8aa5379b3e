import { createRoute, z } from '@hono/zod-openapi';
import type { Context, MiddlewareHandler } from 'hono';
import type { QuotationDrawings } from '#drawing/quotation/quotation-drawings.ts';
import type { QuotationDocument } from '#engine/quotation/document.ts';
import { standingOf } from '#engine/quotation/standing.ts';
import { quotationPdf } from '#exports/quotation-pdf.ts';
import type { AppEnv } from '../access-guard.ts';
import { problemAnswers, textAnswer, textBody } from '../answers.ts';
import type { AppParts } from '../app-parts.ts';
import { routeAt } from '../guards.ts';
import { Problem } from '../problems.ts';
import { type FirmApp, resourceApp } from '../resource-app.ts';
import { isWithin } from '../sign-in/life-spans.ts';
import { countedAddress, countGuess } from '../sign-in/slow-down.ts';
import { isToken, tokenHashOf } from '../sign-in/tokens.ts';
import { smallBodyOf } from '../small-body.ts';

const tokenBody = z.strictObject({ token: z.string().max(200) });

/** What a customer has through a link: the paper as it was issued, and whether it still stands. */
const sharedQuotation = z.object({
  document: z.looseObject({}).meta({ description: 'As it was issued.' }),
  drawings: z.looseObject({}),
  status: z.enum(['issued', 'accepted', 'declined', 'withdrawn', 'replaced']),
  expiresAt: z.string().meta({ description: 'When the link ends.' }),
});

const refusals = problemAnswers('not-json', 'no-such-link', 'body-unreadable', 'too-many-attempts');

const read = createRoute({
  ...routeAt('sharedQuotation'),
  summary: 'The quotation that a link shows',
  request: { body: textBody('QuotationLinkToken') },
  responses: { 200: textAnswer('As it was issued.', 'SharedQuotation'), ...refusals },
});

const readPdf = createRoute({
  ...routeAt('sharedQuotationPdf'),
  summary: 'The quotation that a link shows, as a PDF',
  request: { body: textBody('QuotationLinkToken') },
  responses: {
    200: {
      description: 'The quotation.',
      content: { 'application/pdf': { schema: { type: 'string' as const, format: 'binary' } } },
    },
    ...refusals,
  },
});

interface Shown {
  readonly document: QuotationDocument;
  readonly drawings: QuotationDrawings;
  readonly status: ReturnType<typeof standingOf>['status'];
  readonly expiresAt: string;
}

/** What a token shows; null where it shows nothing, for whatever reason. */
async function shownBy(token: string, { linked, storesFor, now }: AppParts): Promise<Shown | null> {
  const link = isToken(token) ? await linked(tokenHashOf(token)) : null;
  if (link === null || link.withdrawnAt !== null || !isWithin(link.madeAt, link.expiresAt, now()))
    return null;
  const { quotations } = await storesFor(link.firmId);
  const stored = await quotations.read(link.jobId, link.quotationId);
  // What was erased of it, were it the customer alone, is nothing to be sent out any more.
  if (stored === null || stored.lessened !== null) return null;
  const [document, drawings] = await Promise.all(
    (['document', 'drawings'] as const).map((which) =>
      quotations.readText(link.jobId, link.quotationId, which),
    ),
  );
  if (!document || !drawings) return null;
  return {
    // Written by `issueQuotation` and by nothing else, as these types.
    document: JSON.parse(document) as QuotationDocument,
    drawings: JSON.parse(drawings) as QuotationDrawings,
    status: standingOf(stored).status,
    expiresAt: link.expiresAt,
  };
}

/** As `shownBy`; wrong tokens are counted by where they come from, and all refused alike. */
async function shownOf(c: Context, parts: AppParts): Promise<Shown> {
  const { token } = await smallBodyOf(c, tokenBody);
  const counted = countedAddress('link', c, parts.settings);
  await countGuess(parts.attempts, [counted]);
  const shown = await shownBy(token, parts);
  if (shown === null) throw new Problem('no-such-link', 'Ask whoever sent it for another.');
  // Nobody guesses a token by having another: whoever has one is nobody to be slowed down.
  await parts.attempts.clear(counted.key);
  return shown;
}

/** Nobody keeps on the way what a customer sees, nor lists it. */
const keptNowhere: MiddlewareHandler<AppEnv> = async (c, next) => {
  await next();
  c.header('Cache-Control', 'no-store');
  c.header('X-Robots-Tag', 'noindex, nofollow');
};

/** What a customer sees through a link: one quotation, as it was issued. */
export function sharedQuotationRoutes(parts: AppParts): FirmApp {
  const app = resourceApp();
  app.use('/api/shared-quotation/*', keptNowhere);
  app.openapi(read, async (c) => {
    const { document, ...shown } = await shownOf(c, parts);
    // What the firm had to see to before it was sent is no part of the paper.
    const text = JSON.stringify({ document: { ...document, beforeSending: [] }, ...shown });
    return c.body(text, 200, { 'Content-Type': 'application/json' });
  });
  app.openapi(readPdf, async (c) => {
    const { document, drawings } = await shownOf(c, parts);
    return c.body(new Uint8Array(await quotationPdf(document, drawings)), 200, {
      'Content-Type': 'application/pdf',
      'Content-Disposition': 'attachment; filename="quotation.pdf"',
    });
  });
  app.openAPIRegistry.register('QuotationLinkToken', tokenBody);
  app.openAPIRegistry.register('SharedQuotation', sharedQuotation);
  return app;
}
