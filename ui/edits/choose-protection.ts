import type { RcdChoice } from '#engine/schemes/rcd-choices.ts';
import type { Remedy } from '#model/scheme.ts';
import type { JobEdit } from '../job-events.ts';

const same = (one: Remedy, other: Remedy): boolean => one.kind === other.kind && one.at === other.at;

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
    const kept = scheme.remedies.filter((one) => !going.some((other) => same(one, other)));
    const added = chosen.remedies.filter((one) => !kept.some((other) => same(one, other)));
    scheme.remedies = [...kept, ...structuredClone([...added])];
  },
});
