import { createRoute, type OpenAPIHono } from '@hono/zod-openapi';
import {
  ifMatchHeader,
  ifNoneMatchHeader,
  jsonAnswer,
  notModified,
  problemAnswers,
  savedAnswer,
  storedAnswer,
  textBody,
} from '../answers.ts';
import type { AppParts } from '../app-parts.ts';
import { bodyText } from '../body-text.ts';
import { routeAt } from '../guards.ts';
import { libraryFromText } from '../readable-job.ts';
import { resourceApp } from '../resource-app.ts';
import { etagOf, ifMatchOf, isHeld, staleRevision } from '../revision-headers.ts';

const readLibrary = createRoute({
  ...routeAt('readLibrary'),
  summary: 'The firm’s details, prices, labour norms, limits and terms',
  description: 'Before the first save this is the demo library, as revision "0".',
  request: { headers: ifNoneMatchHeader },
  responses: { 200: storedAnswer('The library, to the byte.', 'Library'), 304: notModified },
});

const saveLibrary = createRoute({
  ...routeAt('saveLibrary'),
  summary: 'Save the firm’s library over the revision that was read',
  request: { headers: ifMatchHeader, body: textBody('Library') },
  responses: {
    200: jsonAnswer('Saved as a new revision.', savedAnswer),
    ...problemAnswers(
      'not-json',
      'stale-revision',
      'body-too-large',
      'wrong-content-type',
      'library-unreadable',
      'if-match-missing',
    ),
  },
});

/** The firm's library. */
export function libraryRoutes({ stores, demoLibrary }: AppParts): OpenAPIHono {
  const demo = { text: `${JSON.stringify(demoLibrary, null, 2)}\n`, revision: 0 };
  return resourceApp()
    .openapi(readLibrary, async (c) => {
      const { text, revision } = (await stores.library.read()) ?? demo;
      c.header('ETag', etagOf(revision));
      if (isHeld(c, revision)) return c.body(null, 304);
      return c.body(text, 200, { 'Content-Type': 'application/json' });
    })
    .openapi(saveLibrary, async (c) => {
      const base = ifMatchOf(c);
      const text = await bodyText(c);
      libraryFromText(text);
      const saved = await stores.library.save(text, base);
      if (saved.outcome === 'stale') throw staleRevision(saved);
      c.header('ETag', etagOf(saved.revision));
      return c.json({ revision: saved.revision, savedAt: saved.savedAt }, 200);
    });
}
