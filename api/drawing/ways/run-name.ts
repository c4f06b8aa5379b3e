import type { Worked } from '#engine/connections/worked.ts';
import type { Run } from '#engine/ways/run.ts';
import { nodeLabel } from '../node-label.ts';

/** A cable by its ends: "R8 to W2". */
export const runName = (worked: Worked, { from, to }: Run): string =>
  `${nodeLabel(worked, from.nodeId)} to ${nodeLabel(worked, to.nodeId)}`;
