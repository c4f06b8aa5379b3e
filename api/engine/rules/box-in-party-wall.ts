import { type CheckResult, rule } from './rule.ts';

/** Flush boxes in walls shared with the neighbours let sound and fire through. */
export const boxInPartyWall = rule({
  id: 'BX3',
  title: 'Flush boxes in party walls',
  source: 'BS 7671 527.2; Approved Document E',
  messages: {
    flush:
      'A flush box is cut into a wall shared with the neighbours, where one may stand behind it already.',
    flushScotland:
      'A flush box is cut into a wall shared with the neighbours; in Scotland that may need a warrant, since it harms a separating wall.',
    surface: 'The box on the wall shared with the neighbours is on the surface.',
  },
  remedies: {
    flush:
      'Use a surface box or another wall; else never back to back, cut no deeper than needed, with a putty pad and the gaps sealed.',
    flushScotland:
      'Use a surface box or another wall; else ask the verifier, and fit a putty pad with the gaps sealed.',
  },
  couldFail: false,
  check: (facts) =>
    facts.things.boxes
      .filter(({ party, action }) => party && (action === 'fit' || action === 're-box'))
      .map((box): CheckResult<'flush' | 'flushScotland' | 'surface'> => {
        const subject = { subjectId: box.id, origin: 'scheme' } as const;
        if (box.build === 'surface') return { ...subject, outcome: 'passes', messageId: 'surface' };
        const scotland = facts.job.site.nation === 'scotland';
        return { ...subject, outcome: 'decide', messageId: scotland ? 'flushScotland' : 'flush' };
      }),
});
