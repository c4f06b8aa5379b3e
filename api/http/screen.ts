import { existsSync } from 'node:fs';
import { extname, join } from 'node:path';
import { serveStatic } from '@hono/node-server/serve-static';
import { Hono, type MiddlewareHandler } from 'hono';

const YEAR_S = 365 * 24 * 60 * 60;

const notBuilt = `<!doctype html>
<html lang="en-GB">
<meta charset="utf-8">
<title>Ringwright: the screen is not built</title>
<h1>The screen is not built yet</h1>
<p>Stop the server and start it with <code>npm start</code>, which builds the screen first;
or build it with <code>npm run build</code> and load this page again.</p>
<p>The programming interface works: <a href="/api/openapi.json">/api/openapi.json</a>.</p>
</html>
`;

/** A place within the screen has no file's ending, unless a job's id looks like one. */
const isPlace = (path: string): boolean => extname(path) === '' || path.startsWith('/jobs/');

/** Where a customer reads a quotation through a link: a page of its own, which nobody keeps or lists. */
const SHARED = '/q';

/** Files under assets/ have a hash of their content in their name; everything else is asked after each time. */
const keepFiles: MiddlewareHandler = async (c, next) => {
  await next();
  const hashed = c.res.ok && c.req.path.startsWith('/assets/');
  const isShared = c.req.path === SHARED;
  const otherwise = isShared ? 'no-store' : 'no-cache';
  c.header('Cache-Control', hashed ? `public, max-age=${YEAR_S}, immutable` : otherwise);
  if (isShared) c.header('X-Robots-Tag', 'noindex, nofollow');
};

/** The file that an address stands for; nothing where it is its own. */
function pageOf(path: string): { readonly path?: string } {
  if (path === SHARED) return { path: 'q.html' };
  return isPlace(path) ? { path: 'index.html' } : {};
}

/**
 * The built screen, from a folder with precompressed files beside the plain ones. A place within
 * the screen gets its one page.
 *
 * @param folder absolute; it may be missing, and may come to be while the server runs.
 */
export function screenFiles(folder: string): Hono {
  const app = new Hono();
  app.get('*', keepFiles, async (c, next) => {
    if (existsSync(join(folder, 'index.html'))) return next();
    return isPlace(c.req.path) ? c.html(notBuilt, 503) : c.notFound();
  });
  app.get('*', (c, next) =>
    serveStatic({
      root: folder,
      precompressed: true,
      ...pageOf(c.req.path),
    })(c, next),
  );
  return app;
}
