import { createRoute, z } from '@hono/zod-openapi';
import { knownTasks } from '#engine/labour/known-tasks.ts';
import { normOf } from '#engine/labour/norm-of.ts';
import { knownItems } from '#engine/takeoff/items.ts';
import { norm, price } from '#model/library.ts';
import { jsonAnswer, problemAnswers } from '../answers.ts';
import type { AppParts } from '../app-parts.ts';
import { firmLibrary } from '../firm-library.ts';
import { routeAt } from '../guards.ts';
import { type FirmApp, resourceApp } from '../resource-app.ts';

const catalogueAnswer = z
  .object({
    libraryRevision: z.int().meta({ description: 'The library that the prices and norms are from.' }),
    items: z.array(
      z.object({
        id: z.string().meta({ example: 'cable-flat-2.5-1.5' }),
        description: z.string(),
        unit: z.string(),
        group: z.string(),
        price: price.nullable().meta({ description: 'Null: the firm’s price list does not hold it.' }),
      }),
    ),
    tasks: z.array(
      z.object({
        id: z.string().meta({ example: 'fit-socket' }),
        description: z.string(),
        unit: z.string(),
        stage: z.string(),
        norm: norm.nullable().meta({
          description: 'That of another task where one stands in; null: the firm has no norm for it.',
        }),
      }),
    ),
  })
  .openapi('Catalogue');

const catalogue = createRoute({
  ...routeAt('catalogue'),
  summary: 'Everything that an estimate can ask for, with the firm’s price or norm',
  responses: {
    200: jsonAnswer('Items by id, tasks in the order of the work.', catalogueAnswer),
    ...problemAnswers('library-unreadable'),
  },
});

/** Items and tasks with the firm's prices and norms. */
export function catalogueRoutes({ demoLibrary }: AppParts): FirmApp {
  return resourceApp().openapi(catalogue, async (c) => {
    const { stores } = c.var;
    const { library, revision } = await firmLibrary(stores.library, demoLibrary);
    const priceOf = new Map(library.prices.items.map((row) => [row.item, row]));
    const items = knownItems.map((item) => ({ ...item, price: priceOf.get(item.id) ?? null }));
    const tasks = knownTasks.map((task) => ({ ...task, norm: normOf(task.id, library.norms) }));
    return c.json({ libraryRevision: revision, items, tasks }, 200);
  });
}
