import type { Beside } from './beside.ts';
import type { Refused } from './drawing.ts';
import type { Vector } from './vector.ts';

/** A room as it is told by two sides, and how far in from its end of a wall it begins. */
export interface RoomBySides {
  readonly alongMm: number;
  readonly awayMm: number;
  readonly inMm: number;
}

/** Its inner outline, anticlockwise from the origin, its first side along x, mm. */
export const rectangleOf = ({
  alongMm,
  awayMm,
}: Pick<RoomBySides, 'alongMm' | 'awayMm'>): readonly Vector[] => [
  [0, 0],
  [alongMm, 0],
  [alongMm, awayMm],
  [0, awayMm],
];

/**
 * Rooms told by two sides that would not have the wall run through them, the likeliest first: less along, less away, or begun further in.
 *
 * @param from with which end of the wall it stands beside the room lines up; null where it stands beside none.
 */
export function fittedRoom(
  asked: RoomBySides,
  { cut }: Pick<Refused, 'cut'>,
  from: Beside['from'] | null,
): readonly RoomBySides[] {
  if (cut == null) return [];
  const byMm = Math.ceil(cut.byMm);
  const shorter = [
    { ...asked, alongMm: asked.alongMm - byMm },
    { ...asked, awayMm: asked.awayMm - byMm },
    ...(from === null ? [] : [{ ...asked, alongMm: asked.alongMm - byMm, inMm: asked.inMm + byMm }]),
  ];
  return shorter.filter(({ alongMm, awayMm }) => Math.min(alongMm, awayMm) > LEAST_MM);
}

/** No room is narrower, mm: common practice, no source. */
const LEAST_MM = 500;
