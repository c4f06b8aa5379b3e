import type { Worked } from '../connections/worked.ts';
import { type Amount, certain } from './amount.ts';

/** Known by its label alone: somebody has to find out first how it runs. */
function isUnexplored(worked: Worked, circuitId: string): boolean {
  const evidence = worked.foundShapes.get(circuitId)?.evidence;
  return evidence === 'claimed' || evidence === 'none';
}

/** Proving, isolating, testing and certifying, by the circuits that the scheme touches. */
export function circuitWork(worked: Worked): readonly Amount[] {
  const newIds = new Set(worked.proposed.circuits.filter(({ isNew }) => isNew).map(({ id }) => id));
  const newBoard = worked.scheme?.remedies.some(({ kind }) => kind === 'new-board') ?? false;
  const works = worked.circuitIds.flatMap((id) => {
    const common = [certain('isolate', id), certain('test-circuit', id)];
    if (newIds.has(id)) return common;
    return [
      ...common,
      certain('verify-circuit', id),
      certain('minor-works-certificate', id),
      ...(isUnexplored(worked, id) ? [certain('survey-origin', id)] : []),
    ];
  });
  const installs = newBoard || newIds.size > 0;
  return installs && worked.scheme !== null
    ? [...works, certain('installation-certificate', worked.scheme.id)]
    : works;
}
