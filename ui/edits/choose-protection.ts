import { isSameRemedy } from '#engine/circuit/remedy-key.ts';
import type { RcdChoice } from '#engine/schemes/rcd-choices.ts';
import type { JobEdit } from '../job-events.ts';

/** Gives a scheme one of several ways to an RCD, in place of whichever of the others it has. */
export const chooseProtection = (
  schemeId: string,
  chosen: RcdChoice,
  others: readonly RcdChoice[],
): JobEdit => ({
  label: 'Choose another way to an RCD',
  change: (job) => {
    const scheme = job.schemes.find(({ id }) => id === schemeId);
    if (scheme === undefined) return;
    const going = others.flatMap(({ remedies }) => remedies);
    const kept = scheme.remedies.filter((one) => !going.some((other) => isSameRemedy(one, other)));
    const added = chosen.remedies.filter((one) => !kept.some((other) => isSameRemedy(one, other)));
    scheme.remedies = [...kept, ...structuredClone([...added])];
  },
});
