import { z } from 'zod';
import { idOf, idRef, pence, text } from './primitives.ts';

const minutes = z.number().min(0).max(1e6);

/**
 * Work that no drawing and no check brings: a rotten joist, a fault found on test, a box of tiles broken. It belongs to the job,
 * whichever way the wiring is done. What of it is absent nobody has said: it costs nothing then.
 */
export const extra = z
  .strictObject({
    id: idOf('extra'),
    /** What it is, in words that the customer reads. */
    words: text.min(1).max(500),
    /** Minutes of work, as they are: no multiplier of the job counts for them. Ends that are absent, or on the wrong side of it, are as typical. */
    lowMin: minutes.optional(),
    typicalMin: minutes.optional(),
    highMin: minutes.optional(),
    /** The task of the norms that the minutes were taken from, and that tells when it is done; absent: with the first fix. */
    task: text.min(1).optional(),
    /** What its materials cost the firm, all together; value added tax as the price list has it. */
    materialsPence: pence.optional(),
    /** Where it is, if it is anywhere. */
    at: idRef(['storey', 'room', 'point', 'circuit', 'board']).optional(),
  })
  .meta({ id: 'Extra' });
export type Extra = z.infer<typeof extra>;
