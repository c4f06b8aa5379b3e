import { runName } from '#drawing/ways/run-name.ts';
import type { Worked } from '#engine/connections/worked.ts';
import type { Run } from '#engine/ways/run.ts';
import { metres } from '../../written.ts';

/** A cable by its ends with its length: "R8 to W2, 5.90 m"; without where no length is known. */
export const runWithLength = (worked: Worked, run: Run): string =>
  run.lengthMm === null ? runName(worked, run) : `${runName(worked, run)}, ${metres(run.lengthMm)}`;
