import { exchangesBoard, newCircuitIds } from './fitted-devices.ts';
import { rule } from './rule.ts';

/** Which certificate the work ends with. */
export const certificate = rule({
  id: 'NT2',
  title: 'Certificate for the work',
  source: 'BS 7671 644, Appendix 6',
  applies: ({ scheme }) => scheme !== null,
  messages: {
    installation: 'A new circuit or board: an electrical installation certificate with its schedules.',
    minorWork: 'No new circuit: a minor works certificate for the circuit touched.',
    minorWorks: 'No new circuit: minor works certificates, one for each circuit touched ({actual}).',
  },
  remedies: {
    installation: 'Allow for its inspections, tests and schedules.',
    minorWork: 'Allow for its tests.',
    minorWorks: 'Allow for the tests of each; one installation certificate may stand for several.',
  },
  couldFail: false,
  check: (facts) => {
    const subject = { outcome: 'advice', origin: 'scheme', subjectId: facts.scheme?.id ?? 'site' } as const;
    if (exchangesBoard(facts) || newCircuitIds(facts).length > 0)
      return [{ ...subject, messageId: 'installation' as const }];
    return facts.circuitIds.length === 1
      ? [{ ...subject, messageId: 'minorWork' as const, actual: 1 }]
      : [{ ...subject, messageId: 'minorWorks' as const, actual: facts.circuitIds.length }];
  },
});
