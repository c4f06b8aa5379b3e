import { z } from 'zod';
import { JOB_VERSION, job } from './job.ts';

/** The job file's schema as JSON Schema 2020-12, for editors and other programs; references and ids it cannot check. */
export function jobJsonSchema(): object {
  return z.toJSONSchema(
    job.meta({
      title: `Ringwright job file, version ${JOB_VERSION}`,
      description:
        'A surveyed house, what is wanted in it, and the schemes to connect it. Lengths in mm, plan positions [x, y] in mm, heights in mm above the finished floor, areas in mm², A, V, Ω, whole pence, percentages 0 to 100, dates ISO.',
    }),
    { target: 'draft-2020-12' },
  );
}
