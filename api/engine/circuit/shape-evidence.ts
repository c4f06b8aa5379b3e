import type { Job } from '#model/job.ts';
import type { NetworkCircuit } from './network.ts';
import { endToEndBefore } from './readings-before.ts';
import type { CircuitShape, CircuitShapeName } from './shape.ts';

/**
 * More than this between the two ends of a ring conductor is no continuous loop: 10 Ω is over 500 m of
 * 1.0 mm² copper at 18.1 Ω/km (IEC 60228, class 1), and open loops are typed in as some large figure.
 */
const CONTINUOUS_OHM = 10;

/** Line and neutral are of one size and one length: their loops agree within this. Common practice, no source. */
const LINE_NEUTRAL_AGREE_OHM = 0.05;

/** How sure the shape of a circuit is. */
export function shapeEvidence(
  job: Job,
  circuit: NetworkCircuit,
  shape: CircuitShapeName,
): CircuitShape['evidence'] {
  // A new circuit is what the scheme lays: nothing about it is open.
  if (circuit.isNew) return 'recorded';
  const hasLegs = job.legs.some((leg) => leg.circuit === circuit.id);
  const claimsRing = circuit.circuit?.shape === 'ring';
  if (hasLegs && shape !== 'unknown' && circuit.circuit?.certainty?.order === 'measured') return 'proved';
  if ((shape === 'ring' || (shape === 'unknown' && claimsRing)) && hasClosedLoops(job, circuit.id))
    return 'proved';
  if (shape !== 'unknown') return 'recorded';
  return circuit.circuit?.shape === undefined ? 'none' : 'claimed';
}

/** Whether end-to-end readings taken before the work show line, neutral and protective conductor closed. */
function hasClosedLoops(job: Job, circuitId: string): boolean {
  const ohmOf = (loop: 'L' | 'N' | 'cpc'): number | null => endToEndBefore(job, circuitId, loop);
  const [lineOhm, neutralOhm, cpcOhm] = [ohmOf('L'), ohmOf('N'), ohmOf('cpc')];
  if (lineOhm === null || neutralOhm === null || cpcOhm === null) return false;
  if ([lineOhm, neutralOhm, cpcOhm].some((ohm) => ohm > CONTINUOUS_OHM)) return false;
  // A hair more, so that 0.50 against 0.45 agrees whatever the binary fractions are.
  return Math.abs(lineOhm - neutralOhm) <= LINE_NEUTRAL_AGREE_OHM + 1e-9;
}
