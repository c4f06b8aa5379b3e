import { isSameRemedy } from '#engine/circuit/remedy-key.ts';
import type { Remedy, Scheme } from '#model/scheme.ts';
import type { JobEdit } from '../job-events.ts';

/** True when a scheme has a remedy of this kind at this place, whatever its device. */
export const hasRemedy = ({ remedies }: Pick<Scheme, 'remedies'>, remedy: Remedy): boolean =>
  remedies.some((one) => isSameRemedy(one, remedy));

/** Adds a remedy to a scheme; one of the same kind at the same place gives way to it. */
export const addRemedy = (schemeId: string, remedy: Remedy, name: string): JobEdit => ({
  label: `Add a remedy: ${name}`,
  change: (job) => {
    const scheme = job.schemes.find(({ id }) => id === schemeId);
    if (scheme === undefined) return;
    scheme.remedies = [
      ...scheme.remedies.filter((one) => !isSameRemedy(one, remedy)),
      structuredClone(remedy),
    ];
  },
});
