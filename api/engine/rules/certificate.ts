import { exchangesBoard, newCircuitIds } from './fitted-devices.ts';
import { rule } from './rule.ts';

/** Which certificate the work ends with. */
export const certificate = rule({
  id: 'NT2',
  title: 'The work ends with the right certificate',
  source: 'BS 7671 644, Appendix 6',
  applies: ({ scheme }) => scheme !== null,
  messages: {
    installation: 'A new circuit or board: an electrical installation certificate with its schedules.',
    minorWorks: 'No new circuit: minor works certificates, one for each circuit touched ({actual}).',
  },
  remedies: {
    installation: 'Allow for its inspections, tests and schedules.',
    minorWorks: 'Allow for the tests of each; one installation certificate may stand for several.',
  },
  couldFail: false,
  check: (facts) => {
    const subject = { outcome: 'advice', origin: 'scheme', subjectId: facts.scheme?.id ?? 'site' } as const;
    return exchangesBoard(facts) || newCircuitIds(facts).length > 0
      ? [{ ...subject, messageId: 'installation' as const }]
      : [{ ...subject, messageId: 'minorWorks' as const, actual: facts.circuitIds.length }];
  },
});
