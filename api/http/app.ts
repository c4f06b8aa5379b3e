import { OpenAPIHono } from '@hono/zod-openapi';
import type { MiddlewareHandler } from 'hono';
import { HTTPException } from 'hono/http-exception';
import { secureHeaders } from 'hono/secure-headers';
import { type StoreTrouble, type TroubleKind, troubleUnder } from '../db/store-trouble.ts';
import type { AppEnv } from './access-guard.ts';
import type { AppParts } from './app-parts.ts';
import { addDocument } from './document.ts';
import { hostGuard, originGuard } from './guards.ts';
import { loggable } from './loggable.ts';
import { Problem, problemBody, problems } from './problems.ts';
import { nameRequests, requestEntryOf } from './request-log.ts';
import type { FirmApp } from './resource-app.ts';
import { methodsAt } from './route-table.ts';
import { assetRoutes } from './routes/assets.ts';
import { catalogueRoutes } from './routes/catalogue.ts';
import { demoRoutes } from './routes/demos.ts';
import { erasureRoutes } from './routes/erasure.ts';
import { estimateRoutes } from './routes/estimate.ts';
import { exportRoutes } from './routes/exports.ts';
import { healthRoutes } from './routes/health.ts';
import { invitationRoutes } from './routes/invitations.ts';
import { jobRoutes } from './routes/jobs.ts';
import { libraryRoutes } from './routes/library.ts';
import { peopleRoutes } from './routes/people.ts';
import { planExportRoutes } from './routes/plan-exports.ts';
import { priceListRoutes } from './routes/price-lists.ts';
import { problemRoutes } from './routes/problems.ts';
import { quotationLinkRoutes } from './routes/quotation-links.ts';
import { quotationMovedRoutes } from './routes/quotation-moved.ts';
import { quotationNoteRoutes } from './routes/quotation-notes.ts';
import { quotationRoutes } from './routes/quotations.ts';
import { readingsRoutes } from './routes/readings.ts';
import { recordExportRoutes } from './routes/record-exports.ts';
import { revisionRoutes } from './routes/revisions.ts';
import { sessionRoutes } from './routes/session.ts';
import { sharedQuotationRoutes } from './routes/shared-quotation.ts';
import { variationPaperRoutes } from './routes/variation-paper.ts';
import { workExportRoutes } from './routes/work-exports.ts';
import { screenFiles } from './screen.ts';
import { tooMany } from './sign-in/slow-down.ts';
import { TooMany } from './sign-in/turns.ts';
import { askerOf } from './sign-in/who-asks.ts';

/** The server's app, for whoever serves or calls it. */
export type App = ReturnType<typeof createApp>;

/** Headers of every answer; scripts, styles and everything else come from this server alone. */
function safeHeaders(tls: unknown): MiddlewareHandler {
  return secureHeaders({
    contentSecurityPolicy: {
      defaultSrc: ["'none'"],
      scriptSrc: ["'self'"],
      styleSrc: ["'self'"],
      imgSrc: ["'self'", 'blob:', 'data:'],
      fontSrc: ["'self'"],
      connectSrc: ["'self'"],
      manifestSrc: ["'self'"],
      workerSrc: ["'self'"],
      baseUri: ["'none'"],
      formAction: ["'none'"],
      frameAncestors: ["'none'"],
    },
    xFrameOptions: 'DENY',
    // Promised only where it is kept: over plain HTTP the header means nothing, and a proxy sends its own.
    strictTransportSecurity: tls ? 'max-age=15552000' : false,
  });
}

/** Answers of the interface are asked after each time; revisions make that cheap. Set on the answer itself: `c.header` would make a new one of it, its body a stream. */
const askEachTime: MiddlewareHandler = async (c, next) => {
  await next();
  if (!c.res.headers.has('Cache-Control')) c.res.headers.set('Cache-Control', 'no-cache');
};

/** Lays beside each request what its guard needs to tell who asks. */
const laidOpen =
  (parts: AppParts): MiddlewareHandler<AppEnv> =>
  (c, next) => {
    c.set('door', { asker: (asked) => askerOf(asked, parts), storesFor: parts.storesFor });
    return next();
  };

/** Whether this is how a body that stops in the middle shows itself. */
const isBreak = (error: unknown): boolean =>
  error instanceof Error && (error.name === 'AbortError' || ('code' in error && error.code === 'ECONNRESET'));

