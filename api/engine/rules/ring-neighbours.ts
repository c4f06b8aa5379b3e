import type { End } from '#model/cable.ts';
import type { Leg, Point } from '#model/installation.ts';
import type { Connection } from '#model/scheme.ts';
import { openedCircuit } from '../circuit/opened-circuit.ts';
import { isGuess } from '../plan/is-guess.ts';
import type { Facts } from './facts.ts';
import { type CheckResult, rule } from './rule.ts';
import { circuitName, nameOf } from './wiring.ts';

type RingExtension = Extract<Connection, { kind: 'ring-extension' }>;
type Message =
  | 'joined'
  | 'noLeg'
  | 'orderAssumed'
  | 'offRing'
  | 'radialJoined'
  | 'radialNoLeg'
  | 'radialOrderAssumed';

/** A circuit is opened where it runs: between two ends that one of its cables is known to join. A radial may end at either. */
export const ringNeighbours = rule<Message>({
  id: 'RG5',
  title: 'Opening of the circuit',
  source: 'common practice; BS 7671 433.1.204, 643.2',
  messages: {
    joined: 'A cable of the ring is recorded between {one} and {other}.',
    noLeg:
      'No cable is recorded between {one} and {other}: that they follow each other on the ring of {circuit} is a guess. If they do not, opening it there leaves the ring broken, or makes a figure of eight.',
    orderAssumed:
      'The order of the points of {circuit} is assumed, and so is the cable between {one} and {other}. If they do not follow each other, opening the ring there leaves it broken, or makes a figure of eight.',
    radialJoined: 'A cable of {circuit} is recorded between {one} and {other}.',
    radialNoLeg:
      'No cable is recorded between {one} and {other}: that one feeds the other on {circuit} is a guess. If it does not, no cable can be opened there.',
    radialOrderAssumed:
      'The order of the points of {circuit} is assumed, and so is the cable between {one} and {other}. If one does not feed the other, no cable can be opened there.',
    offRing: 'At {point} {seen} found: it is on no ring that could be opened there.',
  },
  remedies: {
    noLeg:
      'Dead and proved so, open the plates of both, part the cores, and find the pair that has continuity between the two and to nothing else; then record that cable, or choose the two that have one.',
    orderAssumed:
      'Dead and proved so, open the plates of both, part the cores, and find the pair that has continuity between the two and to nothing else; then say of the order that it was seen or measured.',
    radialNoLeg:
      'Dead and proved so, part the cores at one of the two, and find the cable that has continuity to the other; then record it, or choose two that have one.',
    radialOrderAssumed:
      'Dead and proved so, part the cores at one of the two, and find the cable that has continuity to the other; then say of the order that it was seen or measured.',
    offRing: 'Choose two points between which the ring runs.',
  },
  couldFail: true,
  applies: (facts) => extensionsOf(facts).length > 0,
  check: (facts) =>
    extensionsOf(facts).map((extension) => ({
      subjectId: extension.id,
      origin: 'scheme',
      ...judged(facts, extension),
    })),
});

/** The extensions of the scheme; those that cannot be made as written are left to the rule that says so. */
function extensionsOf({ scheme, proposed }: Facts): readonly RingExtension[] {
  const faulty = new Set(proposed.problems.map(({ connectionId }) => connectionId));
  return (scheme?.connections ?? []).flatMap((connection) =>
    connection.kind === 'ring-extension' && !faulty.has(connection.id) ? [connection] : [],
  );
}

function judged(
  facts: Facts,
  { circuit, between, leg }: RingExtension,
): Omit<CheckResult<Message>, 'subjectId' | 'origin'> {
  const [one, other] = between.map((end) => nameOf(facts, nodeIdOf(end)));
  const values = { circuit: circuitName(facts, circuit), one: one ?? '', other: other ?? '' };
  const isRing = openedCircuit(facts.foundShapes, circuit) === 'ring';
  if (facts.job.legs.some((each) => each.id === leg || isBetween(each, circuit, between))) {
    const order = facts.job.circuits.find(({ id }) => id === circuit)?.certainty?.order;
    return isGuess(order)
      ? { outcome: 'not-proven', messageId: isRing ? 'orderAssumed' : 'radialOrderAssumed', values }
      : { outcome: 'passes', messageId: isRing ? 'joined' : 'radialJoined', values };
  }
  if (!isRing) return { outcome: 'not-proven', messageId: 'radialNoLeg', values };
  for (const end of between) {
    const point = 'point' in end ? facts.plan.pointById.get(end.point) : undefined;
    const seen = point === undefined ? null : seenOffRing(point);
    if (point !== undefined && seen !== null)
      return { outcome: 'fails', messageId: 'offRing', values: { point: point.label, seen } };
  }
  return { outcome: 'not-proven', messageId: 'noLeg', values };
}

const nodeIdOf = (end: End): string => ('origin' in end ? end.origin : end.point);

function isBetween(
  { circuit, from, to }: Leg,
  circuitId: string,
  [one, other]: readonly [End, End],
): boolean {
  const [a, b, x, y] = [from, to, one, other].map(nodeIdOf);
  return circuit === circuitId && ((a === x && b === y) || (a === y && b === x));
}

/** What was seen behind a plate and cannot be on a ring, in words; null where nothing of the kind was. */
function seenOffRing({ asFound, certainty }: Point): string | null {
  const isSeen = (fact: 'role' | 'cablesSeen'): boolean => !isGuess(certainty?.[fact] ?? certainty?.asFound);
  if (asFound?.role === 'spur' && isSeen('role')) return 'a spur was';
  return asFound?.cablesSeen === 1 && isSeen('cablesSeen') ? 'only one cable was' : null;
}
