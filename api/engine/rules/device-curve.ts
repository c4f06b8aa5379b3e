import { fitsDevice } from './fitted-devices.ts';
import { type CheckResult, rule } from './rule.ts';
import { circuitName, touchedShapes } from './wiring.ts';

/** Types whose magnetic trip wants more fault current than a type B. Source: BS EN 60898; BS 3871 for 2 and 3. */
const lessSensitive: ReadonlySet<string> = new Set(['C', 'D', '2', '3']);

/** Breakers of the slower types ask more of the fault loop. */
export const deviceCurve = rule({
  id: 'DV4',
  title: 'Breaker type and fault loop',
  source: 'BS 7671 411.4, Table 41.3',
  messages: {
    lessSensitive:
      'The device of {circuit} is of type {actual}: a Zs question, since it needs more fault current than type {limit}.',
  },
  remedies: {
    lessSensitive: 'Measure Zs at the furthest point and hold it against the table of that device.',
  },
  couldFail: false,
  check: (facts) =>
    touchedShapes(facts).flatMap(({ circuitId }): readonly CheckResult<'lessSensitive'>[] => {
      const curve = facts.proposed.circuits.find(({ id }) => id === circuitId)?.device?.curve;
      if (curve === undefined || !lessSensitive.has(curve)) return [];
      const values = { circuit: circuitName(facts, circuitId), actual: curve, limit: 'B' };
      const origin = fitsDevice(facts, circuitId) ? 'scheme' : 'found';
      const head = { subjectId: circuitId, origin, actual: curve, limit: 'B', values } as const;
      return [{ ...head, outcome: 'advice', messageId: 'lessSensitive' }];
    }),
});
