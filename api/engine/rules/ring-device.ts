import { bindsAsRing } from '../circuit/binds-as.ts';
import type { Facts } from './facts.ts';
import { fitsDevice } from './fitted-devices.ts';
import { type CheckResult, rule } from './rule.ts';
import { circuitName, touchedShapes } from './wiring.ts';

/** Largest device of a ring final circuit. Source: BS 7671 433.1.204. */
const RING_DEVICE_A = 32;

/** From this rating on the device is the usual one: 30 A for fuses, 32 A for breakers. */
const USUAL_DEVICE_A = 30;

type Message = 'usual' | 'tooLarge' | 'smaller' | 'unknown';

/** A ring is protected by 30 or 32 A: by the device that is there when the scheme is done. */
export const ringDevice = rule<Message>({
  id: 'DV1',
  title: 'Protective device of the ring',
  source: 'BS 7671 433.1.204 (BS 3036 named there)',
  messages: {
    usual: 'The device of {circuit} is {actual} A, {limit} A the largest for a ring.',
    tooLarge: 'The device of {circuit} is {actual} A; {limit} A is the largest for a ring in 2.5 mm².',
    smaller:
      'The device of {circuit} is {actual} A, less than the usual {limit} A: allowed, but more load on it may make it operate.',
    unknown: 'The device of {circuit} is not known; {limit} A is the largest for a ring.',
  },
  remedies: {
    tooLarge: 'A device of 32 A or less before anything is added.',
    smaller: 'Ask why it was fitted, and what is used together.',
    unknown: 'Read the device at the board.',
  },
  couldFail: true,
  applies: (facts) => touchedShapes(facts).some(bindsAsRing),
  check: (facts) =>
    touchedShapes(facts)
      .filter(bindsAsRing)
      .map(({ circuitId }) => judged(facts, circuitId)),
});

function judged(facts: Facts, circuitId: string): CheckResult<Message> {
  const circuit = circuitName(facts, circuitId);
  const device = facts.proposed.circuits.find(({ id }) => id === circuitId)?.device;
  const against = (limit: number) => ({ limit, unit: 'A', values: { circuit, limit } });
  if (!device) {
    // The scheme joins on to what nobody looked at, so it is the scheme that stays unproved.
    const origin = facts.scheme === null ? 'found' : 'scheme';
    const head = { subjectId: circuitId, ...against(RING_DEVICE_A) };
    return { ...head, outcome: 'not-proven', messageId: 'unknown', origin };
  }
  const actual = device.ratingA;
  const origin = fitsDevice(facts, circuitId) ? 'scheme' : 'found';
  const head = { subjectId: circuitId, origin, actual } as const;
  if (actual > RING_DEVICE_A)
    return { ...head, ...against(RING_DEVICE_A), outcome: 'fails', messageId: 'tooLarge' };
  if (actual < USUAL_DEVICE_A)
    return { ...head, ...against(USUAL_DEVICE_A), outcome: 'advice', messageId: 'smaller' };
  return { ...head, ...against(RING_DEVICE_A), outcome: 'passes', messageId: 'usual' };
}
