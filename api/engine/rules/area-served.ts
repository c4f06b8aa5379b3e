import { bindsAsRing } from '../circuit/binds-as.ts';
import type { CircuitShape } from '../circuit/shape.ts';
import type { Facts } from './facts.ts';
import { type CheckResult, rule } from './rule.ts';
import { circuitName, touchedShapes } from './wiring.ts';

/** Floor area of one circuit by guidance, m². Source: IET On-Site Guide, circuits A1 to A3. */
const RING_M2 = 100;
const RADIAL_32_M2 = 75;
const RADIAL_20_M2 = 50;

type Message = 'within' | 'over' | 'notTold' | 'deviceNotTold';

/** The floor area that one socket circuit serves, by its shape. */
export const areaServed = rule<Message>({
  id: 'RG3',
  title: 'Floor area of one socket circuit',
  source: 'IET On-Site Guide Appendix H, BS 7671 Appendix 15 (guidance; said to be softened since)',
  messages: {
    within: '{circuit} serves {actual} m² of {limit} m².',
    over: '{circuit} serves {actual} m²; guidance has {limit} m² for its kind. Sources differ on radials: an older handbook has 50 and 20 m².',
    notTold: 'The floor area that {circuit} serves was not told; guidance has {limit} m².',
    deviceNotTold: 'The device of {circuit} is not known, so guidance has no area for it.',
  },
  remedies: {
    over: 'A further circuit for a part of the house, or a designer’s view of the loads.',
    notTold: 'Add up the rooms that it serves.',
    deviceNotTold: 'Read the device at the board.',
  },
  couldFail: false,
  applies: (facts) => socketCircuits(facts).length > 0,
  check: (facts) => socketCircuits(facts).map((shape) => judged(facts, shape)),
});

function socketCircuits(facts: Facts): readonly CircuitShape[] {
  return touchedShapes(facts).filter(({ circuitId }) => {
    const use = facts.proposed.circuits.find(({ id }) => id === circuitId)?.circuit?.use;
    return use === 'sockets' || use === 'kitchen';
  });
}

function judged(facts: Facts, shape: CircuitShape): CheckResult<Message> {
  const circuit = circuitName(facts, shape.circuitId);
  const head = { subjectId: shape.circuitId, origin: 'found' as const, unit: 'm²' };
  const limit = facts.limits.areaServedM2 ?? limitM2(facts, shape);
  if (limit === null)
    return { ...head, outcome: 'not-proven', messageId: 'deviceNotTold', values: { circuit } };
  const actual = facts.proposed.circuits.find(({ id }) => id === shape.circuitId)?.circuit?.areaServedM2;
  if (actual === undefined)
    return { ...head, limit, outcome: 'not-proven', messageId: 'notTold', values: { circuit, limit } };
  const values = { circuit, actual, limit };
  return actual > limit
    ? { ...head, actual, limit, outcome: 'decide', messageId: 'over', values }
    : { ...head, actual, limit, outcome: 'passes', messageId: 'within', values };
}

function limitM2(facts: Facts, shape: CircuitShape): number | null {
  if (bindsAsRing(shape)) return RING_M2;
  const device = facts.proposed.circuits.find(({ id }) => id === shape.circuitId)?.device;
  if (!device) return null;
  return device.ratingA >= 30 ? RADIAL_32_M2 : RADIAL_20_M2;
}
