import { type CheckResult, rule } from './rule.ts';
import { circuitName, touchedShapes } from './wiring.ts';

type Message = 'contradicts';

/** What the survey calls a circuit and what its legs make of it. */
export const shapeContradiction = rule<Message>({
  id: 'RG2',
  title: 'The legs say what the survey says',
  source: 'common practice',
  messages: {
    contradicts:
      '{circuit} is called a {limit}, but its legs make it a {actual}. The legs are followed here.',
  },
  remedies: { contradicts: 'Look again: either a leg is missing from the survey, or the label is wrong.' },
  couldFail: false,
  applies: (facts) => touchedShapes(facts).some(({ contradicts }) => contradicts),
  check: (facts) =>
    touchedShapes(facts).flatMap(
      ({ circuitId, contradicts, claimed, shape }): readonly CheckResult<Message>[] => {
        if (!contradicts || claimed === null) return [];
        const values = { circuit: circuitName(facts, circuitId), actual: shape, limit: claimed };
        return [
          {
            outcome: 'decide',
            messageId: 'contradicts',
            subjectId: circuitId,
            origin: 'found',
            actual: shape,
            limit: claimed,
            values,
          },
        ];
      },
    ),
});
