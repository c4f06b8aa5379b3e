import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ENGINE_VERSION } from '#engine/engine-version.ts';
import type { Job } from '#model/job.ts';
import { recordSchema } from '#tests/exports/record-schema.ts';
import { demoJob, demoNames } from '../../demo-jobs/demo-estimates.ts';
import { allFields, recordFor } from './record-fixtures.ts';

/** Leaves out what a survey may not have yet, by the mask's bits. */
function unfinished(job: Job, mask: readonly boolean[]): Job {
  const [supply, boards, devices, answers, legs, places, readings, cables, storeys] = mask;
  return {
    ...job,
    supply: supply ? { nominalV: 230, bonding: [], otherSources: [] } : job.supply,
    boards: boards ? job.boards.map(({ id, label }) => ({ id, label, rcds: [] })) : job.boards,
    circuits: job.circuits.map(({ device, upstreamRcd, ...circuit }) => ({
      ...circuit,
      ...(devices || device === undefined ? {} : { device }),
      ...(boards || devices || upstreamRcd === undefined ? {} : { upstreamRcd }),
    })),
    answers: answers ? [] : job.answers,
    legs: legs
      ? job.legs.filter((_, i) => i % 2 === 0)
      : job.legs.map(({ cable, ...leg }) => (cables || cable === undefined ? leg : { ...leg, cable })),
    points: places || storeys ? job.points.map(({ place: _, ...point }) => point) : job.points,
    readings: readings ? [] : job.readings,
    storeys: storeys ? [] : job.storeys,
  };
}

const cases = demoNames.flatMap((name) => demoJob(name).schemes.map(({ id }) => [name, id] as const));

describe('the record of an unfinished job', () => {
  it('is there, as data that can be counted on, whatever the survey has left out', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...cases),
        fc.array(fc.boolean(), { minLength: 9, maxLength: 9 }),
        ([name, schemeId], mask) => {
          const record = recordFor(unfinished(demoJob(name), mask), schemeId);
          const read = recordSchema.safeParse({ ...record, demoNote: null, engine: ENGINE_VERSION });
          expect(read.error?.issues ?? []).toEqual([]);
          expect(allFields(record).filter(({ from }) => from === 'measured')).toEqual([]);
        },
      ),
      { numRuns: 40 },
    );
  });
});
