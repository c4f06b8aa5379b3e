import { createRoute } from '@hono/zod-openapi';
import {
  ifMatchHeader,
  ifNoneMatchHeader,
  notModified,
  problemAnswers,
  savedAnswer,
  storedAnswer,
  textBody,
} from '../answers.ts';
import type { AppParts } from '../app-parts.ts';
import { bodyText } from '../body-text.ts';
import { demoLibraryText } from '../firm-library.ts';
import { routeAt } from '../guards.ts';
import { libraryFromText } from '../readable-job.ts';
import { type FirmApp, resourceApp } from '../resource-app.ts';
import { etagOf, ifMatchOf, isHeld, staleRevision } from '../revision-headers.ts';

const readLibrary = createRoute({
  ...routeAt('readLibrary'),
  summary: 'The firm’s details, prices, labour norms, limits and terms',
  description: 'Before the first save this is the demo library, as revision 0.',
  request: { headers: ifNoneMatchHeader },
  responses: { 200: storedAnswer('The library, to the byte.', 'Library'), 304: notModified },
});

const saveLibrary = createRoute({
  ...routeAt('saveLibrary'),
  summary: 'Save the firm’s library over the revision that was read',
  request: { headers: ifMatchHeader, body: textBody('Library') },
  responses: {
    200: savedAnswer('Saved as a new revision.'),
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
export function libraryRoutes({ demoLibrary }: AppParts): FirmApp {
  const demo = demoLibraryText(demoLibrary);
  return resourceApp()
    .openapi(readLibrary, async (c) => {
      const { stores } = c.var;
      const now = (await stores.library.read()) ?? demo;
      c.header('ETag', etagOf(now));
      if (isHeld(c, now)) return c.body(null, 304);
      return c.body(now.text, 200, { 'Content-Type': 'application/json' });
    })
    .openapi(saveLibrary, async (c) => {
      const { stores } = c.var;
      const base = ifMatchOf(c);
      const text = await bodyText(c);
      libraryFromText(text);
      // Another version's demo library is another text: what was made from it may not go over this one's unseen.
      if (base.revision === 0 && base.tag !== demo.tag)
        throw staleRevision((await stores.library.read()) ?? demo);
      const saved = await stores.library.save(text, base);
      if (saved.outcome === 'stale') throw staleRevision(saved.revision === 0 ? demo : saved);
      c.header('ETag', etagOf(saved));
      return c.json({ revision: saved.revision, savedAt: saved.savedAt }, 200);
    });
}
