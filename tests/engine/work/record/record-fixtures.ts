import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { estimate } from '#engine/estimate.ts';
import type { RecordField } from '#engine/work/record/record-field.ts';
import type { CircuitRecord, WorkRecord } from '#engine/work/record/record-shape.ts';
import { workRecord } from '#engine/work/record/work-record.ts';
import type { Job } from '#model/job.ts';
import type { Firm } from '#model/library.ts';
import { schemeOf } from '../../demo-jobs/demo-estimates.ts';

const when = { date: '2026-11-27', revision: 1 };

/** The record of a job's scheme, of the demo firm where no other is named. */
export function recordFor(job: Job, schemeId: string, firm: Firm = demoLibrary().firm): WorkRecord {
  // No price is in a record: what prices hang on need not be worked out.
  const result = estimate(job, demoLibrary(), when, { schemeIds: [schemeId], depth: 'live' });
  return workRecord({
    estimate: result,
    scheme: schemeOf(result, schemeId),
    firm,
    state: '0000-0000',
  });
}

/** Every field of a record. */
export const allFields = ({ work, supply, circuits }: WorkRecord): readonly RecordField[] => [
  ...work,
  ...supply,
  ...circuits.flatMap(({ particulars, tests, means }) => [...particulars, ...tests, ...means]),
];

/** The one field of that id. */
export function fieldOf(fields: readonly RecordField[], id: string): RecordField {
  const found = fields.filter((field) => field.id === id);
  if (found.length !== 1 || found[0] === undefined) throw new Error(`${found.length} fields "${id}"`);
  return found[0];
}

/** The only circuit of a record. */
export function onlyCircuit({ circuits }: WorkRecord): CircuitRecord {
  const [circuit, ...more] = circuits;
  if (circuit === undefined || more.length > 0) throw new Error('not one circuit');
  return circuit;
}
