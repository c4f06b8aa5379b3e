import { answerTo } from './answer.ts';
import { rule } from './rule.ts';

/** Pipes and cables in the way are found before walls and floors are cut. */
export const hiddenServices = rule({
  id: 'RT13',
  title: 'Hidden pipes and cables',
  source: 'common practice',
  applies: (facts) => answerTo(facts, 'hidden-services') !== 'traced',
  messages: {
    untraced:
      'The run is cut into a wall or goes through joists or studs, where pipes and cables were not traced.',
  },
  remedies: { untraced: 'Trace with a detector, and look for drops from taps, radiators and plates.' },
  couldFail: false,
  check: (facts) =>
    facts.runs
      .filter(({ segments }) =>
        segments.some(
          ({ medium, joistsCrossed, studsCrossed }) =>
            medium === 'wall-chase' || joistsCrossed + studsCrossed > 0,
        ),
      )
      .map(({ id }) => ({ outcome: 'advice', messageId: 'untraced', subjectId: id, origin: 'scheme' })),
});
