import type { Cable } from '#model/cable.ts';
import { floorOpening } from '../../ways/floor-opening.ts';
import { type OpenedFloor, openedFloors, type PathOfRun } from '../../ways/opened-floors.ts';
import type { WayEnd } from '../../ways/way-cost.ts';
import type { House } from '../work-scheme.ts';
import { noWorks, type Works, wholeMess, worksLess, worksTogether } from './works.ts';

/** A cable between two ends. */
export interface CableBetween {
  readonly from: WayEnd | null;
  readonly to: WayEnd | null;
  readonly cable?: Cable;
}

/** A cable of a connection: the way that it takes, and what it comes to laid by itself. */
export interface LaidCable extends Pick<PathOfRun, 'segments'> {
  readonly works: Works;
}

/**
 * What the cables of one connection take less together than each by itself: where floors come up once for several. Places are
 * counted as the take-off counts them, at the tariff by which each cable was charged for its own. Never so much that they would come to
 * less than an equal share of all of them.
 *
 * @param cables as the connection lays them, in its order; nothing is shared by one alone.
 */
export function sharedWorks(
  { plan, tariff }: Pick<House, 'plan' | 'tariff'>,
  cables: readonly LaidCable[],
): Works {
  if (cables.length < 2) return noWorks;
  const runs = cables.map(({ segments }, index) => ({ id: String(index).padStart(3, '0'), segments }));
  const worksOf = (opened: readonly OpenedFloor[]): Works =>
    worksTogether(
      opened.map(({ floor }) => {
        const { millipence, mess } = tariff.board[floor === null ? 'lift-board' : floorOpening(floor)];
        return { millipence: Math.round(millipence), mess: wholeMess(mess) };
      }),
    );
  const alone = runs.flatMap((run) => openedFloors([run], plan));
  const saved = worksLess(worksOf(alone), worksOf(openedFloors(runs, plan)));
  const most = mostShared(worksTogether(cables.map(({ works }) => works)), cables.length);
  return {
    millipence: Math.min(saved.millipence, Math.floor(most.millipence)),
    mess: Math.min(saved.mess, Math.floor(most.mess * 1000) / 1000),
  };
}

/** What so many cables can share at the most, of what they come to each by itself. */
const mostShared = ({ millipence, mess }: Works, cables: number): Works => ({
  millipence: (millipence * (cables - 1)) / cables,
  mess: (mess * (cables - 1)) / cables,
});

/** The same of what they weigh, or of more than that. */
export const mostSharedWeight = (weight: number, cables: number): number =>
  cables < 2 ? 0 : Math.max(0, Math.ceil((weight * (cables - 1)) / cables));
