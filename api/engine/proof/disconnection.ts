import type { Worked } from '../connections/worked.ts';
import type { DisconnectionLimit } from './circuit-proof.ts';
import { coldLimit, loopLimit, rcdLoopLimitOhm } from './loop-limit.ts';
import { circuitRcd } from './rcd-cover.ts';

/** How a cold reading is compared with a limit that holds for warm conductors. */
export type ColdRule = DisconnectionLimit['coldRule'];

/**
 * What disconnects a circuit in a fault to earth, and the loop impedance that this allows: the overcurrent device in TN,
 * the RCD on TT (BS 7671 411.4, 411.5).
 */
export function disconnectionLimit(
  worked: Worked,
  circuitId: string,
  coldRule: ColdRule,
): DisconnectionLimit {
  const device = worked.proposed.circuits.find(({ id }) => id === circuitId)?.device ?? null;
  const rcd = circuitRcd(worked, circuitId);
  const rcdOhm = rcd.mA === null ? null : rcdLoopLimitOhm(rcd.mA);
  const byDevice = device === null ? null : loopLimit(device);
  const isTt = worked.job.supply.earthing === 'TT';
  const maximumOhm = isTt ? rcdOhm : (byDevice?.maximumOhm ?? null);
  const words = isTt
    ? rcdOhm === null
      ? 'TT without an RCD that is known of'
      : `RCD of ${rcd.mA} mA: 50 V ÷ ${rcd.mA} mA`
    : (byDevice?.by ?? 'The device is not known');
  return {
    by: maximumOhm === null ? null : isTt ? 'rcd' : 'overcurrent',
    maximumOhm,
    // On TT the loop is the electrode's: its warmth is no matter.
    coldOhm: maximumOhm === null ? null : isTt ? maximumOhm : coldLimit(maximumOhm, coldRule),
    coldRule,
    rcdOhm,
    words,
  };
}
