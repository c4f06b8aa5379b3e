import { bindsAsRing } from '../circuit/binds-as.ts';
import type { NetworkEdge } from '../circuit/network.ts';
import { RING_CABLE_A, RING_CABLE_MM2 } from '../circuit/ring-cable-limits.ts';
import type { CircuitShape } from '../circuit/shape.ts';
import { counted } from './counted.ts';
import type { Facts } from './facts.ts';
import { installedCapacity, subjectOfEdge } from './installed-capacity.ts';
import { cablesJudged, shapesJudged } from './judged-cables.ts';
import { shortTogether } from './ring-legs-together.ts';
import { type CheckResult, rule } from './rule.ts';
import { cableOf, circuitName, nameOf } from './wiring.ts';

type Message = 'within' | 'tooThin' | 'tooLittle' | 'grouped' | 'methodUnknown' | 'foundNotSeen';

/** Every leg of a ring is 2.5 mm² or more and carries 20 A as it is installed; legs that only one another crowd are told by RG4. */
export const ringCable = rule<Message>({
  id: 'CA1',
  title: 'Cable of the ring',
  source: 'BS 7671 433.1.204, Tables 4D5 and 4C1; method B by Table 4D2A',
  messages: {
    within: 'The ring cable {from} – {to} carries {actual} A as installed ({how}), {limit} A needed.',
    tooThin: 'The ring cable {from} – {to} is {actual} mm², {limit} mm² needed.',
    tooLittle:
      'The ring cable {from} – {to} carries {actual} A as installed ({how}{along}); {limit} A needed.',
    grouped:
      'The ring cable {from} – {to} shares a tube or channel{along}: {how} leaves {actual} A; {limit} A needed.',
    methodUnknown:
      'How the ring cable {from} – {to} lies is not told everywhere, so it is not proved that it carries {limit} A.',
    foundNotSeen:
      'How the found legs of {circuit} lie was not seen everywhere ({legs}), so {limit} A is not proved for them.',
  },
  remedies: {
    tooThin: 'Cable of 2.5 mm² or more.',
    tooLittle: 'A larger cable{otherWay}.',
    grouped: 'A tube or channel for each leg, or the two legs clipped apart.',
    methodUnknown: 'Look, and say what insulation the cable would touch and how thick it is.',
    foundNotSeen: 'Look where a board or a ceiling is open anyway: how the legs lie, and in what insulation.',
  },
  couldFail: true,
  applies: (facts) => shapesJudged(facts).some(bindsAsRing),
  check: (facts) =>
    cablesJudged(facts, (shape) =>
      bindsAsRing(shape) ? [...ownJudged(facts, shape), ...foundJudged(facts, shape)] : [],
    ),
});

function ownJudged(facts: Facts, shape: CircuitShape): readonly CheckResult<Message>[] {
  const toldTogether = shortTogether(facts, shape.circuitId);
  return shape.ringEdges
    .flatMap((edge) => judged(facts, edge).map((result) => ({ edge, result })))
    .filter(({ edge, result }) => result.messageId !== 'grouped' || !toldTogether.has(edge.id))
    .map(({ result }) => result);
}

function judged(facts: Facts, edge: NetworkEdge): readonly CheckResult<Message>[] {
  if (edge.kind !== 'cable') return [];
  const ends = { from: nameOf(facts, edge.from), to: nameOf(facts, edge.to) };
  const installed = installedCapacity(facts, edge, RING_CABLE_A);
  const areaMm2 = cableOf(facts, edge)?.lineMm2;
  if (areaMm2 !== undefined && areaMm2 < RING_CABLE_MM2) {
    const figures = { actual: areaMm2, limit: RING_CABLE_MM2 };
    return [
      {
        ...subjectOfEdge(edge),
        ...figures,
        unit: 'mm²',
        outcome: 'fails',
        messageId: 'tooThin',
        values: { ...ends, ...figures },
      },
    ];
  }
  const { verdict, izA, how, along, otherWay, groupFactor, isCrowded } = installed;
  const values = { ...ends, limit: RING_CABLE_A, actual: izA ?? 0, how, along, otherWay };
  const head = { ...subjectOfEdge(edge, installed), limit: RING_CABLE_A, unit: 'A', values };
  if (verdict === 'short' && izA !== null)
    return [{ ...head, actual: izA, outcome: 'fails', messageId: groupFactor < 1 ? 'grouped' : 'tooLittle' }];
  // Found legs that cannot be judged are told once a circuit, and those that can need no line of their own.
  if (edge.state === 'found' && !isCrowded) return [];
  if (verdict === 'unknown' || izA === null)
    return [{ ...head, outcome: 'not-proven', messageId: 'methodUnknown' }];
  return [{ ...head, actual: izA, outcome: 'passes', messageId: 'within' }];
}

function foundJudged(facts: Facts, shape: CircuitShape): readonly CheckResult<Message>[] {
  const unseen = shape.ringEdges.filter((edge) => {
    if (edge.kind !== 'cable' || edge.state !== 'found') return false;
    const { verdict, isCrowded } = installedCapacity(facts, edge, RING_CABLE_A);
    return verdict === 'unknown' && !isCrowded;
  });
  if (unseen.length === 0) return [];
  const values = {
    circuit: circuitName(facts, shape.circuitId),
    legs: counted(unseen.length, 'leg'),
    limit: RING_CABLE_A,
  };
  return [
    {
      outcome: 'not-proven',
      messageId: 'foundNotSeen',
      subjectId: shape.circuitId,
      origin: 'found',
      limit: RING_CABLE_A,
      unit: 'A',
      values,
    },
  ];
}
