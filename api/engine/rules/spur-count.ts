import { bindsAsRing } from '../circuit/binds-as.ts';
import type { CircuitShape } from '../circuit/shape.ts';
import { spurLoads } from '../proof/spur-load.ts';
import type { Facts } from './facts.ts';
import { type CheckResult, rule } from './rule.ts';
import { circuitName, pointOfNode, touchedShapes, wiringOf } from './wiring.ts';

type Message = 'within' | 'within-twice' | 'over' | 'over-firm' | 'notTold';

/** Unfused spurs are no more than the points and fixed items in the ring itself. */
export const spurCount = rule<Message>({
  id: 'SP4',
  title: 'Number of unfused spurs',
  source: 'IET On-Site Guide 7.2.2 and BS 7671 Appendix 15 (guidance)',
  messages: {
    within: '{circuit} has {actual} unfused spurs, and {limit} points and fixed items in the ring.',
    'within-twice':
      '{circuit} has {actual} unfused spurs and {limit} points in the ring. Sources differ: counted by the plate that is too many; counted by the outlet, a twin twice, it would be within {outlets}. The stricter count is shown.',
    over: '{circuit} has {actual} unfused spurs, and {limit} points in the ring ({outlets} if a twin counts twice, as one source has it).',
    'over-firm': '{circuit} has {actual} unfused spurs; the firm allows {limit}.',
    notTold:
      'The points in the ring of {circuit} are not told, so its unfused spurs cannot be set against them.',
  },
  remedies: {
    'within-twice': 'Carry the ring through a new point instead of a spur, or decide and write down why.',
    over: 'Carry the ring through new points instead of spurs, or decide and write down why.',
    'over-firm': 'Carry the ring through new points instead of spurs.',
    notTold: 'Trace the ring.',
  },
  couldFail: false,
  applies: (facts) => touchedShapes(facts).some(bindsAsRing),
  check: (facts) =>
    touchedShapes(facts)
      .filter(bindsAsRing)
      .map((shape) => judged(facts, shape)),
});

function judged(facts: Facts, shape: CircuitShape): CheckResult<Message> {
  // A fused spur is never in the count: guidance puts no number on those.
  const spurs = spurLoads(facts, shape.circuitId).filter(({ accessories }) =>
    accessories.some(({ kind }) => kind !== 'fused-unit'),
  );
  const origin = spurs.some(({ spur }) => spur.isNew) ? ('scheme' as const) : ('found' as const);
  const circuit = circuitName(facts, shape.circuitId);
  const head = { subjectId: shape.circuitId, origin };
  if (shape.ringNodes.length === 0)
    return { ...head, outcome: 'not-proven', messageId: 'notTold', values: { circuit } };
  const { points, outlets } = ringPoints(facts, shape);
  const limit = facts.limits.maximumSpurs ?? points;
  const actual = spurs.length;
  const figures = { actual, limit, values: { circuit, actual, limit, outlets } };
  if (actual <= limit) return { ...head, ...figures, outcome: 'passes', messageId: 'within' };
  if (facts.limits.maximumSpurs !== undefined)
    return { ...head, ...figures, outcome: 'decide', messageId: 'over-firm' };
  return { ...head, ...figures, outcome: 'decide', messageId: actual <= outlets ? 'within-twice' : 'over' };
}

/** Plates in the ring, and outlets where a twin counts as two; joints are no points. */
function ringPoints(facts: Facts, shape: CircuitShape): { points: number; outlets: number } {
  const { nodes } = wiringOf(facts);
  const kinds = shape.ringNodes.flatMap((nodeId) => {
    const node = nodes.get(nodeId);
    const kind = pointOfNode(facts, node)?.kind;
    return node?.kind !== 'terminals' || kind === 'joint' || kind === 'blank' ? [] : [kind];
  });
  return {
    points: kinds.length,
    outlets: kinds.length + kinds.filter((kind) => kind === 'socket-twin').length,
  };
}
