import { answerTo } from './answer.ts';
import type { Facts } from './facts.ts';
import { isSocket } from './placed.ts';
import { type CheckResult, rule } from './rule.ts';

/** Premises whose socket circuits the regulation names. Source: BS 7671:2018+A2:2022 421.1.7. */
const NAMED: readonly string[] = ['hmo', 'higher-risk', 'student', 'care'];

type Message = 'fitted' | 'newWithout' | 'newUnknown' | 'foundWithout' | 'recommended';

/** Arc fault detection by the kind of premises. */
export const arcFault = rule<Message>({
  id: 'PR1',
  title: 'Arc fault detection',
  source: 'BS 7671:2018+A2:2022 421.1.7',
  messages: {
    fitted: 'Arc fault detection is recorded for the socket circuits.',
    newWithout:
      'A new socket circuit in these premises ({actual}) has no arc fault detection, which Amendment 2 requires; what Amendment 4 says was not verified.',
    newUnknown:
      'Amendment 2 requires arc fault detection on a new socket circuit in these premises ({actual}); whether it is fitted is not told. What Amendment 4 says was not verified.',
    foundWithout:
      'Amendment 2 requires arc fault detection on socket circuits in these premises ({actual}). Whether adding to a circuit that is there calls for it is read both ways; what Amendment 4 says was not verified.',
    recommended: 'Arc fault detection is recommended, not required, in these premises ({actual}).',
  },
  remedies: {
    newWithout: 'Fit a device with arc fault detection that the board’s maker accepts.',
    newUnknown: 'Answer the checklist’s question on arc fault detection.',
    foundWithout: 'Fit it, or record the designer’s reason for not fitting it.',
    recommended: 'Offer it.',
  },
  couldFail: true,
  check: (facts) =>
    facts.circuitIds.filter((id) => feedsSockets(facts, id)).map((circuitId) => judged(facts, circuitId)),
});

function judged(facts: Facts, circuitId: string): CheckResult<Message> {
  const circuit = facts.proposed.circuits.find(({ id }) => id === circuitId);
  const isNew = circuit?.isNew === true;
  const answer = answerTo(facts, 'arc-fault-protection');
  const actual = facts.job.site.premises;
  const subject = { subjectId: circuitId, origin: isNew ? 'scheme' : 'found', actual } as const;
  if (answer === 'fitted') return { ...subject, outcome: 'passes', messageId: 'fitted' };
  if (!NAMED.includes(actual)) return { ...subject, outcome: 'advice', messageId: 'recommended' };
  if (!isNew) return { ...subject, outcome: 'decide', messageId: 'foundWithout' };
  return answer === 'not-fitted'
    ? { ...subject, outcome: 'fails', messageId: 'newWithout' }
    : { ...subject, outcome: 'not-proven', messageId: 'newUnknown' };
}

/** By its use for a circuit found; by its points for a new one, where they are known. */
function feedsSockets(facts: Facts, circuitId: string): boolean {
  const found = facts.job.circuits.find(({ id }) => id === circuitId);
  if (found) return found.use === 'sockets' || found.use === 'kitchen';
  const points = (facts.shapes.get(circuitId)?.places ?? []).flatMap(
    ({ nodeId }) => facts.plan.pointById.get(nodeId) ?? [],
  );
  return points.length === 0 || points.some(isSocket);
}
