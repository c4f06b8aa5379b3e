import { unitOfLoadSide } from '../../circuit/load-side.ts';
import type { Worked } from '../../connections/worked.ts';
import { ADDITIONAL_PROTECTION_MA, hasOwnRcd } from '../../proof/rcd-cover.ts';
import { atPoint, type Listing, ofCircuit, type Wanted } from './listing.ts';
import type { ReadingAsked, TestLimit } from './sheet-test.ts';
import { ownRcdLimit, rcdTestLimitOf } from './test-limits.ts';

/** Points and units of a circuit that have an RCD of their own, in its order from the board. */
export const ownRcdsOf = ({ worked, points }: Pick<Listing, 'worked' | 'points'>): readonly string[] =>
  points.filter((point) => hasOwnRcd(worked, unitOfLoadSide(point)));

const opens: TestLimit = { bound: 'right', words: 'BS 7671 643.10' };

/** The time or the button of the circuit's RCD, then of every outlet and unit that has one of its own. */
export function rcdTests(listing: Listing, group: 'rcd' | 'rcd-button'): readonly Wanted[] {
  const isTime = group === 'rcd';
  const asked = (mA: number): ReadingAsked => (isTime ? { kind: 'rcd', mA } : { kind: 'rcd-button' });
  const { rcd } = listing.proof.tests;
  const own = ownRcdsOf(listing).map(
    (point): Wanted => ({
      ...atPoint(listing, group, point),
      unit: isTime ? 'ms' : null,
      limit: isTime ? ownRcdLimit() : opens,
      asked: asked(ADDITIONAL_PROTECTION_MA),
    }),
  );
  if (rcd === null) return own;
  return [
    {
      ...ofCircuit(listing, group),
      which: group,
      mark: isTime ? `opens at ${rcd.testMa} mA` : 'opens by its button',
      unit: isTime ? 'ms' : null,
      limit: isTime ? rcdTestLimitOf(listing.proof) : opens,
      asked: asked(rcd.testMa),
    },
    ...own,
  ];
}

/** The button of a circuit's arc fault device, where the survey says that socket circuits have one. Source: BS 7671 643.10, from memory. */
export function arcFaultTests(listing: Listing): readonly Wanted[] {
  if (!hasArcFaultDevice(listing)) return [];
  const group = 'afdd-button';
  return [
    {
      ...ofCircuit(listing, group),
      which: group,
      mark: 'opens by its button',
      unit: null,
      limit: opens,
      asked: { kind: group },
    },
  ];
}

/** Whether the survey says that socket circuits have arc fault detection, and this is one. */
function hasArcFaultDevice({ worked, proof, points }: Listing): boolean {
  const answer = worked.job.answers.find(({ question }) => question === 'arc-fault-protection');
  if (answer?.value !== 'fitted' || answer.certainty === 'unknown') return false;
  const use = worked.job.circuits.find(({ id }) => id === proof.circuit)?.use;
  return use === 'sockets' || use === 'kitchen' || points.some((id) => isOutlet(worked, id));
}

const isOutlet = ({ plan }: Worked, id: string): boolean =>
  plan.pointById.get(unitOfLoadSide(id))?.kind.startsWith('socket') === true;
