import { bindsAsRing } from '../circuit/binds-as.ts';
import { type SpurAccessory, type SpurLoad, spurLoads } from '../proof/spur-load.ts';
import type { Facts } from './facts.ts';
import { type CheckResult, rule } from './rule.ts';
import { nameOf, touchedShapes, wiringOf } from './wiring.ts';

type Message = 'none' | 'spurFromSpur' | 'branches' | 'fromFoundSpur' | 'ringNotTold';

/** No unfused spur starts from an unfused spur, neither at an accessory of it nor at a joint in it. */
export const spurFromSpur = rule<Message>({
  id: 'SP3',
  title: 'Spur from an unfused spur',
  source: 'BS 7671 433.1.204 read with Appendix 15',
  messages: {
    none: 'The spur to {to} starts from the ring, at {from}.',
    spurFromSpur: 'The cable to {to} starts from {from}, which is on an unfused spur itself.',
    branches: 'The unfused spur from {from} branches at a joint, so {to} is on a spur from a spur.',
    fromFoundSpur: '{from} was found to be on a spur, so the cable to {to} is a spur from a spur.',
    ringNotTold:
      'The legs of the circuit are not told, so {from} may be on a spur itself; then the cable to {to} would be a spur from a spur.',
  },
  remedies: {
    spurFromSpur:
      'Start from a point in the ring, close the old spur into the ring, or put a fused unit before its first outlet.',
    branches: 'Start the second branch from the ring, or put a fused unit before the branch.',
    fromFoundSpur: 'Start from a point in the ring, or put a fused unit before the first outlet of the spur.',
    ringNotTold: 'Prove by readings at the linked ends that the point is in the ring before joining on.',
  },
  couldFail: true,
  applies: (facts) => touchedShapes(facts).some(bindsAsRing),
  check: (facts) =>
    touchedShapes(facts)
      .filter(bindsAsRing)
      .flatMap(({ circuitId }) => {
        const before = wrongBefore(facts, circuitId);
        return spurLoads(facts, circuitId).flatMap((load) => judged(facts, load, before));
      }),
});

/** Accessories that were on a spur from a spur before the scheme did anything. */
function wrongBefore(facts: Facts, circuitId: string): ReadonlySet<string> {
  const found = spurLoads({ ...facts, proposed: facts.found, shapes: facts.foundShapes }, circuitId);
  return new Set(found.flatMap(({ accessories }) => accessories.slice(1).map(({ nodeId }) => nodeId)));
}

function judged(facts: Facts, load: SpurLoad, before: ReadonlySet<string>): readonly CheckResult<Message>[] {
  const { places } = wiringOf(facts);
  const root = load.spur.rootNode;
  // A point that the survey calls a spur is listed on the spur that starts from it.
  const [first, second] = load.accessories.filter(({ nodeId }) => nodeId !== root);
  if (first === undefined) return [];
  // What was wrong already is not the scheme's doing, even where a new point takes a wrong one's place.
  const originOfFault = ({ nodeId, pointId, isNew }: SpurAccessory) => {
    const replaces = pointId === null ? undefined : facts.plan.pointById.get(pointId)?.replaces;
    const wasWrong = (!isNew && before.has(nodeId)) || (replaces !== undefined && before.has(replaces));
    return wasWrong ? ('found' as const) : ('scheme' as const);
  };
  const origin = load.accessories.some(({ isNew }) => isNew) ? ('scheme' as const) : ('found' as const);
  const values = { from: nameOf(facts, root), to: nameOf(facts, first.nodeId) };
  const role = places.get(root)?.role;
  if (role === 'claimed-spur')
    return [
      {
        outcome: 'fails',
        messageId: 'fromFoundSpur',
        subjectId: first.nodeId,
        origin: originOfFault(first),
        values,
      },
    ];
  if (second === undefined) {
    const untold = role === 'claimed-ring' && load.spur.isNew;
    return [
      untold
        ? { outcome: 'not-proven', messageId: 'ringNotTold', subjectId: first.nodeId, origin, values }
        : { outcome: 'passes', messageId: 'none', subjectId: first.nodeId, origin, values },
    ];
  }
  return load.accessories.slice(1).map((accessory) => {
    const previous = accessoryBefore(facts, load, accessory.nodeId);
    return {
      outcome: 'fails',
      messageId: previous === null ? 'branches' : 'spurFromSpur',
      subjectId: accessory.nodeId,
      origin: originOfFault(accessory),
      values: { from: nameOf(facts, previous ?? root), to: nameOf(facts, accessory.nodeId) },
    };
  });
}

/** The nearest accessory of the same spur between a node and the ring; null where only joints are. */
function accessoryBefore(facts: Facts, load: SpurLoad, nodeId: string): string | null {
  const { places } = wiringOf(facts);
  const accessories = new Set(load.accessories.map((accessory) => accessory.nodeId));
  const seen = new Set<string>([nodeId]);
  let at = places.get(nodeId)?.upstreamNode ?? null;
  while (at !== null && at !== load.spur.rootNode && !seen.has(at)) {
    if (accessories.has(at)) return at;
    seen.add(at);
    at = places.get(at)?.upstreamNode ?? null;
  }
  return null;
}
