import { cautions, editionNote } from '#engine/cautions.ts';
import { ENGINE_VERSION } from '#engine/engine-version.ts';
import { circuitsRead, inferCircuit } from '#engine/proof/readings/infer-circuit.ts';
import type { Job } from '#model/job.ts';

/** What the readings of a job say of its circuits, as JSON text: the circuits that were read before the work, in the job's order. */
export function readingsJson(job: Job): string {
  const { reference, title, edition } = job;
  const circuits = circuitsRead(job).map((id) => inferCircuit(job, id));
  return `${JSON.stringify({ reference, title, edition, editionNote, cautions, circuits, engine: ENGINE_VERSION }, null, 2)}\n`;
}
