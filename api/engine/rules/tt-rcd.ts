import { circuitRcd } from '../proof/rcd-cover.ts';
import { type CheckResult, rule } from './rule.ts';

/** With an electrode for an earth, only an RCD disconnects a fault. */
export const ttRcd = rule({
  id: 'SU5',
  title: 'RCD on a TT supply',
  source: 'BS 7671 411.5.2',
  applies: ({ job }) => job.supply.earthing === 'TT',
  messages: {
    covered: 'The circuit is behind an RCD of {actual} mA.',
    none: 'The supply is TT and the circuit is behind no RCD of 30 mA: a fault to earth may not disconnect.',
    assumedNone:
      'The supply is TT, and it is assumed that the circuit is behind no RCD of 30 mA: not proven; a fault to earth may not disconnect.',
    unknown: 'The supply is TT, and whether the circuit is behind an RCD is not known.',
  },
  remedies: {
    none: 'Fit an RCD; look for a time-delayed one at the origin, which may serve for faults.',
    assumedNone: 'Open the board and see what the circuit is behind; if behind none, fit an RCD.',
    unknown: 'Open the board and see what the circuit is behind.',
  },
  couldFail: false,
  check: (facts) =>
    facts.circuitIds.map((circuitId): CheckResult<'covered' | 'none' | 'assumedNone' | 'unknown'> => {
      const subject = { subjectId: circuitId, origin: 'found' } as const;
      const { state, mA } = circuitRcd(facts, circuitId);
      if (state === 'covered')
        return { ...subject, outcome: 'passes', messageId: 'covered', actual: mA ?? 0, unit: 'mA' };
      if (state === 'unknown') return { ...subject, outcome: 'not-proven', messageId: 'unknown' };
      const fix = { kind: 'rcbo', at: circuitId } as const;
      if (state === 'assumed-none')
        return { ...subject, outcome: 'not-proven', messageId: 'assumedNone', fix };
      return { ...subject, outcome: 'decide', messageId: 'none', fix };
    }),
});
