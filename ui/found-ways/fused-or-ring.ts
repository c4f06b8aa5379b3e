import type { LabelOf } from '#drawing/label-of.ts';
import { openedUp } from '#engine/labour/opened-up.ts';
import { type RoomLeft, roomLeft } from '#engine/proof/room-left.ts';
import { amps, fusesBefore, fuseWords, loadsNamed } from '#engine/quotation/fuse-said.ts';
import type { SchemeEstimate } from '#engine/schemes/estimate-result.ts';
import { schemeCable } from '#engine/schemes/scheme-cable.ts';
import { withVatWords } from '../elements/price/vat-words.ts';
import { counted, hoursWritten, listed, metresShort, pounds, wholePounds } from '../written.ts';

/** One respect in which the two ways are set side by side, in words for a customer. */
export interface WeighedRow {
  readonly what: string;
  readonly fused: string;
  readonly ring: string;
}

const quantityOf = (scheme: SchemeEstimate, tasks: readonly string[]): number =>
  scheme.labour.reduce((sum, { task, quantity }) => sum + (tasks.includes(task) ? quantity : 0), 0);

/** What is opened and has to be made good. */
function makingGood(scheme: SchemeEstimate): string {
  const chaseM = quantityOf(scheme, ['fill-chase']);
  const boxes = Math.round(quantityOf(scheme, ['fill-box']));
  const { boards } = openedUp(scheme.labour);
  const parts = [
    ...(chaseM > 0 ? [`${metresShort(chaseM * 1000)} of plaster to fill`] : []),
    ...(boxes > 0 ? [`plaster round ${counted(boxes, 'box', 'boxes')}`] : []),
    ...(boards > 0 ? [`${counted(boards, 'opening')} in floors`] : []),
  ];
  return parts.length === 0 ? 'nothing' : listed(parts);
}

function roomWords(room: RoomLeft, labelOf: LabelOf): string {
  const points = listed(room.pointIds.map(labelOf));
  const limit =
    room.limitA === null
      ? 'a protective device of unknown rating'
      : room.limitedBy === 'fuse'
        ? `one ${room.limitA} A fuse`
        : `the ${room.limitA} A of the whole circuit`;
  const shared = `${points}: ${room.pointIds.length > 1 ? 'share ' : ''}${limit}`;
  if (room.leftA === null || room.namedA === 0) return shared;
  const left =
    room.leftA < 0
      ? `the named loads want ${amps(-room.leftA)} more than that`
      : `${amps(room.leftA)} beside the named loads`;
  return `${shared}; ${left}`;
}

/** What each allows in years to come; of one way of joining whatever house it is in. */
const later: WeighedRow = {
  what: 'Later on',
  fused: 'More outlets may be joined on behind the same fuse; all of them share what it carries.',
  ring: 'The new points are points of the ring: a spur may begin at each that has none, and the ring may be carried on again.',
};

function fuseRow({ fused, ring }: Two<SchemeEstimate>): WeighedRow {
  const told = (scheme: SchemeEstimate, none: string): string => {
    const fuses = fusesBefore(scheme);
    if (fuses.length === 0) return none;
    return fuses
      .map(({ limitA, pointIds }) => fuseWords(limitA ?? 13, loadsNamed(scheme.worked.job, pointIds)))
      .join(' ');
  };
  return {
    what: 'What the fuse does',
    fused: told(fused, 'No fuse stands before the new outlets; each plug has its own.'),
    ring: told(ring, 'No fuse stands before the new outlets; each plug has its own.'),
  };
}

interface Two<T> {
  readonly fused: T;
  readonly ring: T;
}

/** A fused branch beside carrying the ring on: price, cable, joints, making good, what is left, and what it is like to live with. */
export function weighed(two: Two<SchemeEstimate>, labelOf: LabelOf): readonly WeighedRow[] {
  const row = (what: string, of: (scheme: SchemeEstimate) => string): WeighedRow => ({
    what,
    fused: of(two.fused),
    ring: of(two.ring),
  });
  return [
    row('To pay', (scheme) => `${pounds(scheme.totals.grossPence)}, ${withVatWords(scheme.price)}`),
    row('Likely range', ({ range }) => `${wholePounds(range.lowPence)} to ${wholePounds(range.highPence)}`),
    row('Time on site', ({ totals }) => hoursWritten(totals.hours)),
    row('New cable', ({ runs }) => metresShort(schemeCable(runs).cableMm)),
    row('Joints in cables', ({ joints }) => {
      const count = joints.filter(({ state }) => state === 'new').length;
      return count === 0 ? 'none' : String(count);
    }),
    row('To make good', makingGood),
    row('Capacity left', ({ worked }) =>
      roomLeft(worked)
        .map((room) => roomWords(room, labelOf))
        .join('. '),
    ),
    fuseRow(two),
    later,
  ];
}
