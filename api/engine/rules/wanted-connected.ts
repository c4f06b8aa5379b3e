import type { Facts } from './facts.ts';
import { type CheckResult, rule } from './rule.ts';

type Message = 'connected' | 'notConnected';

/** A scheme is one complete way to connect every wanted point. */
export const wantedConnected = rule<Message>({
  id: 'CN2',
  title: 'Joining of wanted points',
  source: 'what the customer asked for',
  messages: {
    connected: '{name} is connected.',
    notConnected: 'The scheme leaves {name} without a supply.',
  },
  remedies: { notConnected: 'Add a connection that reaches it, or take the point out of what is wanted.' },
  couldFail: true,
  applies: (facts) => facts.scheme !== null,
  check: (facts) => {
    const fed = new Set(
      facts.proposed.nodes.filter(({ id }) => !isCutOff(facts, id)).map(({ pointId }) => pointId),
    );
    return facts.job.points
      .filter(({ status }) => status === 'wanted')
      .map(({ id, label }): CheckResult<Message> => {
        const head = { subjectId: id, origin: 'scheme', values: { name: label } } as const;
        return fed.has(id)
          ? { ...head, outcome: 'passes', messageId: 'connected' }
          : { ...head, outcome: 'fails', messageId: 'notConnected' };
      });
  },
});

/** Whether no cable leads from a node to its origin, though the circuit's legs are told. */
function isCutOff(facts: Facts, nodeId: string): boolean {
  for (const { places, shape } of facts.shapes.values()) {
    const place = places.find((each) => each.nodeId === nodeId);
    // Of a circuit without legs no point has a way to the origin, and a cable to the point is all there is.
    if (place) return place.role === 'unreached' && shape !== 'unknown';
  }
  return true;
}
