import { z } from 'zod';
import { idOf, text } from './primitives.ts';

/** With what the work was tested, and what of it could not be. */
export const testing = z
  .strictObject({
    instruments: z
      .array(z.strictObject({ id: idOf('instrument'), what: text, serial: text.optional() }))
      .optional(),
    /** What could not be tested, and why; absent: nothing was said. */
    notTested: text.optional(),
  })
  .meta({ id: 'Testing' });
export type Testing = z.infer<typeof testing>;

/** A task of the work that is done. What is no task of a scheme any more counts for nothing. */
export const doneTask = z
  .strictObject({
    /** The scheme's id and the task's, as the list of tasks names it: `spurs-rcbo/fit-socket`. */
    entry: text.min(1),
    /** How much of it there was to do when it was ticked; absent: it is not counted. */
    quantity: z.number().min(0).max(1e9).optional(),
    /** Of a task that holds the work: whether what has to be so is so. */
    isSo: z.boolean().optional(),
  })
  .meta({ id: 'DoneTask' });
export type DoneTask = z.infer<typeof doneTask>;
