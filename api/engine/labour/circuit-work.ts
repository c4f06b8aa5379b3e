import { readingsBefore } from '../circuit/readings-before.ts';
import type { Worked } from '../connections/worked.ts';
import { exchangedBoards } from '../takeoff/board-lines.ts';
import { remedyCause } from '../takeoff/remedy-cause.ts';
import { type Amount, certain, possible } from './amount.ts';
import type { TaskId } from './known-tasks.ts';

/** Known by its label alone: somebody has to find out first how it runs. */
function isUnexplored(worked: Worked, circuitId: string): boolean {
  const evidence = worked.foundShapes.get(circuitId)?.evidence;
  return evidence === 'claimed' || evidence === 'none';
}

/** Whether somebody has taken readings of the circuit before the work, which would have shown a broken or a joined one. */
const isRead = ({ job }: Worked, circuitId: string): boolean =>
  readingsBefore(job, 'loop').some(({ circuit }) => circuit === circuitId);

/** A fault may be found once the circuit is tested: in no price, and shown with what it may take. */
const faults = (worked: Worked, circuitId: string): readonly Amount[] =>
  isUnexplored(worked, circuitId) || !isRead(worked, circuitId) ? [possible('fault-finding', circuitId)] : [];

/** What every circuit of a new board takes besides those that the scheme touches, which have it by themselves. */
const onNewBoard: readonly TaskId[] = ['test-circuit', 'circuit-chart'];

/**
 * A new board is tested and certified circuit by circuit, whether its wiring is changed or not. A fault that the old board put up
 * with, such as a neutral borrowed from another circuit, may be found: one a board at the high end.
 */
function boardTests(worked: Worked): readonly Amount[] {
  return exchangedBoards(worked).flatMap(({ remedy, on }) => {
    if (on === null) return [];
    const besides = on.recorded.filter(({ id }) => !worked.circuitIds.includes(id)).length;
    const { likely, low, high } = on.unrecorded;
    const causes = [remedyCause(remedy)];
    if (besides + high === 0) return [];
    return [
      ...onNewBoard.map((task) => ({
        task,
        quantity: besides + likely,
        low: besides + low,
        high: besides + high,
        causes,
      })),
      possible('fault-finding', remedyCause(remedy)),
    ];
  });
}

/** Proving, isolating, testing and certifying, by the circuits that the scheme touches and those of a new board. */
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
  const all = [...works, ...boardTests(worked)];
  return installs && worked.scheme !== null
    ? [
        // Nothing of a new circuit is there to be tested: what it is joined to is.
        certain('verify-supply', worked.scheme.id),
        ...all,
        certain('installation-certificate', worked.scheme.id),
      ]
    : all;
}
