import type { Worked } from '../connections/worked.ts';
import { type Amount, certain, possible } from './amount.ts';

/** Known by its label alone: somebody has to find out first how it runs. */
function isUnexplored(worked: Worked, circuitId: string): boolean {
  const evidence = worked.foundShapes.get(circuitId)?.evidence;
  return evidence === 'claimed' || evidence === 'none';
}

/** Whether somebody has taken end-to-end readings of the circuit, which would have shown a broken or a joined one. */
const isRead = ({ job }: Worked, circuitId: string): boolean =>
  job.readings.some((reading) => reading.kind === 'loop' && reading.circuit === circuitId);

/** A fault may be found once the circuit is tested: in no price, and shown with what it may take. */
const faults = (worked: Worked, circuitId: string): readonly Amount[] =>
  isUnexplored(worked, circuitId) || !isRead(worked, circuitId) ? [possible('fault-finding', circuitId)] : [];

/** Proving, isolating, testing and certifying, by the circuits that the scheme touches. */
export function circuitWork(worked: Worked): readonly Amount[] {
  const newIds = new Set(worked.proposed.circuits.filter(({ isNew }) => isNew).map(({ id }) => id));
  const newBoard = worked.scheme?.remedies.some(({ kind }) => kind === 'new-board') ?? false;
  const works = worked.circuitIds.flatMap((id) => {
    const common = [certain('isolate', id), certain('test-circuit', id), certain('circuit-chart', id)];
    if (newIds.has(id)) return common;
    return [
      ...common,
      certain('verify-circuit', id),
      ...faults(worked, id),
      certain('minor-works-certificate', id),
      ...(isUnexplored(worked, id) ? [certain('survey-origin', id)] : []),
    ];
  });
  const installs = newBoard || newIds.size > 0;
  return installs && worked.scheme !== null
    ? [...works, certain('installation-certificate', worked.scheme.id)]
    : works;
}
