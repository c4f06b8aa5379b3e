import type { LabelOf } from '#drawing/label-of.ts';
import { boxFillings, chaseFillings } from '#engine/labour/filling-tasks.ts';
import { openedUp } from '#engine/labour/opened-up.ts';
import { allowsLater } from '#engine/proof/allows-later.ts';
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
  const chaseM = quantityOf(scheme, chaseFillings);
  const boxes = Math.round(quantityOf(scheme, boxFillings));
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
  if (room.leftA === null || room.namedA + room.restA === 0) return shared;
  const left =
    room.leftA < 0
      ? `the named loads want ${amps(-room.leftA)} more than that`
      : `${amps(room.leftA)} beside the named loads`;
  return `${shared}; ${left}`;
}

/** What a group behind a fuse allows later; a unit for one appliance allows nothing and is not told. */
function behindFuseWords({ limitA, leftA, namedA, pointIds }: RoomLeft, labelOf: LabelOf): string {
  const where = `behind the ${limitA === null ? '' : `${limitA} A `}fuse of ${listed(pointIds.map(labelOf))}`;
  if (leftA === null || namedA === 0)
    return `More outlets may be joined on ${where}; all share what it carries.`;
  return leftA > 0
    ? `More outlets may be joined on ${where}, for ${amps(leftA)} more.`
    : `Nothing more should be joined on ${where}: its named loads take all of it.`;
}

/** What a scheme allows in years to come, by where its new points have come to be. */
function laterWords(scheme: SchemeEstimate, labelOf: LabelOf): string {
  const { takesSpur, hasSpur, endsSpur, carriesOn } = allowsLater(scheme.worked);
  const named = (ids: readonly string[]): string => listed(ids.map(labelOf));
  const told = (ids: readonly string[], words: string): readonly string[] =>
    ids.length === 0 ? [] : [words];
  return [
    ...fusesBefore(scheme).map((room) => behindFuseWords(room, labelOf)),
    ...told(
      takesSpur,
      takesSpur.length === 1
        ? `${named(takesSpur)} is a point of the ring: a spur may begin there, or the ring be carried on again.`
        : `${named(takesSpur)} are points of the ring: a spur may begin at each, or the ring be carried on again.`,
    ),
    ...told(hasSpur, `At ${named(hasSpur)} a spur begins already; the ring may still be carried on there.`),
    ...told(endsSpur, `Nothing more may be joined on at ${named(endsSpur)} without a fuse.`),
    ...told(carriesOn, `The radial may be carried on from ${named(carriesOn)}.`),
  ].join(' ');
}

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
    row('Later on', (scheme) => laterWords(scheme, labelOf)),
  ];
}
