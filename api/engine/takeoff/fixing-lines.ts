import type { Worked } from '../connections/worked.ts';
import { floorOpening } from '../ways/floor-opening.ts';
import { type OpenedFloor, openedFloors } from '../ways/opened-floors.ts';
import { type BoxWork, boxWork, weatherproofIds } from './box-lines.ts';
import type { Demand } from './demand.ts';
import type { KitCounts } from './kit-counts.ts';
import { ownHoles } from './own-holes.ts';
import { plateScrewItem } from './plate-screws.ts';

/** What holds an opening when it is closed again. */
interface Closing {
  readonly screws: number;
  /** Noggins, or battens under a trap. */
  readonly noggins: { readonly measured: number; readonly low: number; readonly high: number };
}

/** Of the boards cut so many have an end that does not come to lie on a joist; from three quarters to half as many again. Common practice, no source. */
const boardClosing = ({ boardScrews, nogginsABoard }: KitCounts): Closing => ({
  screws: boardScrews,
  noggins: { measured: nogginsABoard, low: nogginsABoard * 0.75, high: nogginsABoard * 1.5 },
});
/** A trap is cut where no board comes up whole: it lies on battens, and is screwed to them and to the joists. Common practice, no source. */
const trapClosing = ({ trapScrews, trapNoggins }: KitCounts): Closing => ({
  screws: trapScrews,
  noggins: { measured: trapNoggins, low: trapNoggins, high: trapNoggins },
});

const closingOf = ({ floor }: OpenedFloor, counts: KitCounts): Closing =>
  floor === null || floorOpening(floor) === 'lift-board' ? boardClosing(counts) : trapClosing(counts);

/** Screws and plugs of boxes, plate screws for sunk boxes, floor screws and noggins for boards that were lifted, plates over notches. */
export function fixingDemands(worked: Worked, counts: KitCounts): readonly Demand[] {
  const ownBoxes = weatherproofIds(worked);
  return [
    ...boxWork(worked).flatMap((work) => boxFixings(worked, work, ownBoxes.has(work.box.id), counts)),
    ...floorFixings(worked, counts),
    ...joistPlates(worked),
  ];
}

/** @param isOwnBox whether the accessory is its own box: its cover's screws come with it. */
function boxFixings(
  worked: Worked,
  work: BoxWork,
  isOwnBox: boolean,
  { sunkBoxScrews, surfaceBoxScrews, sunkScrewMm }: KitCounts,
): Demand[] {
  const { box } = work;
  const isHollow = box.wallCore === 'timber-stud' || box.wallCore === 'metal-stud';
  switch (box.build) {
    case 'dry-lining':
      return [];
    case 'steel':
      return [
        ...(isHollow
          ? // On a batten that bridges from stud to stud behind the laths.
            [screws(work, 'screw-wood-4x25', sunkBoxScrews, sunkBoxScrews), screws(work, 'noggin-300', 1, 1)]
          : // Poor brick holds no more than every second plug.
            [screws(work, 'screw-and-plug', sunkBoxScrews, 2 * sunkBoxScrews)]),
        // The usual 50 mm reach lugs 27 mm behind the board; one that is longer meets the back of a shallow box.
        ...(isOwnBox ? [] : [screws(work, plateScrewItem(worked, box.id, sunkScrewMm), 2, 2)]),
      ];
    case 'surface':
      return [
        screws(
          work,
          isHollow ? 'plasterboard-fixing' : 'screw-and-plug',
          box.gangs === 1 ? surfaceBoxScrews : 2 * surfaceBoxScrews,
          2 * surfaceBoxScrews,
        ),
      ];
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

function floorFixings({ runs, plan }: Worked, counts: KitCounts): Demand[] {
  const opened = openedFloors(runs, plan);
  if (opened.length === 0) return [];
  const causes = [...new Set(opened.flatMap((each) => each.board.runIds))].toSorted();
  const sum = (pick: (closing: Closing) => number): number =>
    opened.reduce((total, each) => total + pick(closingOf(each, counts)), 0);
  const fixing = { unit: 'each', group: 'fixings', causes } as const;
  return [
    { ...fixing, item: 'screw-floor', measured: sum(({ screws }) => screws) },
    {
      ...fixing,
      item: 'noggin-300',
      // The fraction is rounded here: a noggin is a piece.
      measured: Math.ceil(sum(({ noggins }) => noggins.measured) - 1e-9),
      low: Math.floor(sum(({ noggins }) => noggins.low) + 1e-9),
      high: sum(({ noggins }) => noggins.high),
    },
  ];
}
