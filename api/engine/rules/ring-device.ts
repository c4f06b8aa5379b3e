import type { Device } from '#model/installation.ts';
import { type CheckResult, rule } from './rule.ts';
import { bindsAsRing, circuitName, touchedShapes } from './wiring.ts';

/** Largest device of a ring final circuit. Source: BS 7671 433.1.204. */
const RING_DEVICE_A = 32;

/** From this rating on the device is the usual one: 30 A for fuses, 32 A for breakers. */
const USUAL_DEVICE_A = 30;

type Message = 'usual' | 'tooLarge' | 'smaller' | 'lessSensitive' | 'unknown';

/** Curves whose magnetic trip wants more fault current than a type B. */
const lessSensitive: ReadonlySet<string | undefined> = new Set(['C', 'D', '2', '3']);

/** A ring is protected by 30 or 32 A. */
export const ringDevice = rule<Message>({
  id: 'DV1',
  title: 'The device of a ring is 30 or 32 A',
  source: 'BS 7671 433.1.204 (BS 3036 named there); curves by 411.4 and Table 41.3',
  messages: {
    usual: 'The device of {circuit} is {actual} A, {limit} A the largest for a ring.',
    tooLarge: 'The device of {circuit} is {actual} A; {limit} A is the largest for a ring in 2.5 mm².',
    smaller:
      'The device of {circuit} is {actual} A, less than the usual {limit} A: allowed, but more load on it may make it operate.',
    lessSensitive:
      'The device of {circuit} is of type {curve}: a Zs question, since it needs more fault current than type B.',
    unknown: 'The device of {circuit} is not known; {limit} A is the largest for a ring.',
  },
  remedies: {
    tooLarge: 'A device of 32 A or less before anything is added.',
    smaller: 'Ask why it was fitted, and what is used together.',
    lessSensitive: 'Measure Zs at the furthest point and hold it against the table of that device.',
    unknown: 'Read the device at the board.',
  },
  couldFail: true,
  applies: (facts) => touchedShapes(facts).some(bindsAsRing),
  check: (facts) =>
    touchedShapes(facts)
      .filter(bindsAsRing)
      .flatMap(({ circuitId }): readonly CheckResult<Message>[] => {
        const circuit = circuitName(facts, circuitId);
        const known = facts.proposed.circuits.find(({ id }) => id === circuitId);
        if (known?.device) return judged(circuitId, circuit, known.device);
        const values = { circuit, limit: RING_DEVICE_A };
        const head = { subjectId: circuitId, limit: RING_DEVICE_A, unit: 'A', values } as const;
        // The scheme joins on to what nobody looked at, so it is the scheme that stays unproved.
        const origin = facts.scheme === null ? 'found' : 'scheme';
        return [{ ...head, outcome: 'not-proven', messageId: 'unknown', origin }];
      }),
});

function judged(circuitId: string, circuit: string, device: Device): readonly CheckResult<Message>[] {
  const actual = device.ratingA;
  const head = { subjectId: circuitId, origin: 'found', actual, unit: 'A' } as const;
  const against = (limit: number) => ({ limit, values: { circuit, actual, limit } });
  const curve = device.curve ?? '';
  const byCurve: readonly CheckResult<Message>[] = lessSensitive.has(device.curve)
    ? [
        {
          subjectId: circuitId,
          origin: 'found',
          outcome: 'advice',
          messageId: 'lessSensitive',
          actual: curve,
          limit: 'B',
          values: { circuit, curve },
        },
      ]
    : [];
  if (actual > RING_DEVICE_A)
    return [{ ...head, ...against(RING_DEVICE_A), outcome: 'fails', messageId: 'tooLarge' }, ...byCurve];
  if (actual < USUAL_DEVICE_A)
    return [{ ...head, ...against(USUAL_DEVICE_A), outcome: 'advice', messageId: 'smaller' }, ...byCurve];
  return [{ ...head, ...against(RING_DEVICE_A), outcome: 'passes', messageId: 'usual' }, ...byCurve];
}
