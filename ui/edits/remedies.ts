import { isSameRemedy } from '#engine/circuit/remedy-key.ts';
import type { Remedy } from '#model/scheme.ts';
import type { JobEdit } from '../job-events.ts';

/** The kinds of remedy in words. */
export const remedyNames: Readonly<Record<Remedy['kind'], string>> = {
  rcbo: 'RCBO in place of the protective device',
  'rcd-enclosure': 'RCD in an enclosure beside the board',
  'rcd-unit': 'Fused unit with RCD',
  'rcd-outlet': 'Outlet with RCD',
  'bond-upgrade': 'New main bond',
  're-box': 'Deeper back box',
  'single-to-twin': 'Single made twin',
  'lower-device': 'Smaller protective device',
  'new-board': 'New board',
};

/** Takes a remedy out of a scheme. */
export const removeRemedy = (schemeId: string, remedy: Remedy): JobEdit => ({
  label: `Without: ${remedyNames[remedy.kind]}`,
  change: (job) => {
    const scheme = job.schemes.find(({ id }) => id === schemeId);
    if (scheme === undefined) return;
    scheme.remedies = scheme.remedies.filter((one) => !isSameRemedy(one, remedy));
  },
});
