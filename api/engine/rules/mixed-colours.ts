import { type CheckResult, rule } from './rule.ts';

/** Where old colours meet new, the marking is clear. */
export const mixedColours = rule({
  id: 'SC4',
  title: 'Old and new core colours',
  source: 'BS 7671 514.1.3, 514.14.1',
  applies: ({ scheme }) => scheme !== null,
  messages: {
    mixed:
      'Red and black cores of this circuit meet brown and blue. Sources disagree on a notice at the board: the edition of 2018 calls for it, Amendment 2 may have dropped it; it does no harm.',
    unknown:
      'The core colours of this circuit are not recorded; if they are red and black, they will meet brown and blue.',
  },
  remedies: {
    mixed: 'Mark the joins where they could mislead, and put the notice up.',
    unknown: 'Look at the cores when a plate is off.',
  },
  couldFail: false,
  check: (facts) =>
    facts.circuitIds.flatMap<CheckResult<'mixed' | 'unknown'>>((id) => {
      const found = facts.job.circuits.find((circuit) => circuit.id === id);
      if (!found || found.colours === 'new') return [];
      const messageId = found.colours === undefined ? 'unknown' : 'mixed';
      return [{ outcome: 'advice', messageId, subjectId: id, origin: 'found' }];
    }),
});
