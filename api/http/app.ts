import { OpenAPIHono } from '@hono/zod-openapi';
import type { MiddlewareHandler } from 'hono';
import { HTTPException } from 'hono/http-exception';
import { secureHeaders } from 'hono/secure-headers';
import { StoreTrouble } from '../db/store-trouble.ts';
import type { AppParts } from './app-parts.ts';
import { addDocument } from './document.ts';
import { hostGuard, originGuard } from './guards.ts';
import { Problem, problemBody, problems } from './problems.ts';
import { methodsAt } from './route-table.ts';
import { assetRoutes } from './routes/assets.ts';
import { catalogueRoutes } from './routes/catalogue.ts';
import { demoRoutes } from './routes/demos.ts';
import { erasureRoutes } from './routes/erasure.ts';
import { estimateRoutes } from './routes/estimate.ts';
import { exportRoutes } from './routes/exports.ts';
import { healthRoutes } from './routes/health.ts';
import { jobRoutes } from './routes/jobs.ts';
import { libraryRoutes } from './routes/library.ts';
import { planExportRoutes } from './routes/plan-exports.ts';
import { priceListRoutes } from './routes/price-lists.ts';
import { problemRoutes } from './routes/problems.ts';
import { quotationMovedRoutes } from './routes/quotation-moved.ts';
import { quotationNoteRoutes } from './routes/quotation-notes.ts';
import { quotationRoutes } from './routes/quotations.ts';
import { readingsRoutes } from './routes/readings.ts';
import { recordExportRoutes } from './routes/record-exports.ts';
import { revisionRoutes } from './routes/revisions.ts';
import { variationPaperRoutes } from './routes/variation-paper.ts';
import { workExportRoutes } from './routes/work-exports.ts';
import { screenFiles } from './screen.ts';

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
  c.res.headers.set('Cache-Control', 'no-cache');
};

/** Whether this is how a body that stops in the middle shows itself. */
const isBreak = (error: unknown): boolean =>
  error instanceof Error && (error.name === 'AbortError' || ('code' in error && error.code === 'ECONNRESET'));

/** Anything that was thrown, as the problem that it is to the client. */
function problemOf(error: unknown, request: Request): Problem {
  if (error instanceof Problem) return error;
  if (request.signal.aborted && isBreak(error)) return new Problem('broken-off', 'Send the request again.');
  if (error instanceof HTTPException && error.status < 500)
    return new Problem('request-faulty', 'The request cannot be understood.');
  // The place of the store is for the log alone: whoever asks need not know how this machine's folders are called.
  if (error instanceof StoreTrouble) {
    const remedy = error.withoutPlace ?? 'Try again; the server’s log says what is wrong.';
    return new Problem('store-trouble', `Nothing was changed. ${remedy}`);
  }
  return new Problem('internal', 'Try again; the server’s log says what happened.');
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
export function createApp(parts: AppParts): OpenAPIHono {
  const { settings, log } = parts;
  const app = new OpenAPIHono();
  app.onError((error, c) => {
    const problem = problemOf(error, c.req.raw);
    if (problems[problem.code].status >= 500) log.complain(`${c.req.method} ${c.req.path} failed.`, error);
    const body = problemBody(problem);
    const allow: Record<string, string> =
      problem.code === 'method-not-allowed' ? { Allow: problem.details.choices?.join(', ') ?? '' } : {};
    return new Response(JSON.stringify(body), {
      status: body.status,
      headers: { 'Content-Type': 'application/problem+json', ...allow },
    });
  });
  app.notFound((c) => c.text('There is nothing at this address.', 404));
  app.use(safeHeaders(settings.tls), hostGuard(settings), originGuard(settings));
  app.use('/api/*', askEachTime);
  for (const routes of [
    healthRoutes(parts),
    problemRoutes(),
    jobRoutes(parts),
    revisionRoutes(parts),
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
    variationPaperRoutes(parts),
    erasureRoutes(parts),
    assetRoutes(parts),
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
