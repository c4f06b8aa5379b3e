import { circuitRcd } from '../proof/rcd-cover.ts';
import { type CheckResult, rule } from './rule.ts';
import { circuitName, touchedShapes, wiringOf } from './wiring.ts';

type Message = 'suits' | 'foundAC' | 'newAC';

/** Socket-outlets want an RCD of type A or better. */
export const rcdType = rule<Message>({
  id: 'RC2',
  title: 'Type of the RCD',
  source: 'BS 7671 531.3.3, 132.16',
  messages: {
    suits: 'The RCD of {circuit} is of type {actual}.',
    foundAC:
      'The RCD found before {circuit} is of type AC, which is for fixed equipment without DC only. No ruling is known for an outlet added behind one: some exchange it, some judge and record it.',
    newAC: 'The RCD that the scheme fits to {circuit} is of type AC, which is not for socket-outlets.',
  },
  remedies: {
    foundAC: 'An RCBO of type A for the circuit, or a note on the certificate with the reason.',
    newAC: 'A device of type A.',
  },
  couldFail: true,
  applies: (facts) => facts.scheme !== null,
  check: (facts) => {
    const { nodes } = wiringOf(facts);
    return touchedShapes(facts).flatMap(({ circuitId, places }): readonly CheckResult<Message>[] => {
      const hasOutlet = places.some(({ nodeId }) => {
        const pointId = nodes.get(nodeId)?.pointId;
        return pointId ? facts.plan.pointById.get(pointId)?.kind.startsWith('socket-') : false;
      });
      const { type, from } = circuitRcd(facts, circuitId);
      if (!hasOutlet || type === null || from === null) return [];
      const circuit = circuitName(facts, circuitId);
      const head = {
        subjectId: circuitId,
        origin: from,
        actual: type,
        limit: 'A',
        values: { circuit, actual: type },
      };
      if (type !== 'AC') return [{ ...head, outcome: 'passes', messageId: 'suits' }];
      return from === 'found'
        ? [{ ...head, outcome: 'advice', messageId: 'foundAC' }]
        : [{ ...head, outcome: 'fails', messageId: 'newAC' }];
    });
  },
});
