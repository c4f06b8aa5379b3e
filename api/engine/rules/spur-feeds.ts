import type { CircuitShape, UnfusedSpur } from '../circuit/shape.ts';
import { PLUG_A, type SpurAccessory, type SpurLoad, spurLoads } from '../proof/spur-load.ts';
import type { Facts } from './facts.ts';
import { type CheckResult, rule } from './rule.ts';
import { bindsAsRing, circuitName, isUntold, nameOf, rounded, touchedShapes, wiringOf } from './wiring.ts';

/** What one twin outlet can draw through two plugs, and what an unfused spur may feed: 26 A and no more. */
const TWIN_OUTLET_A = 2 * PLUG_A;

type Message = 'one' | 'several' | 'several-twins' | 'foundSpur' | 'shapeUntold';

/** An unfused spur of a ring feeds one accessory: a single or twin outlet, or one fixed item. */
export const spurFeeds = rule<Message>({
  id: 'SP1',
  title: 'An unfused spur feeds one accessory only',
  source: 'BS 7671 433.1.204 read with Appendix 15; the amperes are common practice',
  messages: {
    one: '{name} alone is on its unfused spur: {actual} A is the most it can draw, {limit} A what one twin outlet may.',
    several:
      'The unfused spur from {from} feeds {count} accessories ({names}). Together {actual} A could be drawn through it; one twin outlet can draw two 13 A plugs, {limit} A, and no more is allowed for.',
    'several-twins':
      'The unfused spur from {from} feeds {count} twin outlets ({names}): {actual} A could be drawn through it. One twin outlet can draw two 13 A plugs, {limit} A, and no more is allowed; a second one is too many.',
    foundSpur:
      '{from} was found to be on a spur itself, so the new cable puts {count} accessories ({names}) on one unfused spur: up to {actual} A, where {limit} A is allowed for.',
    shapeUntold:
      'Nobody has told whether {circuit} is a ring or a radial, so it cannot be judged what a spur of it may feed.',
  },
  remedies: {
    several:
      'A fused unit before the first outlet of the branch, or the ring carried out and back through the new points.',
    'several-twins':
      'A fused unit before the first outlet of the branch, or the ring carried out and back through the new points.',
    foundSpur:
      'Take the new cable from a point that is in the ring, or put a fused unit before the first outlet.',
    shapeUntold: 'Trace the circuit, or take the end-to-end readings at the board.',
  },
  couldFail: true,
  applies: (facts) => touchedShapes(facts).some((shape) => bindsAsRing(shape) || isUntold(shape)),
  check: (facts) =>
    touchedShapes(facts).flatMap((shape): readonly CheckResult<Message>[] => {
      if (bindsAsRing(shape)) return spurLoads(facts, shape.circuitId).flatMap((load) => judged(facts, load));
      if (!isJoinedOnUntold(facts, shape)) return [];
      return [
        {
          outcome: 'not-proven',
          messageId: 'shapeUntold',
          subjectId: shape.circuitId,
          origin: 'scheme',
          values: { circuit: circuitName(facts, shape.circuitId) },
        },
      ];
    }),
});

function judged(facts: Facts, { spur, accessories, possibleA }: SpurLoad): readonly CheckResult<Message>[] {
  const [first, second] = accessories;
  if (first === undefined) return [];
  const names = accessories.map(({ nodeId }) => nameOf(facts, nodeId)).join(', ');
  const actual = rounded(possibleA);
  const head = {
    origin: accessories.some(({ isNew }) => isNew) ? ('scheme' as const) : ('found' as const),
    actual,
    limit: TWIN_OUTLET_A,
    unit: 'A',
    values: {
      from: nameOf(facts, spur.rootNode),
      names,
      name: names,
      actual,
      limit: TWIN_OUTLET_A,
      count: accessories.length,
    },
  };
  if (second === undefined)
    return [{ ...head, outcome: 'passes', messageId: 'one', subjectId: first.nodeId }];
  return [
    { ...head, outcome: 'fails', messageId: wordsFor(facts, spur, accessories), subjectId: second.nodeId },
  ];
}

function wordsFor(facts: Facts, spur: UnfusedSpur, accessories: readonly SpurAccessory[]): Message {
  const root = facts.shapes.get(spur.circuitId)?.places.find(({ nodeId }) => nodeId === spur.rootNode);
  if (root?.role === 'claimed-spur') return 'foundSpur';
  return accessories.every(({ kind }) => kind === 'socket-twin') ? 'several-twins' : 'several';
}

/** Whether a circuit of which nobody told the shape gets new cable before any fuse. */
function isJoinedOnUntold(facts: Facts, shape: CircuitShape): boolean {
  const { edges } = wiringOf(facts);
  return (
    isUntold(shape) &&
    shape.places.some(
      ({ role, upstreamEdgeId }) =>
        role !== 'behind-fuse' && edges.get(upstreamEdgeId ?? '')?.state === 'new',
    )
  );
}
