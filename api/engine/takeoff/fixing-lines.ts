import type { Worked } from '../connections/worked.ts';
import { liftedBoards } from '../ways/lifted-boards.ts';
import { type BoxWork, boxWork } from './box-lines.ts';
import type { Demand } from './demand.ts';
import { ownHoles } from './own-holes.ts';

const SCREWS_A_BOARD = 4;
/** Of the boards cut, the share whose end does not come to lie on a joist. Common practice, no source. */
const NOGGINS_A_BOARD = 2 / 3;

/** Screws and plugs of boxes, plate screws for sunk boxes, floor screws and noggins for boards that were lifted, plates over notches. */
export function fixingDemands(worked: Worked): readonly Demand[] {
  return [...boxWork(worked).flatMap(boxFixings), ...floorFixings(worked), ...joistPlates(worked)];
}

function boxFixings(work: BoxWork): Demand[] {
  const { box } = work;
  const isHollow = box.wallCore === 'timber-stud' || box.wallCore === 'metal-stud';
  const plateScrew = box.lining === 'dot-and-dab' ? 'screw-m3.5-75' : 'screw-m3.5-50';
  switch (box.build) {
    case 'dry-lining':
      return [];
    case 'steel':
      return [
        // Poor brick holds no more than every second plug.
        isHollow ? screws(work, 'screw-wood-4x25', 2, 2) : screws(work, 'screw-and-plug', 2, 4),
        screws(work, plateScrew, 2, 2),
      ];
    case 'surface':
      return [screws(work, isHollow ? 'plasterboard-fixing' : 'screw-and-plug', box.gangs === 1 ? 2 : 4, 4)];
  }
}

function screws({ box, measured, high }: BoxWork, item: string, count: number, highCount: number): Demand {
  return {
    item,
    unit: 'each',
    group: 'fixings',
    measured: measured * count,
    high: high * highCount,
    causes: [box.id],
  };
}

/** A steel plate over each notch, which keeps nails off the cable. Source: BS 7671 522.6.201. */
function joistPlates({ runs }: Worked): Demand[] {
  return ownHoles(runs).flatMap(({ runId, notches }) =>
    notches === 0
      ? []
      : [{ item: 'joist-plate', unit: 'each', group: 'fixings', measured: notches, causes: [runId] }],
  );
}

function floorFixings({ runs }: Worked): Demand[] {
  const boards = liftedBoards(runs);
  if (boards.length === 0) return [];
  const causes = [...new Set(boards.flatMap((board) => board.runIds))].toSorted();
  const count = boards.length;
  return [
    { item: 'screw-floor', unit: 'each', group: 'fixings', measured: count * SCREWS_A_BOARD, causes },
    {
      item: 'noggin-300',
      unit: 'each',
      group: 'fixings',
      // The fraction is rounded here: a noggin is a piece.
      measured: Math.ceil(count * NOGGINS_A_BOARD - 1e-9),
      low: Math.floor(count / 2),
      high: count,
      causes,
    },
  ];
}
