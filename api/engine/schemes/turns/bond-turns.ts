import type { Remedy } from '#model/scheme.ts';
import type { Worked } from '../../connections/worked.ts';
import { bondsToSettle, type Service } from '../../rules/bonds.ts';
import type { PriceTurn } from './price-turn.ts';

const renews =
  (service: Service) =>
  ({ kind, at }: Remedy): boolean =>
    kind === 'bond-upgrade' && at === service;

/**
 * The main bonds that nobody has seen, or whose size nobody has: one that is missing or too small is fitted, or renewed, where
 * the scheme does not do so already; where it does, it may be found to be there. By service.
 */
export function bondTurns({ job, scheme }: Worked): readonly PriceTurn[] {
  const remedies = scheme?.remedies ?? [];
  // A renewal of whatever bonds there are leaves nothing to be found out for the price.
  if (remedies.some(({ kind, at }) => kind === 'bond-upgrade' && at === undefined)) return [];
  return bondsToSettle(job.supply).map((service): PriceTurn => {
    const isIt = renews(service);
    const head = { question: `bond-${service}`, subjectId: 'supply' };
    if (remedies.some(isIt)) {
      const without: PriceTurn['cheaper'] = [
        { scheme: (one) => ({ ...one, remedies: one.remedies.filter((remedy) => !isIt(remedy)) }) },
      ];
      return { ...head, cheaper: without, dearer: [] };
    }
    const fitted: Remedy = { kind: 'bond-upgrade', at: service };
    return {
      ...head,
      cheaper: [],
      dearer: [{ scheme: (one) => ({ ...one, remedies: [...one.remedies, fitted] }) }],
    };
  });
}
