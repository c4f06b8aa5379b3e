import { bindsAsRadial } from '../circuit/binds-as.ts';
import type { NetworkEdge } from '../circuit/network.ts';
import type { CircuitShape } from '../circuit/shape.ts';
import { deviceNeedsA } from '../proof/must-carry.ts';
import { counted } from './counted.ts';
import { deviceMoved } from './device-moved.ts';
import type { Facts } from './facts.ts';
import { installedCapacity, subjectOfEdge } from './installed-capacity.ts';
import { cablesJudged, shapesJudged } from './judged-cables.ts';
import { type CheckResult, rule } from './rule.ts';
import { circuitName, nameOf, wiringOf } from './wiring.ts';

type Message = 'within' | 'tooLittle' | 'methodUnknown' | 'foundNotSeen' | 'deviceUnknown';

/** On a radial every cable up to the first fuse carries what the device lets through; it may branch freely. */
export const radialCable = rule<Message>({
  id: 'CA3',
  title: 'Cable of a radial',
  source: 'BS 7671 433.1.1 and 433.1.202, Table 4D5',
  messages: {
    within: 'The cable to {to} carries {actual} A as installed ({how}), {limit} A needed.',
    tooLittle:
      'The cable to {to} carries {actual} A as installed ({how}{along}), {limit} A needed by the device.',
    methodUnknown:
      'The cable to {to} is not told well enough (size, insulation) to prove that it carries {limit} A.',
    foundNotSeen:
      'How the found legs of {circuit} lie was not seen everywhere ({legs}), so {limit} A is not proved for them.',
    deviceUnknown: 'The device of {circuit} is not known, so its new cables cannot be held against it.',
  },
  remedies: {
    tooLittle: 'A larger cable or a smaller device{otherWay}.',
    methodUnknown: 'Look, and say what insulation the cable would touch and how thick it is.',
    foundNotSeen: 'Look where a board or a ceiling is open anyway: how the legs lie, and in what insulation.',
    deviceUnknown: 'Read the device at the board.',
  },
  couldFail: true,
  applies: (facts) => shapesJudged(facts).some(bindsAsRadial),
  check: (facts) => cablesJudged(facts, (shape) => (bindsAsRadial(shape) ? judged(facts, shape) : [])),
});

function judged(facts: Facts, shape: CircuitShape): readonly CheckResult<Message>[] {
  const { edges } = wiringOf(facts);
  const cables = shape.places.flatMap(({ role, upstreamEdgeId }) => {
    const edge = edges.get(upstreamEdgeId ?? '');
    return role !== 'behind-fuse' && edge?.kind === 'cable' ? [edge] : [];
  });
  const device = facts.proposed.circuits.find(({ id }) => id === shape.circuitId)?.device ?? null;
  const neededA = deviceNeedsA(device);
  if (neededA === null) {
    const origin = cables.some(({ state }) => state === 'new') ? 'scheme' : 'found';
    const values = { circuit: circuitName(facts, shape.circuitId) };
    return [
      { outcome: 'not-proven', messageId: 'deviceUnknown', subjectId: shape.circuitId, origin, values },
    ];
  }
  const isUnseen = (edge: NetworkEdge) => {
    const { verdict, isCrowded } = installedCapacity(facts, edge, neededA);
    return edge.state === 'found' && verdict === 'unknown' && !isCrowded;
  };
  const unseen = cables.filter(isUnseen).length;
  const isRaised = deviceMoved(facts, shape.circuitId) === 'up';
  const judgedCables = cables
    .filter((edge) => !isUnseen(edge))
    .map((edge) => cableJudged(facts, edge, neededA, isRaised));
  if (unseen === 0) return judgedCables;
  const values = {
    circuit: circuitName(facts, shape.circuitId),
    legs: counted(unseen, 'leg'),
    limit: neededA,
  };
  const head = { subjectId: shape.circuitId, origin: 'found', limit: neededA, unit: 'A', values } as const;
  return [...judgedCables, { ...head, outcome: 'not-proven', messageId: 'foundNotSeen' }];
}

function cableJudged(
  facts: Facts,
  edge: NetworkEdge,
  neededA: number,
  isRaised: boolean,
): CheckResult<Message> {
  const installed = installedCapacity(facts, edge, neededA);
  const { verdict, izA, how, along, otherWay } = installed;
  const values = { to: nameOf(facts, edge.to), limit: neededA, actual: izA ?? 0, how, along, otherWay };
  const { subjectId, origin } = subjectOfEdge(edge, installed);
  const head = {
    subjectId,
    origin: isRaised ? ('scheme' as const) : origin,
    limit: neededA,
    unit: 'A',
    values,
  };
  if (verdict === 'unknown' || izA === null)
    return { ...head, outcome: 'not-proven', messageId: 'methodUnknown' };
  return verdict === 'short'
    ? { ...head, actual: izA, outcome: 'fails', messageId: 'tooLittle' }
    : { ...head, actual: izA, outcome: 'passes', messageId: 'within' };
}
