import { createRoute, z } from '@hono/zod-openapi';
import { pictureEndings } from '#archive/archive-entries.ts';
import { imageKind } from '#archive/image-kind.ts';
import { ifNoneMatchHeader, jsonAnswer, notModified, problemAnswers } from '../answers.ts';
import { routeAt } from '../guards.ts';

import { Problem } from '../problems.ts';
import { type FirmApp, resourceApp } from '../resource-app.ts';

const asset = z
  .object({
    id: z.string().meta({ description: 'The SHA-256 of its bytes, hexadecimal.' }),
    mediaType: z.string(),
    bytes: z.int(),
  })
  .openapi('Photo');

const binary = { schema: { type: 'string' as const, format: 'binary' } };

const keepPhoto = createRoute({
  ...routeAt('keepPhoto'),
  summary: 'Keep a photo: JPEG, PNG or WebP, known by its bytes',
  description: 'Sent again, it is the same one.',
  request: { body: { required: true, content: { 'application/octet-stream': binary } } },
  responses: {
    201: jsonAnswer('Kept, at the address in Location.', asset),
    ...problemAnswers('body-too-large', 'wrong-content-type', 'photo-unreadable'),
  },
});

const readPhoto = createRoute({
  ...routeAt('readPhoto'),
  summary: 'A photo, to the byte',
  request: {
    params: z.object({ asset: z.string().regex(/^[0-9a-f]{64}$/, 'must be the id of a photo') }),
    headers: ifNoneMatchHeader,
  },
  responses: {
    200: {
      description: 'The photo.',
      content: { 'image/jpeg': binary, 'image/png': binary, 'image/webp': binary },
    },
    304: notModified,
    ...problemAnswers('no-such-photo'),
  },
});

const endings: Readonly<Record<string, string>> = pictureEndings;

/** Photos, each under the hash of its bytes. */
export function assetRoutes(): FirmApp {
  return resourceApp()
    .openapi(keepPhoto, async (c) => {
      const { stores } = c.var;
      const bytes = new Uint8Array(await c.req.arrayBuffer());
      const mediaType = imageKind(bytes);
      if (mediaType === null)
        throw new Problem('photo-unreadable', 'Send a JPEG, a PNG or a WebP picture, whole.');
      const kept = await stores.assets.keep(bytes, mediaType);
      c.header('Location', `/api/assets/${kept.id}`);
      return c.json(kept, 201);
    })
    .openapi(readPhoto, async (c) => {
      const { stores } = c.var;
      const { asset: id } = c.req.valid('param');
      const etag = `"${id}"`;
      c.header('ETag', etag);
      if (c.req.header('if-none-match') === etag) return c.body(null, 304);
      const stored = await stores.assets.read(id);
      if (stored === null) throw new Problem('no-such-photo', 'It was never kept here.');
      // Never as anything but the picture that its bytes are; whoever opens its address gets a file.
      return c.body(new Uint8Array(stored.content), 200, {
        'Content-Type': stored.mediaType,
        'Content-Disposition': `attachment; filename="photo-${id.slice(0, 8)}.${endings[stored.mediaType]}"`,
        'X-Content-Type-Options': 'nosniff',
      });
    });
}
