import { bindsAsRing } from '../circuit/binds-as.ts';
import type { CircuitShape, UnfusedSpur } from '../circuit/shape.ts';
import { PLUG_A, type SpurAccessory, type SpurLoad, spurLoads } from '../proof/spur-load.ts';
import type { Facts } from './facts.ts';
import { type CheckResult, rule } from './rule.ts';
import { circuitName, isUntold, nameOf, rounded, touchedShapes, wiringOf } from './wiring.ts';

/** What one twin outlet can draw through two plugs, and what an unfused spur may feed: 26 A and no more. */
const TWIN_OUTLET_A = 2 * PLUG_A;

/** Accessories that an unfused spur may feed. */
const ONE = 1;

type Message =
  | 'one'
  | 'fixedItem'
  | 'fixedOver'
  | 'several'
  | 'several-few'
  | 'several-twins'
  | 'foundSpur'
  | 'shapeUntold';

/** An unfused spur of a ring feeds one accessory: a single or twin outlet, or one fixed item. */
export const spurFeeds = rule<Message>({
  id: 'SP1',
  title: 'Accessories on an unfused spur',
  source:
    'BS 7671 433.1.204 read with Appendix 15; a fixed item’s own fuse by the IET On-Site Guide, Appendix H (guidance); the amperes are common practice',
  messages: {
    one: '{name} alone is on its unfused spur: {actual} A is the most it can draw, {limit} A what one twin outlet may.',
    fixedItem:
      '{name} is a fixed item alone on its unfused spur ({load}). Such an item wants a fuse of its own, {limit} A at the most, and a switch; that is guidance.',
    fixedOver:
      '{name} is a fixed item on an unfused spur and draws {actual} A. Guidance wants a fuse of its own before such an item, {limit} A at the most (older books also a breaker of 16 A): it is no load for a spur, and a designer must decide.',
    'several-few':
      'The unfused spur from {from} feeds {actual} accessories ({names}), and {limit} may be on it. They can draw {amps} A, no more than one twin outlet, but it is their number that counts.',
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
    fixedItem: 'A fused unit before the item, with the fuse that its maker asks for.',
    fixedOver: 'A circuit of its own from the board.',
    'several-few':
      'A fused unit before the first outlet of the branch, or the ring carried out and back through the new points.',
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

function judged(facts: Facts, load: SpurLoad): readonly CheckResult<Message>[] {
  const { spur, accessories, possibleA } = load;
  const [first, second] = accessories;
  if (first === undefined) return [];
  const origin = accessories.some(({ isNew }) => isNew) ? ('scheme' as const) : ('found' as const);
  const names = accessories.map(({ nodeId }) => nameOf(facts, nodeId)).join(', ');
  if (second === undefined && first.isFixedItem) return [fixedItemJudged(first, names, origin)];
  const actual = rounded(possibleA);
  const values = {
    from: nameOf(facts, spur.rootNode),
    names,
    name: names,
    actual,
    amps: actual,
    limit: TWIN_OUTLET_A,
    count: accessories.length,
  };
  const head = { origin, actual, limit: TWIN_OUTLET_A, unit: 'A', values };
  if (second === undefined)
    return [{ ...head, outcome: 'passes', messageId: 'one', subjectId: first.nodeId }];
  const messageId = wordsFor(facts, spur, accessories);
  // Of what the scheme adds to a spur that had its accessory, the first new one is what is too many.
  const subjectId = (accessories.slice(1).find(({ isNew }) => isNew) ?? second).nodeId;
  const fails = { ...head, outcome: 'fails', messageId, subjectId } as const;
  if (messageId === 'foundSpur' || possibleA > TWIN_OUTLET_A) return [fails];
  // The amperes alone would do, so the finding counts what the rule counts.
  const few = { actual: accessories.length, limit: ONE };
  return [{ ...fails, ...few, messageId: 'several-few', unit: 'accessories', values: { ...values, ...few } }];
}

/** One fixed item is what a spur may feed; that it has no fuse of its own is told, and above 13 A decided. */
function fixedItemJudged(
  { nodeId, loadW, possibleA }: SpurAccessory,
  name: string,
  origin: 'scheme' | 'found',
): CheckResult<Message> {
  const head = { subjectId: nodeId, origin, limit: PLUG_A, unit: 'A' } as const;
  if (loadW === null) {
    const values = { name, limit: PLUG_A, load: 'its load is not named' };
    return { ...head, outcome: 'advice', messageId: 'fixedItem', values };
  }
  const actual = rounded(possibleA);
  const values = { name, actual, limit: PLUG_A, load: `${loadW} W, ${actual} A` };
  return possibleA > PLUG_A
    ? { ...head, actual, outcome: 'decide', messageId: 'fixedOver', values }
    : { ...head, actual, outcome: 'advice', messageId: 'fixedItem', values };
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
