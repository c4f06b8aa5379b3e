import type { Cable } from '#model/cable.ts';
import { USUAL_CABLE } from '../../circuit/usual-cable.ts';
import { slotGate } from '../../proof/slot-gate.ts';
import type { CableInWalls } from '../../ways/beside-in-walls.ts';
import { chaseCost } from '../../ways/chase-cost.ts';
import { floorOpening } from '../../ways/floor-opening.ts';
import { chasesTogether } from '../../ways/in-one-chase.ts';
import { type OpenedFloor, openedFloors, type PathOfRun } from '../../ways/opened-floors.ts';
import type { WayEnd } from '../../ways/way-cost.ts';
import { times, together, type WorkCost } from '../../ways/way-tariff.ts';
import type { House } from '../work-scheme.ts';
import { noWorks, type Works, wholeMess, worksLess, worksTogether } from './works.ts';

/** A cable between two ends. */
export interface CableBetween {
  readonly from: WayEnd | null;
  readonly to: WayEnd | null;
  readonly cable?: Cable;
  /** What it must carry at the least, A; null where nobody can say. */
  readonly mustCarryA: number | null;
}

/** A cable of a connection: the way that it takes, what it must carry, and what it comes to laid by itself. */
export interface LaidCable extends Pick<PathOfRun, 'segments'>, Pick<CableBetween, 'cable' | 'mustCarryA'> {
  readonly works: Works;
}

/**
 * What the cables of one connection take less together than each by itself: where floors come up once for several, and where they are
 * chased in one. Both are counted as the take-off counts them, at the tariff by which each cable was charged for its own. Never so much
 * that they would come to less than an equal share of all of them.
 *
 * @param cables as the connection lays them, in its order; nothing is shared by one alone.
 */
export function sharedWorks(house: Pick<House, 'plan' | 'tariff'>, cables: readonly LaidCable[]): Works {
  if (cables.length < 2) return noWorks;
  const laid = cables.map(({ segments, cable = USUAL_CABLE, mustCarryA }, index) => ({
    id: String(index).padStart(3, '0'),
    ...{ segments, cable, mustCarryA },
  }));
  const saved = worksTogether([savedOfFloors(house, laid), savedOfChases(house, laid)]);
  const most = mostShared(worksTogether(cables.map(({ works }) => works)), cables.length);
  return {
    millipence: Math.min(saved.millipence, Math.floor(most.millipence)),
    mess: Math.min(saved.mess, Math.floor(most.mess * 1000) / 1000),
  };
}

function savedOfFloors({ plan, tariff }: Pick<House, 'plan' | 'tariff'>, runs: readonly PathOfRun[]): Works {
  const worksOf = (opened: readonly OpenedFloor[]): Works =>
    worksTogether(
      opened.map(({ floor }) =>
        wholeWorks(tariff.board[floor === null ? 'lift-board' : floorOpening(floor)]),
      ),
    );
  const alone = runs.flatMap((run) => openedFloors([run], plan));
  return worksLess(worksOf(alone), worksOf(openedFloors(runs, plan)));
}

/** Of each chase with several in it all but one, less what the wider slot takes more. */
function savedOfChases(
  { plan, tariff }: Pick<House, 'plan' | 'tariff'>,
  cables: readonly CableInWalls[],
): Works {
  const { together: chases } = chasesTogether(cables, slotGate(plan, tariff));
  const [two, three] = tariff.severalInChase.more;
  return worksTogether(
    chases.map(({ fromMm, toMm, stretches }) => {
      const segment = stretches[0]?.segment;
      const wall = plan.wallById.get(segment?.wallId ?? '');
      if (segment === undefined || wall === undefined) return noWorks;
      const each = chaseCost(tariff, wall, segment.side);
      const [metres, further] = [wholeMm(toMm - fromMm) / 1000, stretches.length - 1];
      return wholeWorks(times(together(times(each, further), times(further > 1 ? three : two, -1)), metres));
    }),
  );
}

/** To a thousandth of a millimetre, so that a way comes to the same from either end. */
const wholeMm = (mm: number): number => Math.round(mm * 1000) / 1000;

const wholeWorks = ({ millipence, mess }: WorkCost): Works => ({
  millipence: Math.round(millipence),
  mess: wholeMess(mess),
});

/** What so many cables can share at the most, of what they come to each by itself. */
const mostShared = ({ millipence, mess }: Works, cables: number): Works => ({
  millipence: (millipence * (cables - 1)) / cables,
  mess: (mess * (cables - 1)) / cables,
});

/** The same of what they weigh, or of more than that. */
export const mostSharedWeight = (weight: number, cables: number): number =>
  cables < 2 ? 0 : Math.max(0, Math.ceil((weight * (cables - 1)) / cables));
