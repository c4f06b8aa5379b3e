import { nodeLabel } from '#drawing/node-label.ts';
import type { Worked } from '#engine/connections/worked.ts';
import type { Run } from '#engine/ways/run.ts';
import { metres } from '../../written.ts';

/** A cable by its ends: "R8 to W2". */
export const runName = (worked: Worked, { from, to }: Run): string =>
  `${nodeLabel(worked, from.nodeId)} to ${nodeLabel(worked, to.nodeId)}`;

/** The same with its length: "R8 to W2, 5.90 m"; without where no length is known. */
export const runWithLength = (worked: Worked, run: Run): string =>
  run.lengthMm === null ? runName(worked, run) : `${runName(worked, run)}, ${metres(run.lengthMm)}`;