/** Where more passwords wait to be looked into than can be: a wait after which there is room, ms. */
const BUSY_MS = 5000;
/** After how many seconds it is worth while to ask again, by the kind of trouble; absent: somebody must see to it first. */
const retryAfterS: Readonly<Partial<Record<TroubleKind, number>>> = { busy: 2, away: 5 };

/** The place of the store is for the log alone: whoever asks need not know how this machine's folders are called. */
function problemOfStore({ kind, withoutPlace }: StoreTrouble): Problem {
  const remedy = withoutPlace ?? 'Try again; the server’s log says what is wrong.';
  const retry = retryAfterS[kind];
  const details = retry === undefined ? {} : { retryAfterS: retry };
  return kind === 'away'
    ? new Problem(
        'store-away',
        `Whether anything was changed is not known: read it again first. ${remedy}`,
        details,
      )
    : new Problem('store-trouble', `Nothing was changed. ${remedy}`, details);
}

/** Anything that was thrown, as the problem that it is to the client. */
function problemOf(error: unknown, request: Request): Problem {
  if (error instanceof Problem) return error;
  if (error instanceof TooMany) return tooMany(BUSY_MS);
  if (request.signal.aborted && isBreak(error)) return new Problem('broken-off', 'Send the request again.');
  if (error instanceof HTTPException && error.status < 500)
    return new Problem('request-faulty', 'The request cannot be understood.');
  const trouble = troubleUnder(error);
  if (trouble !== null) return problemOfStore(trouble);
  return new Problem('internal', 'Try again; the server’s log says what happened.');
}

/** A problem as an answer, with the headers that HTTP wants with its kind. Source: RFC 9110, 10.2.1, 10.2.3, 11.6.1. */
function answerOf(problem: Problem, requestId: string): Response {
  const { retryAfterS: retry, choices } = problem.details;
  const body = { ...problemBody(problem), requestId };
  const headers = new Headers({ 'Content-Type': 'application/problem+json' });
  if (problem.code === 'method-not-allowed') headers.set('Allow', choices?.join(', ') ?? '');
  if (retry !== undefined) headers.set('Retry-After', String(retry));
  if (body.status === 401) headers.set('WWW-Authenticate', 'Session realm="Ringwright"');
  return new Response(JSON.stringify(body), { status: body.status, headers });
}

function nothingAt(path: string): Problem {
  const choices = methodsAt(path);
  return choices.length === 0
    ? new Problem('no-such-address', 'What there is stands in /api/openapi.json.')
    : new Problem('method-not-allowed', `It takes ${choices.join(', ')}.`, { choices });
}

/**
 * The whole server as a function from request to answer: no port, no environment, no clock of its own.
 * Errors of every kind are written in one place here, as RFC 9457 has them.
 */
export function createApp(parts: AppParts): FirmApp {
  const { settings, log } = parts;
  const app = new OpenAPIHono<AppEnv>();
  app.onError((error, c) => {
    const problem = problemOf(error, c.req.raw);
    const { route, requestId } = requestEntryOf(c);
    if (problems[problem.code].status >= 500)
      log.complain(`${c.req.method} ${route} failed.`, troubleUnder(error) ?? loggable(error), requestId);
    return answerOf(problem, requestId);
  });
  app.notFound((c) => c.text('There is nothing at this address.', 404));
  app.use(
    nameRequests(settings.version),
    safeHeaders(settings.tls),
    hostGuard(settings),
    originGuard(settings),
  );
  app.use('/api/*', askEachTime, laidOpen(parts));
  for (const routes of [
    healthRoutes(parts),
    problemRoutes(),
    jobRoutes(),
    revisionRoutes(),
    estimateRoutes(parts),
    readingsRoutes(),
    libraryRoutes(parts),
    priceListRoutes(parts),
    catalogueRoutes(parts),
    exportRoutes(parts),
    planExportRoutes(parts),
    workExportRoutes(parts),
    recordExportRoutes(parts),
    quotationRoutes(parts),
    quotationMovedRoutes(parts),
    quotationNoteRoutes(parts),
    variationPaperRoutes(),
    erasureRoutes(parts),
    assetRoutes(),
    sessionRoutes(parts),
    invitationRoutes(parts),
    peopleRoutes(parts),
    quotationLinkRoutes(parts),
    sharedQuotationRoutes(parts),
    demoRoutes(parts),
  ])
    app.route('/', routes);
  addDocument(app, settings.version);
  app.all('/api/*', (c) => {
    throw nothingAt(c.req.path);
  });
  app.all('/api', () => {
    throw nothingAt('/api');
  });
  app.route('/', screenFiles(settings.screenFolder));
  return app;
}
