import type { Worked } from '../connections/worked.ts';
import type { TesterLimits } from './circuit-proof.ts';
import { disconnectionTimeS } from './disconnection-time.ts';
import { insulationLimit, rcdTestLimit } from './expected-limits.ts';
import { circuitRcd } from './rcd-cover.ts';

/** What a tester has to show of a circuit besides its resistances: insulation, the RCD's time, the time to disconnect. */
export function testerLimits(worked: Worked, circuitId: string): TesterLimits {
  const circuit = worked.proposed.circuits.find(({ id }) => id === circuitId);
  const { mA, isDelayed } = circuitRcd(worked, circuitId);
  const { testV, minimumMegohm } = insulationLimit();
  const { testMultiple, minimumMs, maximumMs } = rcdTestLimit(isDelayed ? 'time-delayed' : 'general');
  const { earthing } = worked.job.supply;
  const ratingA = circuit?.device?.ratingA;
  return {
    insulation: { testV, minimumMegohm },
    rcd: mA === null ? null : { testMa: mA * testMultiple, minimumMs, maximumMs },
    disconnectWithinS:
      earthing === undefined || ratingA === undefined
        ? null
        : disconnectionTimeS({ earthing, ratingA, hasSocketOutlets: true }),
  };
}
