import type { NetworkEdge } from '../circuit/network.ts';
import type { NodePlace } from '../circuit/shape.ts';
import { fuseNeedsA } from '../proof/must-carry.ts';
import type { Facts } from './facts.ts';
import { installedCapacity, subjectOfEdge } from './installed-capacity.ts';
import { cablesJudged } from './judged-cables.ts';
import { type CheckResult, rule } from './rule.ts';
import { cableOf, nameOf, wiringOf } from './wiring.ts';

/** Least area that the figures of Appendix 15 show behind a 13 A fuse. */
const SHOWN_MM2 = 1.5;

/** Up to this fuse a thinner cable to a fixed load is accepted. */
const SMALL_FUSE_A = 3;

type Message = 'within' | 'tooLittle' | 'methodUnknown' | 'thin';

/** Behind a fused unit the cable carries at least what the fuse lets through. */
export const cableAfterFuse = rule<Message>({
  id: 'CA2',
  title: 'Cable after a fuse',
  source: 'BS 7671 433.1.1, Table 4D5; Appendix 15 for the least area',
  messages: {
    within: 'The cable to {to} carries {actual} A as installed ({how}) behind a {limit} A fuse.',
    tooLittle:
      'The cable to {to} carries {actual} A as installed ({how}{along}), and the fuse before it lets {limit} A through.',
    methodUnknown:
      'The cable to {to} is not told well enough (size, insulation) to prove that it carries the {limit} A of the fuse.',
    thin: 'The cable to {to} is {actual} mm² behind a {fuse} A fuse: the {carries} A that it carries ({how}) would do, but the figures of Appendix 15 show {limit} mm² and more.',
  },
  remedies: {
    tooLittle: 'A larger cable, or a smaller fuse if the load allows{otherWay}.',
    methodUnknown: 'Look at the cable, and say what insulation it touches.',
    thin: 'Cable of 1.5 mm² or more, or a 3 A fuse where the load is fixed and small.',
  },
  couldFail: true,
  check: (facts) => {
    const { edges } = wiringOf(facts);
    return cablesJudged(facts, ({ places }) =>
      places.flatMap((place) => {
        const edge = edges.get(place.upstreamEdgeId ?? '');
        const behind = place.role === 'behind-fuse' && edge?.kind === 'cable';
        return behind ? [judged(facts, place, edge)] : [];
      }),
    );
  },
});

function judged(facts: Facts, place: NodePlace, edge: NetworkEdge): CheckResult<Message> {
  // The unit knows a fuse that was derived from its load; one that nobody looked at is taken as the largest.
  const unit = facts.things.fusedUnits.find(({ loadNode }) => loadNode === place.behindUnit);
  const knownFuseA = unit?.fuseA ?? place.fuseA;
  const fuseA = fuseNeedsA(knownFuseA);
  const installed = installedCapacity(facts, edge, fuseA);
  const { verdict, izA, how, along, otherWay } = installed;
  const to = nameOf(facts, place.nodeId);
  const values = { to, limit: fuseA, actual: izA ?? 0, how, along, otherWay };
  const subject = subjectOfEdge(edge, installed);
  const head = { ...subject, limit: fuseA, unit: 'A', values };
  if (verdict === 'unknown' || izA === null || (verdict === 'short' && knownFuseA === null))
    return { ...head, outcome: 'not-proven', messageId: 'methodUnknown' };
  if (verdict === 'short') return { ...head, actual: izA, outcome: 'fails', messageId: 'tooLittle' };
  const areaMm2 = cableOf(facts, edge)?.lineMm2 ?? SHOWN_MM2;
  if (areaMm2 >= SHOWN_MM2 || fuseA <= SMALL_FUSE_A)
    return { ...head, actual: izA, outcome: 'passes', messageId: 'within' };
  const thin = { actual: areaMm2, limit: SHOWN_MM2 };
  return {
    ...subject,
    ...thin,
    outcome: 'decide',
    messageId: 'thin',
    unit: 'mm²',
    values: { to, ...thin, how, fuse: fuseA, carries: izA },
  };
}
